package offtape.report.measure.tone;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

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
    private static final int LENGTH = 32_768;
    private static final double[] HZ = {315, 1000, 10_000};
    private static final double K3 = 0.01;
    private static final double LEAK = 0.005;

    @ParameterizedTest
    @ValueSource(strings = {"transport-a", "transport-b", "transport-c"})
    void ordersStandMotion(String motion) {
        double[] worst = new double[6];
        for (int at = 0; at < HZ.length; at++) {
            // On a line of the plain transform, whose window would else cost some of it.
            double line = (double) RATE / LENGTH;
            double hz = line * Math.rint(HZ[at] / line);
            double[][] x = tone(motion, hz);
            ProgrammeReturn.Span span = new ProgrammeReturn.Span(0.05, SECONDS - 0.05);
            var orders = OrderSpectrum.of(new MemoryAudio("x", RATE, x), span, hz);
            OrderSpectrum own = orders.get(0);
            OrderSpectrum other = orders.get(1);
            double plainLeak = Math.sqrt(plain(x[1], hz) / plain(x[0], hz));
            double leak = Math.sqrt((other.power(1) - other.noise(1)) / own.power(1));
            worst[2 * at] = at < 2 ? share(plainK3(x[0], hz), K3) : share(plainLeak, LEAK);
            worst[2 * at + 1] =
                    at < 2
                            ? share(Math.sqrt((own.power(3) - own.noise(3)) / own.power(1)), K3)
                            : share(leak, LEAK);
        }
        System.out.printf(
                Locale.ROOT,
                "%s  K3 of 315 Hz %+5.1f %% plain, %+5.2f %% orders   of 1 kHz %+5.1f %%, %+5.2f %%"
                        + "   leak at 10 kHz %+5.1f %%, %+5.2f %%%n",
                motion,
                worst[0],
                worst[1],
                worst[2],
                worst[3],
                worst[4],
                worst[5]);
        for (int i = 1; i < 6; i += 2) {
            assertEquals(0, worst[i], 1, "on the tone's own phase");
        }
        assertTrue(Math.abs(worst[2]) > 5 * Math.abs(worst[3]), "the plain way is worse");
    }

    private static double share(double found, double truth) {
        return 100 * (found / truth - 1);
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
            x[0][i] = 0.25 * tone + 2.5e-5 * random.nextGaussian();
            x[1][i] = 0.25 * LEAK * tone + 2.5e-5 * random.nextGaussian();
        }
        return x;
    }

    private static double plainK3(double[] x, double hz) {
        return Math.sqrt(plain(x, 3 * hz) / plain(x, hz));
    }

    /** Power of the highest of three lines around a frequency under a Hann window. */
    private static double plain(double[] x, double hz) {
        int n = LENGTH;
        double[] y = new double[n];
        for (int i = 0; i < n; i++) {
            y[i] = x[i + (x.length - n) / 2] * (0.5 - 0.5 * Math.cos(2 * Math.PI * i / n));
        }
        Spectrum s = RealFft.ofSize(n).forward(y);
        int bin = (int) Math.rint(hz * n / RATE);
        return Math.max(s.power(bin), Math.max(s.power(bin - 1), s.power(bin + 1)));
    }
}
