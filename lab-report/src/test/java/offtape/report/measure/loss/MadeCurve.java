package offtape.report.measure.loss;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.function.DoubleUnaryOperator;
import offtape.core.unit.Quantity;
import offtape.report.result.Response;

/**
 * A response made of formulas, with errors such as a measured one has: noise of each forty-eighth
 * of an octave, a parabola through the nine around each point, the error of the value at 1 kHz in
 * all, and what filters leave, running together over half an octave. The uncertainty is estimated
 * from six degrees of freedom, as a measured one is.
 */
final class MadeCurve {

    private static final double OWN_DB = 0.01;
    private static final int GRID = 24;

    private final Random random;
    private final double noiseDb;

    /**
     * @param noiseDb standard deviation of a forty-eighth of an octave at 1 kHz; it grows by 3 dB
     *     an octave above
     */
    MadeCurve(long seed, double noiseDb) {
        this.random = new Random(seed);
        this.noiseDb = noiseDb;
    }

    /**
     * The response of a magnitude.
     *
     * @param db magnitude in dB at a frequency
     */
    Response response(String channel, DoubleUnaryOperator db, double topHz) {
        int low = -2 * GRID;
        int high = (int) Math.floor(GRID * Math.log(topHz / 1000) / Math.log(2));
        double[] fine = new double[2 * (high - low) + 9];
        double[] own = smooth(fine.length);
        for (int i = 0; i < fine.length; i++) {
            double hz = 1000 * Math.pow(2, (low + (i - 4) / 2.0) / GRID);
            fine[i] = db.applyAsDouble(hz) + own[i] + deviation(hz) * random.nextGaussian();
        }
        int zero = -low;
        double[] hz = new double[high - low + 1];
        double[] magnitude = new double[hz.length];
        double[] uncertainty = new double[hz.length];
        double[] zeroFit = fit(fine, 2 * zero + 4);
        for (int n = 0; n < hz.length; n++) {
            double[] fit = fit(fine, 2 * n + 4);
            hz[n] = 1000 * Math.pow(2, (double) (low + n) / GRID);
            magnitude[n] = fit[0] - zeroFit[0];
            double error = n == zero ? 0 : Math.hypot(fit[1], zeroFit[1]);
            uncertainty[n] = Math.hypot(2 * error, 2 * OWN_DB);
        }
        Quantity no = Quantity.unknown("Not asked for.");
        return new Response(
                channel,
                -20,
                hz,
                magnitude,
                uncertainty,
                no,
                no,
                no,
                0,
                0,
                List.of(),
                List.of(),
                null,
                List.of());
    }

    private double deviation(double hz) {
        return noiseDb * Math.sqrt(Math.max(1, hz / 1000));
    }

    /**
     * Value and standard error of the parabola through nine points: weights (−21 … 59 … −21)/231.
     */
    private static double[] fit(double[] y, int middle) {
        double[] weights = {-21, 14, 39, 54, 59, 54, 39, 14, -21};
        double sum = 0;
        double zero = 0;
        double first = 0;
        double second = 0;
        for (int k = -4; k <= 4; k++) {
            double v = y[middle + k];
            sum += weights[k + 4] * v / 231;
            zero += v;
            first += k * v;
            second += (k * k - 20.0 / 3) * v;
        }
        double rest = 0;
        for (int k = -4; k <= 4; k++) {
            double p = zero / 9 + first * k / 60 + second * (k * k - 20.0 / 3) / 308;
            rest += Math.pow(y[middle + k] - p, 2);
        }
        return new double[] {sum, Math.sqrt(rest / 6 * 2.25 / 9)};
    }

    /** A random course of standard deviation 0.01 dB that runs together over half an octave. */
    private double[] smooth(int n) {
        List<double[]> waves = new ArrayList<>();
        for (int k = 0; k < 40; k++) {
            // Rates drawn from a normal law of 2 radians an octave give exp(−d²/(2·0.5²)).
            waves.add(new double[] {2 * random.nextGaussian(), 2 * Math.PI * random.nextDouble()});
        }
        double[] out = new double[n];
        for (int i = 0; i < n; i++) {
            for (double[] w : waves) {
                out[i] += OWN_DB * Math.sqrt(2.0 / 40) * Math.cos(w[0] * i / (2.0 * GRID) + w[1]);
            }
        }
        return out;
    }
}
