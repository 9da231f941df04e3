package offtape.report.apply.listen;

import java.util.List;
import java.util.OptionalDouble;
import offtape.core.align.Alignment;
import offtape.core.audio.MemoryAudio;

/** Sounds and wishes of the checks. */
final class Sounds {

    static final int RATE_HZ = 48_000;

    /** A search that may not be asked. */
    static final AlignmentSearch NONE =
            (a, b) -> {
                throw new IllegalStateException("no search was wanted");
            };

    private Sounds() {}

    static ListenChoice choice(boolean isAligned, boolean turnsPolarity) {
        return new ListenChoice(
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                ListenChoice.USUAL_TRIALS,
                false,
                isAligned,
                turnsPolarity);
    }

    static ListenChoice part(double fromSeconds, double lengthSeconds) {
        return new ListenChoice(
                OptionalDouble.of(fromSeconds),
                OptionalDouble.of(lengthSeconds),
                ListenChoice.USUAL_TRIALS,
                false,
                false,
                false);
    }

    static AlignmentSearch at(double startFrame, double gain) {
        return (a, b) -> new Alignment(startFrame, 1, List.of(gain, gain), 0, false);
    }

    /** Two unlike tones that swell, on the steps of 16 bits, below half of full scale. */
    static double[][] music(double seconds) {
        int frames = (int) (seconds * RATE_HZ);
        double[][] out = new double[2][frames];
        for (int c = 0; c < 2; c++) {
            for (int i = 0; i < frames; i++) {
                double t = (double) i / RATE_HZ;
                double swell = 0.3 + 0.2 * Math.sin(2 * Math.PI * 0.7 * t);
                double x = swell * Math.sin(2 * Math.PI * (440 + 113 * c) * t);
                out[c][i] = Math.rint(x * 0x1p15) / 0x1p15;
            }
        }
        return out;
    }

    static MemoryAudio stereo(String name, double[][] samples) {
        return new MemoryAudio(name, RATE_HZ, samples);
    }

    /** Later by whole frames, and times a gain. */
    static double[][] moved(double[][] samples, int late, double gain) {
        double[][] out = new double[samples.length][samples[0].length + late];
        for (int c = 0; c < out.length; c++) {
            for (int i = 0; i < samples[c].length; i++) {
                out[c][i + late] = gain * samples[c][i];
            }
        }
        return out;
    }

    /** A sample of packed sound, in steps of 24 bits. */
    static int code(Pcm24 sound, int index) {
        byte[] b = sound.bytes();
        int at = 3 * index;
        return (b[at] & 0xFF) | (b[at + 1] & 0xFF) << 8 | b[at + 2] << 16;
    }
}
