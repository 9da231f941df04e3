package offtape.report.measure.transport;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import offtape.core.dsp.PowerDensity;
import offtape.report.measure.line.FoundLine;
import offtape.report.measure.speed.HeardDeviation;

/**
 * The spectrum of a return in narrow blocks of rate, in each of which the transport's own random
 * motion counts as even, and how likely a delay makes it (Whittle's likelihood, the level of each
 * block being whatever suits best). Lines are left out: they say nothing of a comb.
 *
 * <p>Source: P. Whittle, "Estimation and information in stationary time series", Ark. Mat. 2, 1953
 * (from memory).
 */
final class CombSpectrum {

    private static final int LONGEST = 1 << 16;
    private static final double LOWEST_HZ = 0.5;
    private static final double HIGHEST_HZ = 200;

    /** Width of a block: this share of its rate, and no fewer bins. */
    private static final double BLOCK_SHARE = 0.08;

    private static final int FEWEST_BINS = 12;

    /** Bins on either side of a line that are left out. */
    private static final double LINE_BINS = 4;

    /** A block that stands out of the noise by less than this says nothing. */
    private static final double OVER_NOISE = 4;

    /**
     * Spread of Hann's window over rate, as a share of the resolved width: rms of its transform.
     */
    private static final double WINDOW_SPREAD = 0.6;

    /** Neighbouring bins through Hann's window count so many times: 1 + 2·(4/9 + 1/36). */
    static final double CORRELATION = 1.944;

    private final List<Block> blocks = new ArrayList<>();
    private final double pieces;
    private final double pieceSeconds;
    private final double latenessRms;

    /** Rates and densities of a block, and the noise over the motion in it. */
    private record Block(double[] hz, double[] density, double noise) {}

    CombSpectrum(HeardDeviation heard) {
        double[] x = heard.percent();
        PowerDensity density = PowerDensity.of(x, heard.rateHz(), LONGEST);
        double binHz = density.binHz();
        this.pieceSeconds = 1 / binHz;
        this.pieces = Math.max(1, 2 * heard.seconds() * binHz - 1);
        this.latenessRms = latenessRms(heard);
        int last = (int) (Math.min(HIGHEST_HZ, heard.bandHz()) / binHz);
        int from = (int) Math.ceil(LOWEST_HZ / binHz);
        while (from < last) {
            int to = Math.min(last, from + (int) Math.max(FEWEST_BINS, BLOCK_SHARE * from));
            addBlock(heard, density, from, to);
            from = to;
        }
    }

    private void addBlock(HeardDeviation heard, PowerDensity density, int from, int to) {
        double binHz = density.binHz();
        double[] hz = new double[to - from];
        double[] level = new double[to - from];
        int count = 0;
        double mean = 0;
        for (int k = from; k < to; k++) {
            double f = k * binHz;
            if (heard.lines().stream().noneMatch(l -> isNear(l, f, binHz))) {
                hz[count] = f;
                level[count] = density.at(k);
                mean += level[count];
                count++;
            }
        }
        mean /= Math.max(1, count);
        double noise = heard.noiseDensity().applyAsDouble((from + to) * binHz / 2);
        if (count >= FEWEST_BINS / 2 && mean > OVER_NOISE * noise) {
            blocks.add(
                    new Block(
                            Arrays.copyOf(hz, count),
                            Arrays.copyOf(level, count),
                            2 * noise / (mean - noise)));
        }
    }

    private static boolean isNear(FoundLine line, double f, double binHz) {
        double reach = LINE_BINS * binHz;
        return f > Math.min(line.startHz(), line.endHz()) - reach
                && f < Math.max(line.startHz(), line.endHz()) + reach;
    }

    /** How far the delay wavers about its mean, seconds rms. */
    private static double latenessRms(HeardDeviation heard) {
        double sum = 0;
        double mean = 0;
        double squares = 0;
        for (double r : heard.percent()) {
            sum += r / 100 / heard.rateHz();
            mean += sum;
            squares += sum * sum;
        }
        int n = heard.percent().length;
        return Math.sqrt(Math.max(0, squares / n - mean / n * mean / n));
    }

    /** How many blocks there are. */
    int blocks() {
        return blocks.size();
    }

    /**
     * Logarithm of the likelihood of a delay.
     *
     * @param seconds the delay, or 0 for no comb at all
     * @param toHz highest rate that is looked at
     */
    double logLikelihood(double seconds, double toHz) {
        double sum = 0;
        for (int b = 0; b < blocks.size() && blocks.get(b).hz()[0] < toHz; b++) {
            sum += blockLogLikelihood(b, seconds);
        }
        return sum / CORRELATION;
    }

    /** That of a block alone, as if its bins were independent. */
    double blockLogLikelihood(int block, double seconds) {
        Block b = blocks.get(block);
        double level = 0;
        double logs = 0;
        for (int i = 0; i < b.hz().length; i++) {
            double gain = gain(b, b.hz()[i], seconds);
            level += b.density()[i] / gain;
            logs += Math.log(gain);
        }
        int n = b.hz().length;
        return -pieces * (n * Math.log(level / n) + logs);
    }

    /** How far the spectrum scatters about that of a delay, over what chance makes; 1 or more. */
    double dispersion(double seconds) {
        double sum = 0;
        int count = 0;
        for (Block b : blocks) {
            int n = b.hz().length;
            double level = 0;
            for (int i = 0; i < n; i++) {
                level += b.density()[i] / gain(b, b.hz()[i], seconds) / n;
            }
            for (int i = 0; i < n; i++) {
                double off = b.density()[i] / gain(b, b.hz()[i], seconds) / level - 1;
                sum += off * off * pieces;
            }
            count += n;
        }
        return Math.max(1, sum / Math.max(1, count));
    }

    private double gain(Block block, double hz, double seconds) {
        if (seconds == 0) {
            return 1;
        }
        double sine = Math.sin(Math.PI * hz * seconds);
        double ends = 2 * Math.PI * WINDOW_SPREAD * seconds / pieceSeconds;
        double wavering = 2 * Math.PI * hz * latenessRms;
        return 4 * sine * sine + ends * ends + wavering * wavering + block.noise();
    }
}
