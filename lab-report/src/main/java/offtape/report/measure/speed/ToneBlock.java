package offtape.report.measure.speed;

import java.util.Arrays;
import offtape.core.audio.AudioSource;
import offtape.core.dsp.RealFft;
import offtape.core.dsp.Spectrum;

/**
 * The strongest lines of a short block of sound, all channels together.
 *
 * @param hz frequency of the strongest line between 280 Hz and 13 kHz
 * @param share its share of the power of the block
 * @param power mean square of the block
 * @param secondHz frequency of the strongest line beside it that is no flutter of it
 * @param secondShare share of that one
 */
record ToneBlock(double hz, double share, double power, double secondHz, double secondShare) {

    private static final double LOWEST_HZ = 280;
    private static final double HIGHEST_HZ = 13_000;

    /** Bins to either side that belong to a Hann-windowed line. */
    private static final int SKIRT = 3;

    /** Flutter has a line on either side of the tone: one alone, by so many times, is a tone. */
    private static final double ALONE = 10;

    /** Share of a block's power that a tone must have. */
    private static final double PURE = 0.6;

    /** Share that two tones must have between them. */
    private static final double PURE_PAIR = 0.8;

    /** Mean square under which a block is silent (−80 dBFS sine). */
    private static final double SILENT = 5e-9;

    private static final ToneBlock EMPTY = new ToneBlock(1, 0, 0, 1, 0);

    boolean isTone() {
        return share > PURE && power > SILENT;
    }

    /** Whether two tones sound at once, neither of which rules. */
    boolean isPair() {
        return !isTone() && share + secondShare > PURE_PAIR && power > SILENT;
    }

    /** Reads blocks of one size from one recording. */
    static final class Reader {

        private final AudioSource source;
        private final int size;
        private final RealFft fft;
        private final double[] window;
        private final double binHz;

        Reader(AudioSource source, int size) {
            this.source = source;
            this.size = size;
            this.fft = RealFft.ofSize(size);
            this.window = new double[size];
            this.binHz = (double) source.sampleRateHz() / size;
            Arrays.setAll(window, i -> 0.5 - 0.5 * Math.cos(2 * Math.PI * (i + 0.5) / size));
        }

        /** The block that begins with a frame. */
        ToneBlock at(long frame) {
            double[] power = new double[size / 2 + 1];
            double total = 0;
            for (double[] x : source.read(frame, size)) {
                for (int i = 0; i < size; i++) {
                    x[i] *= window[i];
                }
                Spectrum s = fft.forward(x);
                for (int k = 1; k < power.length; k++) {
                    power[k] += s.power(k);
                    total += s.power(k);
                }
            }
            int top = strongest(power, -1);
            return top < 0 || !(total > 0) ? EMPTY : block(power, total, top);
        }

        private ToneBlock block(double[] power, double total, int top) {
            int second = strongest(power, top);
            double share = second < 0 ? 0 : line(power, second) / total;
            // Parseval for a Hann window: its mean square is 3/8.
            double meanSquare = 2 * total / ((double) size * size) / 0.375;
            return new ToneBlock(
                    hz(power, top),
                    line(power, top) / total,
                    meanSquare,
                    second < 0 ? 1 : hz(power, second),
                    share);
        }

        /** The highest bin in range, or beside another one. */
        private int strongest(double[] power, int beside) {
            int top = -1;
            for (int k = SKIRT + 1; k < power.length - SKIRT - 1; k++) {
                boolean inRange = k * binHz >= LOWEST_HZ && k * binHz <= HIGHEST_HZ;
                boolean higher = inRange && (top < 0 || power[k] > power[top]) && power[k] > 0;
                if (higher && (beside < 0 || isAnother(power, beside, k))) {
                    top = k;
                }
            }
            return top;
        }

        private static boolean isAnother(double[] power, int tone, int k) {
            int mirror = 2 * tone - k;
            boolean apart = Math.abs(k - tone) > 2 * SKIRT;
            boolean top = power[k] >= power[k - 1] && power[k] >= power[k + 1];
            boolean paired =
                    mirror > 0 && mirror < power.length && power[k] < ALONE * power[mirror];
            return apart && top && !paired;
        }

        private static double line(double[] power, int top) {
            double line = 0;
            for (int k = top - SKIRT; k <= top + SKIRT; k++) {
                line += power[k];
            }
            return line;
        }

        private double hz(double[] power, int top) {
            double a = Math.log(power[top - 1] + 1e-300);
            double b = Math.log(power[top]);
            double c = Math.log(power[top + 1] + 1e-300);
            double curve = a - 2 * b + c;
            return (top + (curve < 0 ? 0.5 * (a - c) / curve : 0)) * binHz;
        }
    }
}
