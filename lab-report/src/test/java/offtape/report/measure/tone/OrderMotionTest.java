package offtape.report.measure.tone;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Locale;
import java.util.Random;
import offtape.core.audio.MemoryAudio;
import offtape.core.dsp.RealFft;
import offtape.core.dsp.Spectrum;
import offtape.reference.TransportMotion;
import offtape.report.locate.ProgrammeReturn;
import org.apache.commons.math3.analysis.interpolation.SplineInterpolator;
import org.apache.commons.math3.analysis.polynomials.PolynomialSplineFunction;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * What the motion of a real transport does to a tone's third harmonic and to a leak of −46 dB, read
 * by a plain windowed transform at the line where each should lie, and on the tone's own phase.
 */
class OrderMotionTest {

    private static final int RATE = 48_000;
    private static final double SECONDS = 1.3;
    private static final double FROM_S = 1;
    private static final double PEAK = 0.25;
    private static final int LENGTH = 32_768;
    private static final double[] HZ = {315, 1000};
    private static final double K3 = 0.01;
    private static final double LEAK = 0.005;

    @ParameterizedTest
    @ValueSource(strings = {"transport-a", "transport-b", "transport-c"})
    void ordersStandMotion(String motion) {
        double[] plain = new double[3];
        double[] orders = new double[3];
        for (int i = 0; i < 2; i++) {
            // On a line of the plain transform, whose window would else cost some of it.
            double line = (double) RATE / LENGTH;
            double hz = line * Math.rint(HZ[i] / line);
            double[][] x = tone(motion, hz);
            ProgrammeReturn.Span span = new ProgrammeReturn.Span(0.05, SECONDS - 0.05);
            List<OrderSpectrum> found = OrderSpectrum.of(new MemoryAudio("x", RATE, x), span, hz);
            OrderSpectrum own = found.get(0);
            plain[i] = percent(Math.sqrt(power(x[0], 3 * hz) / power(x[0], hz)));
            orders[i] = percent(Math.sqrt((own.power(3) - own.noise(3)) / own.power(1)));
            double leak = found.get(1).power(1) - found.get(1).noise(1);
            plain[2] = decibels(power(x[1], hz));
            orders[2] = decibels(leak);
        }
        System.out.printf(
                Locale.ROOT,
                "%s  K3 of 315 Hz %+5.1f %% plain, %+5.2f %% orders   K3 of 1 kHz %+5.1f %%, %+5.2f %%"
                        + "   leak at 1 kHz %+5.2f dB, %+6.3f dB%n",
                motion,
                plain[0],
                orders[0],
                plain[1],
                orders[1],
                plain[2],
                orders[2]);
        assertEquals(0, orders[0], 0.1, "K3 of 315 Hz on the tone's own phase");
        assertEquals(0, orders[1], 0.1, "K3 of 1 kHz on the tone's own phase");
        assertEquals(0, orders[2], 0.01, "leak on the phase of the tone that leaks");
        assertTrue(Math.abs(plain[1]) > 50 * Math.abs(orders[1]), "the plain way is worse");
        assertTrue(Math.abs(plain[2]) > 10 * Math.abs(orders[2]), "the plain way is worse");
    }

    private static double percent(double k3) {
        return 100 * (k3 / K3 - 1);
    }

    private static double decibels(double power) {
        return 10 * Math.log10(power / Math.pow(PEAK * LEAK, 2));
    }

    /** A tone with 1 % of third harmonic, and its leak, both with hiss 77 dB under the tone. */
    private static double[][] tone(String motion, double hz) {
        TransportMotion m = TransportMotion.load(motion);
        PolynomialSplineFunction late =
                new SplineInterpolator().interpolate(m.seconds(), m.lateMicroseconds());
        Random random = new Random(8);
        double[][] x = new double[2][(int) (SECONDS * RATE)];
        for (int i = 0; i < x[0].length; i++) {
            double t = FROM_S + (double) i / RATE;
            double phase = 2 * Math.PI * hz * (t - 1e-6 * late.value(t));
            double tone = Math.sin(phase) + K3 * Math.sin(3 * phase);
            x[0][i] = PEAK * tone + 2.5e-5 * random.nextGaussian();
            x[1][i] = PEAK * LEAK * tone + 2.5e-5 * random.nextGaussian();
        }
        return x;
    }

    /** Squared peak of the highest of three lines around a frequency under a Hann window. */
    private static double power(double[] x, double hz) {
        int n = LENGTH;
        double[] y = new double[n];
        for (int i = 0; i < n; i++) {
            y[i] = x[i + (x.length - n) / 2] * (0.5 - 0.5 * Math.cos(2 * Math.PI * i / n));
        }
        Spectrum s = RealFft.ofSize(n).forward(y);
        int bin = (int) Math.rint(hz * n / RATE);
        double most = Math.max(s.power(bin), Math.max(s.power(bin - 1), s.power(bin + 1)));
        return 16 * most / ((double) n * n);
    }
}
