package offtape.core.machine;

import java.util.List;
import offtape.core.audio.AudioSource;
import offtape.core.machine.spec.ResidueSpec;

/**
 * An earlier recording that remains on one track, added to what is written there behind the tape's
 * curve: it lay there already and does not load it. It is round in itself, so that it is there
 * ahead of the programme and after it as well.
 */
final class Residue {

    private final AudioSource audio;
    private final int channel;
    private final double gain;
    private final List<Section.Running> erasure;
    private long next;

    private Residue(AudioSource audio, int channel, double gain, long next) {
        this.audio = audio;
        this.channel = Math.min(channel, audio.channels() - 1);
        this.gain = gain;
        this.next = next;
        this.erasure =
                Sections.start(Sections.lowPass(audio.sampleRateHz(), ResidueSpec.CORNER_HZ, 1));
    }

    /**
     * The residue of a track.
     *
     * @param channel 0 left or 1 right
     * @param recordGain gain with which it was recorded, a ratio
     * @param firstFrame frame of the programme from which on is written
     * @return null for none
     */
    static Residue of(
            ResidueSpec spec, AudioSource audio, int channel, double recordGain, long firstFrame) {
        if (spec == null) {
            return null;
        }
        long shift = Math.round(spec.shiftSeconds() * audio.sampleRateHz());
        double gain = recordGain * Math.pow(10, spec.levelDb() / 20);
        return new Residue(audio, channel, gain, firstFrame - shift);
    }

    /** Adds what lies under the next samples. */
    void add(double[] written) {
        double[] earlier = read(written.length);
        erasure.forEach(section -> section.run(earlier, earlier.length));
        for (int i = 0; i < written.length; i++) {
            written[i] += gain * earlier[i];
        }
    }

    private double[] read(int count) {
        double[] all = new double[count];
        int filled = 0;
        while (filled < count) {
            long start = Math.floorMod(next, audio.frames());
            int part = (int) Math.min(count - filled, audio.frames() - start);
            System.arraycopy(audio.read(start, part)[channel], 0, all, filled, part);
            filled += part;
            next += part;
        }
        return all;
    }
}
