package offtape.core.standard;

import static offtape.core.standard.Checks.assertWithin;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class Iec60386BandsTest {

    private final Iec60386 meter = Iec60386.atRate(1000);

    @ParameterizedTest
    @ValueSource(doubles = {0.5, 1, 4, 6, 20, 100, 150})
    void unweightedSinesKeepTheirHeight(double frequencyHz) {
        double[] sine = Signals.sine(frequencyHz, 24, 1000);
        double[] out = meter.settled(meter.unweighted(sine));
        assertWithin(Math.sqrt(0.5), Signals.rms(out), 0.005, frequencyHz + " Hz");
    }

    @ParameterizedTest
    @ValueSource(doubles = {1, 3, 4.5, 8, 12, 40})
    void sinesFallIntoTheirBand(double frequencyHz) {
        double[] sine = Signals.sine(frequencyHz, 24, 1000);
        double wow = Signals.rms(meter.settled(meter.wow(sine)));
        double flutter = Signals.rms(meter.settled(meter.flutter(sine)));
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
        double wow = Signals.rms(meter.wow(noise));
        double flutter = Signals.rms(meter.flutter(noise));
        assertWithin(Signals.rms(meter.unweighted(noise)), Math.hypot(wow, flutter), 0.005, "sum");
    }

    @Test
    void slowDriftAndFastNoiseStayOut() {
        double slow = Signals.rms(meter.settled(meter.unweighted(Signals.sine(0.02, 60, 1000))));
        double fast = Signals.rms(meter.settled(meter.unweighted(Signals.sine(400, 10, 1000))));
        double[] constant = new double[10_000];
        Arrays.fill(constant, 1);
        assertTrue(slow < 0.003, "0.02 Hz leaves " + slow);
        assertTrue(fast < 0.002, "400 Hz leaves " + fast);
        assertEquals(0, Signals.rms(meter.unweighted(constant)), 1e-12);
    }
}
