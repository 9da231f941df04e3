package offtape.report.measure.sweep;

import offtape.core.dsp.PowerDensity;

/**
 * Densities of noise by formula. A click in the middle of a window has one magnitude at all
 * frequencies.
 */
final class Densities {

    private static final int LENGTH = 1024;

    private Densities() {}

    /**
     * Level from a few hertz to half the rate. The window's two middle values are w = ½ +
     * ½·cos(π/n), its sum of squares ⅜ · n: a click of size A gives 2·A²·w² / (⅜ · n · rate).
     *
     * @param density wanted, squared units per hertz
     */
    static PowerDensity white(double density, int rateHz) {
        double w = 0.5 + 0.5 * Math.cos(Math.PI / LENGTH);
        double[] x = new double[LENGTH];
        x[LENGTH / 2] = Math.sqrt(density * 0.375 * LENGTH * rateHz / 2) / w;
        return PowerDensity.of(x, rateHz, LENGTH);
    }

    /** Two clicks side by side, which fall towards half the rate as cos² does. */
    static PowerDensity falling(int rateHz) {
        double[] x = new double[LENGTH];
        x[LENGTH / 2 - 1] = 1e-3;
        x[LENGTH / 2] = 1e-3;
        return PowerDensity.of(x, rateHz, LENGTH);
    }
}
