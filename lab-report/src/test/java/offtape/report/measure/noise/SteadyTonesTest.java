package offtape.report.measure.noise;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.OptionalDouble;
import java.util.Random;
import offtape.core.dsp.PowerDensity;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Tones of a mean square of 10⁻⁹ in 6 s of hiss at 8 kHz, whose density is 2.5·10⁻¹² a hertz:
 * transforms of 4096 have bins 1.953 Hz wide, so that a tone stands 20 dB over the noise of its
 * seven bins.
 */
class SteadyTonesTest {

    private static final int RATE = 8000;
    private static final double POWER = 1e-9;
    private static final double BIN_HZ = RATE / 4096.0;

    private static double[] hiss(long seed) {
        Random random = new Random(seed);
        double[] x = new double[6 * RATE];
        for (int i = 0; i < x.length; i++) {
            x[i] = 1e-4 * random.nextGaussian();
        }
        return x;
    }

    private static double[] with(double... hz) {
        double[] x = hiss(1);
        for (int i = 0; i < x.length; i++) {
            for (double f : hz) {
                x[i] += Math.sqrt(2 * POWER) * Math.sin(2 * Math.PI * f * i / RATE);
            }
        }
        return x;
    }

    private static List<SteadyTones.Tone> find(double[] x, OptionalDouble mains) {
        return new SteadyTones(x, RATE, PowerDensity.of(x, RATE, 4096))
                .find(200, 3200, 5e-5, mains);
    }

    /** Its place is known to half a bin, its power within three of its deviations, some 5 %. */
    @ParameterizedTest
    @ValueSource(doubles = {1003, 1004, 2345, 700})
    void aToneIsFoundWithItsPower(double hz) {
        List<SteadyTones.Tone> found = find(with(hz), OptionalDouble.empty());
        assertEquals(1, found.size());
        SteadyTones.Tone tone = found.get(0);
        assertEquals(hz, tone.frequencyHz(), 0.51 * BIN_HZ);
        double deviation = Math.sqrt(tone.variance());
        assertEquals(POWER, tone.power(), 3 * deviation);
        assertTrue(deviation > 0.005 * POWER && deviation < 0.1 * POWER, deviation + "");
    }

    @Test
    void severalTonesAreFoundInOrder() {
        List<SteadyTones.Tone> found = find(with(2345, 1003), OptionalDouble.empty());
        assertEquals(2, found.size());
        assertEquals(1003, found.get(0).frequencyHz(), 0.51 * BIN_HZ);
        assertEquals(2345, found.get(1).frequencyHz(), 0.51 * BIN_HZ);
    }

    /** Nothing is sought outside the range, and hiss has no tones. */
    @Test
    void onlyTheRangeIsLookedAt() {
        assertEquals(List.of(), find(with(3300), OptionalDouble.empty()));
        assertEquals(List.of(), find(with(180), OptionalDouble.of(41)));
        for (int seed = 1; seed < 6; seed++) {
            assertEquals(List.of(), find(hiss(seed), OptionalDouble.empty()));
        }
    }

    /**
     * As long as the mains are not known, whatever lies near one of twelve multiples of 50 or 60 Hz
     * may be theirs: within 3.5 bins and a hertz for each order. 700 Hz is the fourteenth of 50 Hz,
     * and 20 Hz below the twelfth of 60, which reaches 18.8 Hz.
     */
    @ParameterizedTest
    @CsvSource({"600, false", "650, false", "702, false", "700, true", "738, false", "740, true"})
    void unknownMainsTakeWhatIsNearThem(double hz, boolean tone) {
        assertEquals(tone ? 1 : 0, find(with(hz), OptionalDouble.empty()).size());
    }

    /**
     * Mains of 50 Hz have the multiples up to the twelfth, and higher ones that lie in their place
     * and are steady: 700 Hz, but not 703. Between multiples nothing is theirs.
     */
    @ParameterizedTest
    @CsvSource({
        "600, false",
        "605, false",
        "610, true",
        "575, true",
        "700, false",
        "703, true",
        "725, true"
    })
    void knownMainsTakeTheirMultiples(double hz, boolean tone) {
        assertEquals(tone ? 1 : 0, find(with(hz), OptionalDouble.of(50)).size());
    }

    /**
     * Lines at 703, 752 and 803 Hz do not lie in their places of 50 Hz, but beside one another as
     * those of a buzz whose mains wander do; two alone are not enough.
     */
    @Test
    void neighboursMakeABuzz() {
        assertEquals(List.of(), find(with(702, 752.5, 803), OptionalDouble.of(50)));
        assertEquals(2, find(with(702, 752.5), OptionalDouble.of(50)).size());
    }

    /** Where the noise ends, at 1 kHz, its edge is no line. */
    @Test
    void anEdgeOfTheNoiseIsNoLine() {
        double[] x = hiss(3);
        double[] low = new double[x.length];
        // A running mean of 8 samples twice over: zeros of noise at multiples of 1 kHz.
        for (int i = 16; i < x.length; i++) {
            for (int d = 0; d < 15; d++) {
                low[i] += x[i - d] * Math.min(d + 1, 15 - d) / 64;
            }
        }
        assertEquals(List.of(), find(low, OptionalDouble.empty()));
    }
}
