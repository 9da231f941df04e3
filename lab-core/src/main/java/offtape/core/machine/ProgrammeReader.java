package offtape.core.machine;

import offtape.core.audio.AudioSource;
import offtape.core.machine.spec.LeadInSpec;

/**
 * The programme as two channels in equal chunks, from any place: a single channel stands for both,
 * and ahead of the programme lies what the tape holds there.
 */
final class ProgrammeReader {

    private static final double FADE_SECONDS = 0.05;

    private final AudioSource audio;
    private final LeadInSpec leadIn;
    private final double leadInPeak;
    private final int chunk;
    private long next;

    /**
     * Starts at a frame.
     *
     * @param leadIn what lies ahead of the programme, or null for silence
     * @param firstFrame frame of the programme; may be negative
     */
    ProgrammeReader(
            AudioSource audio,
            LeadInSpec leadIn,
            double referencePeak,
            long firstFrame,
            int chunk) {
        this.audio = audio;
        this.leadIn = leadIn;
        this.leadInPeak = leadIn == null ? 0 : referencePeak * Math.pow(10, leadIn.levelDb() / 20);
        this.next = firstFrame;
        this.chunk = chunk;
    }

    /** The next chunk, one array a channel, owned by the caller. */
    double[][] next() {
        double[][] read = audio.read(next, chunk);
        double[] left = read[0];
        double[] right = read.length > 1 ? read[1] : left.clone();
        if (leadIn != null) {
            addLeadIn(left, right);
        }
        next += chunk;
        return new double[][] {left, right};
    }

    private void addLeadIn(double[] left, double[] right) {
        for (int i = 0; i < chunk && next + i < 0; i++) {
            double seconds = (double) (next + i) / audio.sampleRateHz();
            double fade = (-LeadInSpec.PAUSE_SECONDS - seconds) / FADE_SECONDS;
            if (fade > 0) {
                double angle = 2 * Math.PI * leadIn.frequencyHz() * seconds;
                double value = leadInPeak * Math.min(1, fade) * Math.sin(angle);
                left[i] += value;
                right[i] += value;
            }
        }
    }
}
