package offtape.core.standard;

import static offtape.core.standard.Checks.assertWithin;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.Random;
import offtape.reference.Source;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class Iec60386BandsTest {

    private final Iec60386 meter = Iec60386.atRate(1000);

    @ParameterizedTest
    @ValueSource(doubles = {0.5, 1, 4, 6, 20, 100, 150})
    void unweightedSinesKeepTheirHeight(double frequencyHz) {
        double[] sine = Signals.sine(frequencyHz, 24, 1000);
        double[] out = settled(FlutterBand.UNWEIGHTED, sine);
        assertWithin(Math.sqrt(0.5), Signals.rms(out), 0.005, frequencyHz + " Hz");
    }

    @ParameterizedTest
    @ValueSource(doubles = {1, 3, 4.5, 8, 12, 40})
    void sinesFallIntoTheirBand(double frequencyHz) {
        double[] sine = Signals.sine(frequencyHz, 24, 1000);
        double wow = Signals.rms(settled(FlutterBand.WOW, sine));
        double flutter = Signals.rms(settled(FlutterBand.FLUTTER, sine));
        // Butterworth of order 3 at 6 Hz: power 1 / (1 + (f/6)^6) is wow, the rest flutter.
        double wowShare = 1 / (1 + Math.pow(frequencyHz / 6, 6));
        assertEquals(Math.sqrt(wowShare / 2), wow, 0.001);
        assertEquals(Math.sqrt((1 - wowShare) / 2), flutter, 0.001);
    }

    /** Each band is its own filter, so the sum of powers holds in the mean, here within 0.5 %. */
    @Test
    void wowAndFlutterAddUpInPower() {
        Random random = new Random(3);
        double[] noise = new double[60_000];
        Arrays.setAll(noise, i -> random.nextGaussian());
        double wow = Signals.rms(whole(FlutterBand.WOW, noise));
        double flutter = Signals.rms(whole(FlutterBand.FLUTTER, noise));
        assertWithin(
                Signals.rms(whole(FlutterBand.UNWEIGHTED, noise)),
                Math.hypot(wow, flutter),
                0.005,
                "sum");
    }

    @Test
    void slowDriftAndFastNoiseStayOut() {
        double slow = Signals.rms(settled(FlutterBand.UNWEIGHTED, Signals.sine(0.02, 60, 1000)));
        double fast = Signals.rms(settled(FlutterBand.UNWEIGHTED, Signals.sine(400, 10, 1000)));
        double[] constant = new double[10_000];
        Arrays.fill(constant, 1);
        assertTrue(slow < 0.003, "0.02 Hz leaves " + slow);
        assertTrue(fast < 0.002, "400 Hz leaves " + fast);
        assertEquals(0, Signals.rms(whole(FlutterBand.UNWEIGHTED, constant)), 1e-12);
    }

    /** NAB: order 3 at 0.5 Hz; 1 Hz passes with 1/√(1 + 0.5⁶) = 0.9923, 0.2 Hz with 0.0639. */
    @Test
    @Source("common practice, no source: American readings begin at 0.5 Hz")
    void americanPracticeBeginsAtHalfAHertz() {
        assertEquals(0.0639, FlutterBand.AMERICAN.gain(0.2), 1e-4);
        double slow = Signals.rms(settled(FlutterBand.AMERICAN, Signals.sine(0.5, 43, 1000)));
        double fast = Signals.rms(settled(FlutterBand.AMERICAN, Signals.sine(1, 43, 1000)));
        // Half the power at the edge.
        assertEquals(0.5, slow, 0.005);
        assertEquals(0.9923 * Math.sqrt(0.5), fast, 0.002);
    }

    /** What is charted keeps a constant and a slow change, and is as long as what came in. */
    @Test
    void chartsShowDriftToo() {
        double[] constant = new double[30_000];
        Arrays.fill(constant, 2);
        for (double v : whole(FlutterBand.CHARTED, constant)) {
            assertEquals(2, v, 1e-9);
        }
        for (int length : new int[] {1, 2, 9, 5000, 10_000, 10_001, 40_000}) {
            assertEquals(length, whole(FlutterBand.CHARTED, new double[length]).length);
            assertEquals(length, whole(FlutterBand.WOW, new double[length]).length);
        }
    }

    private double[] whole(FlutterBand band, double[] x) {
        return Signals.through(meter.band(band), x);
    }

    private double[] settled(FlutterBand band, double[] x) {
        return meter.settled().next(whole(band, x));
    }
}
