package offtape.report.measure.speed;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import offtape.core.dsp.PowerDensity;

/**
 * Densities of two series side by side, block after block, between two rates: of the phase's and
 * the level's slope of a tone, or of the two quadratures of noise.
 */
final class FastBlocks {

    private static final double BLOCK_S = 0.2;

    /** Blocks whose second series has so many times its usual power were struck by something. */
    private static final double STRUCK = 3;

    private final double[] shares;
    private final double binHz;
    private final int length;
    private final List<double[]> first = new ArrayList<>();
    private final List<double[]> second = new ArrayList<>();

    /**
     * No blocks yet.
     *
     * @param rateHz of the series
     */
    FastBlocks(ScrapeBand band, double rateHz) {
        this.length = Integer.highestOneBit((int) (1.2 * BLOCK_S * rateHz));
        this.binHz = rateHz / length;
        this.shares = new double[length / 2 + 1];
        for (int k = 0; k < shares.length; k++) {
            double low = Math.max(band.lowHz(), (k - 0.5) * binHz);
            double high = Math.min(band.highHz(), (k + 0.5) * binHz);
            shares[k] = Math.max(0, high - low);
        }
    }

    /** Samples of a block. */
    int length() {
        return length;
    }

    /** Takes the next block from both series. */
    void add(double[] one, double[] other, int from) {
        first.add(density(one, from));
        second.add(density(other, from));
    }

    private double[] density(double[] x, int from) {
        double[] block = Arrays.copyOfRange(x, from, from + length);
        double mean = Arrays.stream(block).average().orElseThrow();
        Arrays.setAll(block, i -> block[i] - mean);
        PowerDensity density = PowerDensity.of(block, binHz * length, length);
        double[] kept = new double[shares.length];
        Arrays.setAll(kept, density::at);
        return kept;
    }

    /** Leaves out blocks in which a click or a dropout shook the second series. */
    void dropStruck() {
        double[] powers = second.stream().mapToDouble(this::power).sorted().toArray();
        double most = powers.length == 0 ? 0 : STRUCK * powers[powers.length / 2];
        for (int b = second.size() - 1; b >= 0; b--) {
            if (power(second.get(b)) > most) {
                first.remove(b);
                second.remove(b);
            }
        }
    }

    int size() {
        return first.size();
    }

    /** Power of the first series. */
    BandPower ofFirst() {
        return mean(first, 1);
    }

    /** Power of the second series. */
    BandPower ofSecond() {
        return mean(second, 1);
    }

    /** Mean power of both, which are alike. */
    BandPower ofBoth() {
        List<double[]> all = new ArrayList<>(first);
        all.addAll(second);
        return mean(all, 2);
    }

    private double power(double[] density) {
        double sum = 0;
        for (int k = 0; k < shares.length; k++) {
            sum += density[k] * shares[k];
        }
        return sum;
    }

    /**
     * A mean of densities G over a time T has the power ∫G df and its variance ∫G² df / T; blocks
     * overlap by half, and independent series count as time.
     */
    private BandPower mean(List<double[]> densities, int series) {
        double[] mean = new double[shares.length];
        for (double[] density : densities) {
            for (int k = 0; k < mean.length; k++) {
                mean[k] += density[k] / densities.size();
            }
        }
        double squares = 0;
        for (int k = 0; k < mean.length; k++) {
            squares += mean[k] * mean[k] * shares[k];
        }
        double seconds = (densities.size() + series) / 2.0 / binHz;
        return new BandPower(power(mean), squares / seconds);
    }

    /**
     * A power and how well it is known.
     *
     * @param power mean square in the band
     * @param variance of it
     */
    record BandPower(double power, double variance) {}
}
