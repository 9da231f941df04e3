package offtape.core.dsp;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class AnalyticCorrelationTest {

    @Test
    void realPartIsThePlainCorrelation() {
        double[] signal = new Random(1).doubles(157, -1, 1).toArray();
        double[] template = new Random(2).doubles(31, -1, 1).toArray();
        AnalyticCorrelation c = AnalyticCorrelation.of(signal, template);
        assertEquals(127, c.re().length);
        for (int lag = 0; lag < 127; lag++) {
            double sum = 0;
            for (int j = 0; j < template.length; j++) {
                sum += signal[lag + j] * template[j];
            }
            assertEquals(sum, c.re()[lag], 1e-12);
            assertEquals(
                    c.re()[lag] * c.re()[lag] + c.im()[lag] * c.im()[lag], c.power(lag), 1e-12);
        }
    }

    /**
     * g(t)·cos(ωt + φ) against g(t)·cos(ωt), g a bell: at the true lag the correlation is ½·Σg²·cos
     * φ and its Hilbert transform ½·Σg²·sin φ, since the terms at 2ω vanish under the bell. The
     * envelope peaks there whatever φ.
     */
    @ParameterizedTest
    @ValueSource(doubles = {0, 0.6, 1.5707963267948966, 3.141592653589793, -2})
    void envelopeStaysWhenThePhaseTurns(double phi) {
        double[] template = bell(201, 0);
        double[] signal = new double[1000];
        System.arraycopy(bell(201, phi), 0, signal, 333, 201);
        double energy = 0;
        for (int i = 0; i < 201; i++) {
            energy += Math.pow(envelope(i), 2);
        }
        AnalyticCorrelation c = AnalyticCorrelation.of(signal, template);
        int best = 0;
        for (int k = 0; k < c.re().length; k++) {
            best = c.power(k) > c.power(best) ? k : best;
        }
        assertEquals(333, best);
        assertEquals(energy / 2 * Math.cos(phi), c.re()[333], 1e-6 * energy);
        assertEquals(energy / 2 * Math.sin(phi), c.im()[333], 1e-6 * energy);
    }

    @Test
    void refusesATemplateLongerThanTheSignal() {
        assertEquals(1, AnalyticCorrelation.of(new double[8], new double[8]).re().length);
        assertThrows(
                IllegalArgumentException.class,
                () -> AnalyticCorrelation.of(new double[8], new double[9]));
    }

    private static double envelope(int i) {
        return Math.exp(-Math.pow((i - 100) / 25.0, 2));
    }

    private static double[] bell(int n, double phi) {
        double[] x = new double[n];
        for (int i = 0; i < n; i++) {
            x[i] = envelope(i) * Math.cos(0.8 * (i - 100) + phi);
        }
        return x;
    }
}
