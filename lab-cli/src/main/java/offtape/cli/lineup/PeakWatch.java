package offtape.cli.lineup;

import offtape.cli.capture.Capture;
import offtape.core.unit.Decibels;

/** Watches one channel for samples at full scale. */
final class PeakWatch {

    private static final double SHOWN_S = 2;
    private static final double LEAST_DBFS = -200;

    private final int channel;
    private final long shownFrames;
    private long frames;
    private long clippedAt = Long.MIN_VALUE / 2;
    private double peak;

    PeakWatch(int channel, int sampleRateHz) {
        this.channel = channel;
        this.shownFrames = (long) (SHOWN_S * sampleRateHz);
    }

    void look(double[][] block, int count) {
        peak = 0;
        for (int i = 0; i < count; i++) {
            double size = Math.abs(block[channel][i]);
            peak = Math.max(peak, size);
            if (size >= Capture.FULL) {
                clippedAt = frames + i;
            }
        }
        frames += count;
    }

    /** Over the last block. */
    Peak peak() {
        return new Peak(
                Math.max(LEAST_DBFS, Decibels.ofAmplitude(peak)), frames - clippedAt < shownFrames);
    }
}
