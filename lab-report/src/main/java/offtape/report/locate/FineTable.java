package offtape.report.locate;

import offtape.core.dsp.SincInterpolator;

/**
 * A stretch of sound at four times its rate, read in between by cubics through four points
 * (Catmull-Rom): for trying many speeds, a tenth of the cost of band-limited interpolation. For a
 * sine at an eighth of the sample rate the error is under −70 dB.
 */
final class FineTable {

    private static final int FINE = 4;

    private final double[] values;

    private FineTable(double[] values) {
        this.values = values;
    }

    static FineTable of(double[] samples) {
        double[] values = new double[FINE * samples.length];
        for (int i = 0; i < values.length; i++) {
            values[i] =
                    i % FINE == 0
                            ? samples[i / FINE]
                            : SincInterpolator.at(samples, (double) i / FINE);
        }
        return new FineTable(values);
    }

    /** The value at a place in samples of the stretch; 0 beyond its ends. */
    double at(double place) {
        double fine = FINE * place;
        int i = (int) Math.floor(fine);
        if (i < 1 || i + 2 >= values.length) {
            return 0;
        }
        double t = fine - i;
        double a = values[i - 1];
        double b = values[i];
        double c = values[i + 1];
        double d = values[i + 2];
        double slope = c - a;
        double bend = 2 * a - 5 * b + 4 * c - d;
        double twist = 3 * (b - c) + d - a;
        return b + 0.5 * t * (slope + t * (bend + t * twist));
    }
}
