package offtape.core.standard;

import java.util.Arrays;

/**
 * The quasi-peak detector of the wow-and-flutter meter: half the peak-to-peak height, followed by
 * the meter's dynamic behaviour.
 *
 * <p>Height: magnitude of the analytic signal, which is constant for a sine whatever its frequency,
 * so that every sine reads its peak. A rectifier that charges a capacitor reads sines of different
 * frequencies several percent apart when it is slow enough for the standard's pulses.
 *
 * <p>Dynamics: the height charges a store with {@value #CHARGE_SECONDS} s, which leaks with {@value
 * #LEAK_SECONDS} s, and the pointer follows with {@value #POINTER_SECONDS} s. The three were fitted
 * to the standard's pulse table, its pulses passing the weighting as speed deviation.
 */
final class FlutterQuasiPeak {

    private static final double CHARGE_SECONDS = 0.028;
    private static final double LEAK_SECONDS = 0.33;
    private static final double POINTER_SECONDS = 0.32;

    // Charge, leak and pointer of the detectors farthest from ours that the pulse table allows.
    private static final double[] SLOWEST = {0.0317, 0.355, 0.337};
    private static final double[] QUICKEST = {0.0235, 0.316, 0.340};

    /** Half length of the quadrature filter: it holds 0.3 % from 0.45 Hz up. */
    private static final double QUADRATURE_SECONDS = 2.5;

    private static final double KAISER_BETA = 5;

    private final BlockFilter quadrature;
    private final double charge;
    private final double keep;
    private final double pointer;

    FlutterQuasiPeak(double sampleRateHz) {
        this(sampleRateHz, CHARGE_SECONDS, LEAK_SECONDS, POINTER_SECONDS);
    }

    private FlutterQuasiPeak(
            double sampleRateHz, double chargeSeconds, double leakSeconds, double pointerSeconds) {
        quadrature =
                new BlockFilter(quadrature((int) Math.round(QUADRATURE_SECONDS * sampleRateHz)));
        charge = -Math.expm1(-1 / (chargeSeconds * sampleRateHz));
        keep = Math.exp(-1 / (leakSeconds * sampleRateHz));
        pointer = -Math.expm1(-1 / (pointerSeconds * sampleRateHz));
    }

    /**
     * A detector that reads every pulse of the table within its tolerance too, and what is unsteady
     * by some 1 % lower.
     */
    static FlutterQuasiPeak slowest(double sampleRateHz) {
        return new FlutterQuasiPeak(sampleRateHz, SLOWEST[0], SLOWEST[1], SLOWEST[2]);
    }

    /** The same, and what is unsteady by some 1 % higher. */
    static FlutterQuasiPeak quickest(double sampleRateHz) {
        return new FlutterQuasiPeak(sampleRateHz, QUICKEST[0], QUICKEST[1], QUICKEST[2]);
    }

    /** Starts reading one signal; a steady height reads itself. */
    RunningFilter start() {
        return new Run();
    }

    private final class Run implements RunningFilter {

        private final RunningFilter shifted = quadrature.startCentred();
        private final SampleQueue waiting = new SampleQueue();

        // The store of a steady height h rests at h·charge / (1 − keep·(1 − charge)).
        private final double gain = (1 - keep * (1 - charge)) / charge;
        private double store;
        private double shown;

        @Override
        public double[] next(double[] x) {
            waiting.add(x);
            return read(shifted.next(x));
        }

        @Override
        public double[] rest() {
            return read(shifted.rest());
        }

        private double[] read(double[] turned) {
            double[] reading = waiting.take(turned.length);
            for (int i = 0; i < reading.length; i++) {
                store *= keep;
                store += charge * Math.max(0, Math.hypot(reading[i], turned[i]) - store);
                shown += pointer * (gain * store - shown);
                reading[i] = shown;
            }
            return reading;
        }
    }

    /** Turns every component by 90 degrees: 2/(πk) at odd k from the middle, windowed. */
    private static double[] quadrature(int half) {
        double[] h = new double[2 * half + 1];
        Arrays.setAll(h, i -> tap(i - half, half));
        return h;
    }

    private static double tap(int k, int half) {
        if (k % 2 == 0) {
            return 0;
        }
        double r = (double) k / half;
        return 2
                / (Math.PI * k)
                * besselI0(KAISER_BETA * Math.sqrt(1 - r * r))
                / besselI0(KAISER_BETA);
    }

    /** Modified Bessel function of order 0 by its power series (Abramowitz and Stegun 9.6.12). */
    private static double besselI0(double x) {
        double term = 1;
        double sum = 1;
        for (int k = 1; term > 1e-17 * sum; k++) {
            term *= x * x / (4.0 * k * k);
            sum += term;
        }
        return sum;
    }
}
