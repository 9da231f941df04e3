package offtape.report.measure.transport;

import java.util.List;
import offtape.report.measure.line.FoundLine;
import offtape.report.measure.speed.HeardDeviation;

/**
 * The shortest motion there is: a jerk of one value, which two heads hear one delay apart with
 * opposite signs. Its density is that of even motion under a comb, 4·sin²(π·f·τ), without chance.
 */
final class TwoHeads {

    static final double RATE_HZ = 500;
    static final double DELAY_S = 0.1;
    static final double BAND_HZ = 60;

    private static final int LAG = 50;
    private static final int COUNT = 4096;

    private TwoHeads() {}

    /** A return with the comb, 8.2 s long. */
    static HeardDeviation heard() {
        double[] x = new double[COUNT];
        x[(COUNT - LAG) / 2] = 1;
        x[(COUNT + LAG) / 2] = -1;
        return of(x, BAND_HZ, 0, List.of());
    }

    /** What a single head hears: the same at every rate. */
    static HeardDeviation single(double bandHz, double noise, List<FoundLine> lines) {
        double[] x = new double[COUNT];
        x[COUNT / 2] = 1;
        return of(x, bandHz, noise, lines);
    }

    /** The density of a single head's return, squared percent a hertz: 2·w²/(f·Σ w²), w = 1. */
    static double singleDensity() {
        return 2 / (RATE_HZ * 3.0 / 8 * COUNT);
    }

    /** So short that nothing can be looked for in it. */
    static HeardDeviation moment() {
        return of(new double[] {1, -1, 1, -1, 1}, BAND_HZ, 0, List.of());
    }

    private static HeardDeviation of(
            double[] x, double bandHz, double noise, List<FoundLine> lines) {
        return new HeardDeviation(x, RATE_HZ, bandHz, f -> noise, lines);
    }
}
