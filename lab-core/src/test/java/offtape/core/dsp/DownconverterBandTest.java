package offtape.core.dsp;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.List;
import java.util.Random;
import offtape.core.audio.MemoryAudio;
import offtape.core.unit.Decibels;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** What a converter lets through, and at which times. */
class DownconverterBandTest {

    private static final int RATE = 48_000;
    private static final double PASS_HZ = 260;
    private static final double STOP_HZ = 442;

    /** The stop band of 90 dB, with the 2 dB that the design formulas may miss it by. */
    private static final double LEFT_OVER = Decibels.toAmplitude(-88);

    private final Downconverter converter = Downconverter.of(PASS_HZ, STOP_HZ, RATE);

    /** At every offset up to half the sample rate, also where the moderate rate folds back to 0. */
    @Test
    void theBandIsFlatAndAllBeyondIsGone() {
        for (double offset = 0; offset <= RATE / 2.0; offset += 13) {
            double gain = converter.gain(offset);
            if (offset <= PASS_HZ) {
                assertEquals(1, gain, 4 * LEFT_OVER, offset + " Hz");
            } else if (offset >= STOP_HZ) {
                assertEquals(0, gain, LEFT_OVER, offset + " Hz");
            }
            assertEquals(gain, converter.gain(-offset), 1e-12);
        }
    }

    /** A sine of peak 1 so far from the carrier comes out with half the gain told for it. */
    @ParameterizedTest
    @ValueSource(doubles = {100, 320, 351, -351, 400})
    void theGainIsWhatATonePassesWith(double offsetHz) {
        double w = 2 * Math.PI * (5000 + offsetHz) / RATE;
        double[] x = new double[RATE / 2];
        Arrays.setAll(x, i -> Math.cos(w * i));
        Baseband base =
                converter
                        .convert(new MemoryAudio("x", RATE, x), 0.1, 0.4, PhaseLaw.steady(5000))
                        .get(0);
        assertEquals(converter.gain(offsetHz) / 2, Math.sqrt(base.meanPower()), 1e-5);
    }

    /** The power of white noise that comes through is ∫ gain² over both sides. */
    @Test
    void theNoiseBandwidthIsTheIntegralOfThePowerGain() {
        double sum = 0;
        for (double f = -600; f < 600; f += 0.5) {
            sum += 0.5 * Math.pow(converter.gain(f), 2);
        }
        assertEquals(sum, converter.noiseBandwidthHz(), 1e-3 * sum);
    }

    /**
     * What lies at the edge of the stop band must not fold into the pass band: the rate is at least
     * the sum of both edges. More than twice that would be waste, unless more is asked for, and
     * more than the recording's there is not.
     */
    @ParameterizedTest
    @CsvSource({
        "260, 442, 48000, 0, 702, 1404",
        "260, 442, 48000, 3000, 3000, 6000",
        "10, 20, 192000, 0, 30, 60",
        "20, 40, 300, 0, 60, 120",
        "20, 40, 300, 1000, 300, 300",
    })
    void theRateSuitsTheBand(
            double pass, double stop, int rate, double asked, double least, double most) {
        double got = Downconverter.of(pass, stop, rate, asked).rateHz();
        assertTrue(got >= least && got <= most, got + " Hz");
        assertEquals(0, rate / got - Math.rint(rate / got), 1e-9);
    }

    /** A recording whose rate is moderate already: A·cos(ωt + φ) becomes (A/2)·exp(iφ). */
    @Test
    void aSlowRecordingNeedsNoFirstStep() {
        double[] x = new double[1200];
        Arrays.setAll(x, i -> 0.8 * Math.cos(2 * Math.PI * 70 * i / 300 - 0.5));
        Downconverter slow = Downconverter.of(20, 40, 300);
        Baseband base =
                slow.convert(new MemoryAudio("x", 300, x), 1, 3, PhaseLaw.steady(70)).get(0);
        assertEquals(2 * slow.rateHz(), base.size(), 1);
        for (int k = 0; k < base.size(); k++) {
            assertEquals(0.4 * Math.cos(-0.5), base.re()[k], LEFT_OVER);
            assertEquals(0.4 * Math.sin(-0.5), base.im()[k], LEFT_OVER);
        }
        assertEquals(1, slow.gain(20), 4 * LEFT_OVER);
        assertEquals(0, slow.gain(41), LEFT_OVER);
    }

    /** Part by part, also across the blocks it is read in, a long stretch is what it is in one. */
    @Test
    void partsMakeUpTheWhole() {
        double[] x = new Random(4).doubles(2 * RATE, -1, 1).toArray();
        MemoryAudio audio = new MemoryAudio("x", RATE, x);
        PhaseLaw law = PhaseLaw.steady(3150);
        Baseband whole = converter.convert(audio, 0.1, 1.9, law).get(0);
        int first = 1100;
        List<Baseband> parts =
                List.of(
                        converter.convert(audio, 0.1, 0, first, law).get(0),
                        converter.convert(audio, 0.1, first, 400, law).get(0));
        assertEquals(whole.seconds(first), parts.get(1).seconds(0), 1e-12);
        assertArrayEquals(Arrays.copyOfRange(whole.re(), 0, first), parts.get(0).re(), 1e-12);
        assertArrayEquals(Arrays.copyOfRange(whole.re(), first, 1500), parts.get(1).re(), 1e-12);
        assertArrayEquals(Arrays.copyOfRange(whole.im(), first, 1500), parts.get(1).im(), 1e-12);
    }

    /** As many as there are times from the first frame of the stretch on before its end. */
    @Test
    void outputsCountTheTimesInside() {
        int step = (int) Math.round(RATE / converter.rateHz());
        double tenSteps = 10.0 * step / RATE;
        assertEquals(10, converter.outputs(1, 1 + tenSteps - 0.5 / RATE));
        assertEquals(11, converter.outputs(1, 1 + tenSteps + 0.5 / RATE));
        assertEquals(1, converter.outputs(1, 1 + 0.5 / RATE));
        assertEquals(0, converter.outputs(1, 1));
        assertEquals(0, converter.outputs(2, 1));
    }
}
