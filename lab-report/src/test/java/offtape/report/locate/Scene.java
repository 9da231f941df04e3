package offtape.report.locate;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import offtape.core.audio.MemoryAudio;

/** Sound of tones of chosen place and pitch, for searches by colour. */
final class Scene {

    static final int RATE = 16_000;

    /**
     * One tone.
     *
     * @param from start, seconds
     * @param to end, seconds
     */
    record Part(double from, double to, double hz) {

        /** The same as a tape plays it that is so much longer. */
        Part played(double offset, double stretch) {
            return new Part(offset + stretch * from, offset + stretch * to, hz / stretch);
        }

        /** The same moved and lengthened at the pitch it has. */
        Part lengthened(double offset, double stretch) {
            return new Part(offset + stretch * from, offset + stretch * to, hz);
        }
    }

    /** A programme of twelve seconds. */
    static final List<Part> FOUR_TONES =
            List.of(
                    new Part(0.5, 2, 500),
                    new Part(2, 4, 3000),
                    new Part(4.5, 8, 1000),
                    new Part(8, 11.5, 5000));

    private final double[] sound;
    private final int rate;

    /** Silence of so many seconds. */
    Scene(double seconds) {
        this(seconds, RATE);
    }

    /** The same at another sample rate: long sound of low tones takes little time at a low one. */
    Scene(double seconds, int rate) {
        this.sound = new double[(int) Math.round(seconds * rate)];
        this.rate = rate;
    }

    Scene with(Part... parts) {
        return with(0.1, List.of(parts));
    }

    Scene with(double peak, List<Part> parts) {
        for (Part p : parts) {
            int from = Math.max(0, (int) Math.round(p.from() * rate));
            int to = Math.min(sound.length, (int) Math.round(p.to() * rate));
            for (int i = from; i < to; i++) {
                sound[i] += peak * Math.sin(2 * Math.PI * p.hz() * i / rate);
            }
        }
        return this;
    }

    /** Hiss beneath all of it, which has another colour than any tone. */
    Scene withHiss(double rms) {
        Random random = new Random(6);
        for (int i = 0; i < sound.length; i++) {
            sound[i] += rms * random.nextGaussian();
        }
        return this;
    }

    double[] sound() {
        return sound;
    }

    MemoryAudio audio() {
        return new MemoryAudio("scene.wav", rate, sound);
    }

    SpectralTrace trace() {
        return SpectralTrace.of(audio());
    }

    /** Parts as a tape plays them. */
    static List<Part> played(List<Part> parts, double offset, double stretch) {
        List<Part> out = new ArrayList<>();
        parts.forEach(p -> out.add(p.played(offset, stretch)));
        return out;
    }
}
