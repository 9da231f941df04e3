package offtape.report.measure.tone;

import java.util.Arrays;
import offtape.core.audio.AudioSource;
import offtape.core.dsp.RealFft;
import offtape.core.dsp.Spectrum;

/** Reads blocks of one size from one recording and finds their strongest lines. */
final class BlockReader {

    /** Bins to either side that belong to a Hann-windowed line. */
    private static final int SKIRT = 3;

    /** Flutter has a line on either side of the tone: one alone, by so many times, is a tone. */
    private static final double ALONE = 10;

    /** Blocks from which it is told what never ends: so many a second, within limits. */
    private static final double LISTENED_PER_S = 4;

    private static final int LEAST_LISTENED = 20;
    private static final int MOST_LISTENED = 200;

    /** What never ends lies at or under this share of all blocks. */
    private static final double QUIETEST = 0.25;

    /** Times its usual power that a standing sound may have at a moment. */
    private static final double SWELL = 2;

    private final AudioSource source;
    private final ToneRange range;
    private final int size;
    private final RealFft fft;
    private final double[] window;
    private final double binHz;
    private final double[] standing;

    BlockReader(AudioSource source, ToneRange range) {
        this.source = source;
        this.range = range;
        this.size = Integer.highestOneBit((int) (range.blockSeconds() * source.sampleRateHz()));
        this.fft = RealFft.ofSize(size);
        this.window = new double[size];
        this.binHz = (double) source.sampleRateHz() / size;
        this.standing = new double[(int) Math.ceil(range.standingBelowHz() / binHz)];
        Arrays.setAll(window, i -> 0.5 - 0.5 * Math.cos(2 * Math.PI * (i + 0.5) / size));
    }

    /** Learns from a stretch what sounds all the time. */
    void listen(double fromSeconds, double toSeconds) {
        if (standing.length == 0) {
            return;
        }
        double seconds = toSeconds - fromSeconds;
        int blocks =
                (int) Math.max(LEAST_LISTENED, Math.min(MOST_LISTENED, LISTENED_PER_S * seconds));
        double[][] heard = new double[standing.length][blocks];
        for (int b = 0; b < blocks; b++) {
            double at = fromSeconds + (b + 0.5) / blocks * seconds;
            double[] power = power(Math.round(at * source.sampleRateHz()) - size / 2);
            for (int k = 0; k < standing.length; k++) {
                heard[k][b] = power[k];
            }
        }
        for (int k = 0; k < standing.length; k++) {
            Arrays.sort(heard[k]);
            standing[k] = SWELL * heard[k][(int) (QUIETEST * blocks)];
        }
    }

    /** The block that begins with a frame. */
    ToneBlock at(long frame) {
        double[] power = power(frame);
        for (int k = 0; k < standing.length; k++) {
            power[k] = Math.max(0, power[k] - standing[k]);
        }
        int top = strongest(power, -1);
        return top < 0 ? ToneBlock.EMPTY : block(power, top);
    }

    private double[] power(long frame) {
        double[] power = new double[size / 2 + 1];
        for (double[] x : source.read(frame, size)) {
            for (int i = 0; i < size; i++) {
                x[i] *= window[i];
            }
            Spectrum s = fft.forward(x);
            for (int k = 1; k < power.length; k++) {
                power[k] += s.power(k);
            }
        }
        return power;
    }

    private ToneBlock block(double[] power, int top) {
        int second = strongest(power, top);
        double around = around(power, top);
        double share = second < 0 ? 0 : line(power, second) / around;
        // Parseval for a Hann window: its mean square is 3/8.
        double total = sum(power, 1, power.length - 1);
        double meanSquare = 2 * total / ((double) size * size) / 0.375;
        return new ToneBlock(
                hz(power, top),
                line(power, top) / around,
                meanSquare,
                second < 0 ? 1 : hz(power, second),
                share);
    }

    /** The highest bin in range, or beside another one. */
    private int strongest(double[] power, int beside) {
        int top = -1;
        for (int k = SKIRT + 1; k < power.length - SKIRT - 1; k++) {
            boolean inRange = k * binHz >= range.lowestHz() && k * binHz <= range.highestHz();
            boolean higher = inRange && (top < 0 || power[k] > power[top]) && power[k] > 0;
            if (higher && (beside < 0 || isAnother(power, beside, k))) {
                top = k;
            }
        }
        return top;
    }

    private boolean isAnother(double[] power, int tone, int k) {
        int mirror = 2 * tone - k;
        boolean apart = Math.abs(k - tone) > 2 * skirt(tone);
        boolean top = power[k] >= power[k - 1] && power[k] >= power[k + 1];
        boolean paired = mirror > 0 && mirror < power.length && power[k] < ALONE * power[mirror];
        return apart && top && !paired;
    }

    /** Bins to either side that belong to a line. */
    private int skirt(int top) {
        return Math.max(SKIRT, (int) Math.round(range.wanderShare() * top));
    }

    private double line(double[] power, int top) {
        int skirt = skirt(top);
        return sum(power, Math.max(1, top - skirt), Math.min(power.length - 1, top + skirt));
    }

    /** Power of the band in which a line must rule. */
    private double around(double[] power, int top) {
        double ratio = Math.pow(2, range.aroundOctaves());
        int skirt = skirt(top);
        int low = Math.min((int) (top / ratio), top - skirt);
        double high = Math.max(top * ratio, top + skirt);
        return sum(power, Math.max(1, low), (int) Math.min(power.length - 1.0, high));
    }

    private static double sum(double[] power, int from, int to) {
        double sum = 0;
        for (int k = from; k <= to; k++) {
            sum += power[k];
        }
        return sum;
    }

    private double hz(double[] power, int top) {
        double a = Math.log(power[top - 1] + 1e-300);
        double b = Math.log(power[top]);
        double c = Math.log(power[top + 1] + 1e-300);
        double curve = a - 2 * b + c;
        return (top + (curve < 0 ? 0.5 * (a - c) / curve : 0)) * binHz;
    }
}
