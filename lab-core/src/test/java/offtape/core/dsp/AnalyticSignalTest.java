package offtape.core.dsp;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Random;
import org.junit.jupiter.api.Test;

/** One lag at a time against all lags at once, and thinned against every fourth. */
class AnalyticSignalTest {

    private static final double[] SIGNAL = noise(200, 1);
    private static final double[] TEMPLATE = noise(31, 2);

    private static double[] noise(int length, int seed) {
        return new Random(seed).doubles(length, -1, 1).toArray();
    }

    @Test
    void oneLagIsThatOfTheWholeCorrelation() {
        AnalyticCorrelation all = AnalyticCorrelation.of(SIGNAL, TEMPLATE);
        AnalyticSignal signal = AnalyticSignal.of(AnalyticCorrelation.spectrum(SIGNAL));
        for (int lag = 0; lag < all.re().length; lag++) {
            assertEquals(all.power(lag), signal.power(TEMPLATE, lag), 1e-11, "lag " + lag);
            assertEquals(plain(lag), signal.plain(TEMPLATE, lag), 1e-12, "lag " + lag);
        }
    }

    private static double plain(int lag) {
        double sum = 0;
        for (int i = 0; i < TEMPLATE.length; i++) {
            sum += SIGNAL[lag + i] * TEMPLATE[i];
        }
        return sum;
    }

    /** A signal of whole periods below an eighth of the rate loses nothing at a quarter of it. */
    @Test
    void thinnedSpectrumIsThatOfEveryFourthSample() {
        int n = 256;
        double[] x = new double[n];
        for (int i = 0; i < n; i++) {
            x[i] =
                    0.3
                            + Math.cos(2 * Math.PI * 5 * i / n)
                            + 0.5 * Math.sin(2 * Math.PI * 31 * i / n);
        }
        Spectrum thinned = RealFft.ofSize(n).forward(x).thinned(4);
        double[] fewer = RealFft.ofSize(n / 4).inverse(thinned);
        for (int i = 0; i < fewer.length; i++) {
            assertEquals(x[4 * i], fewer[i], 1e-13);
        }
    }
}
