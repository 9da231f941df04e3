package offtape.report.measure.line;

import java.util.Random;

/** Deviations made of noise and lines, percent. */
final class Deviations {

    private final double rateHz;
    private final double[] x;

    private Deviations(double rateHz, double[] x) {
        this.rateHz = rateHz;
        this.x = x;
    }

    /** White noise; its power lies evenly between 0 and half the rate. */
    static Deviations noise(double rms, double seconds, double rateHz, long seed) {
        Random random = new Random(seed);
        double[] x = new double[(int) (seconds * rateHz)];
        for (int i = 0; i < x.length; i++) {
            x[i] = rms * random.nextGaussian();
        }
        return new Deviations(rateHz, x);
    }

    /** The noise coloured by a single pole, as if a flywheel held the fast part back. */
    Deviations red(double pole) {
        double y = 0;
        for (int i = 0; i < x.length; i++) {
            y = pole * y + x[i];
            x[i] = y;
        }
        return this;
    }

    Deviations line(double hz, double peak, double phase) {
        for (int i = 0; i < x.length; i++) {
            x[i] += peak * Math.cos(2 * Math.PI * hz * i / rateHz + phase);
        }
        return this;
    }

    /**
     * A reel's line. The pack's area grows by the tape's thickness h times its length: π·(r² − r₀²)
     * = h·v·t, and the reel turns by dx/r, in all by 2π/h·(r − r₀).
     */
    Deviations reel(double radiusMm, double thicknessMm, double mmPerS, double peak, double phase) {
        for (int i = 0; i < x.length; i++) {
            double r = radius(radiusMm, thicknessMm, mmPerS, i / rateHz);
            double angle = 2 * Math.PI / thicknessMm * (r - radiusMm);
            x[i] += peak * Math.cos(angle + phase);
        }
        return this;
    }

    static double radius(double radiusMm, double thicknessMm, double mmPerS, double seconds) {
        return Math.sqrt(radiusMm * radiusMm + thicknessMm * mmPerS * seconds / Math.PI);
    }

    double[] samples() {
        return x;
    }
}
