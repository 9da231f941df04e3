package offtape.core.dsp;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.Random;
import java.util.stream.DoubleStream;
import offtape.core.unit.Decibels;
import offtape.reference.Source;
import org.apache.commons.math3.analysis.integration.SimpsonIntegrator;
import org.apache.commons.math3.complex.Complex;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class LowPassTest {

    /**
     * Pass edge 0.4π, stop edge 0.6π, error 0.001 (60 dB): the order formula gives 36.2, so the
     * book takes M = 37; an even order, which keeps the delay whole, takes M = 38, 39 taps. The
     * transition is symmetrical about 0.5π with a gain of ½ there. Setting the gain at 0 Hz to 1
     * may add the error there to that elsewhere in the pass band.
     */
    @Test
    @Source("Oppenheim and Schafer, Discrete-Time Signal Processing, section 7.5.3 (from memory)")
    void workedExampleOfTheDesignFormulas() {
        LowPass filter = LowPass.design(0.2, 0.3, 60, 1);
        assertEquals(39, filter.taps().length);
        assertEquals(19, filter.half());
        assertEquals(0.5, direct(filter, 0.25).abs(), 1e-3);
        assertTrue(passError(filter) <= 0.002, "pass band " + passError(filter));
        assertTrue(stopGain(filter) <= 0.001, "stop band " + stopGain(filter));
    }

    /** Gains by the defining sum over the taps, not by the filter's own method. */
    @ParameterizedTest
    @CsvSource({
        "260, 442, 90, 48000",
        "260, 442, 90, 192000",
        "20, 40, 90, 44100",
        "945, 1606, 90, 44100",
        "20000, 22050, 90, 44100",
        "100, 200, 60, 48000",
        "100, 200, 30, 48000",
        "100, 200, 120, 48000",
    })
    void keepsItsAttenuation(double pass, double stop, double attenuation, double rate) {
        LowPass filter = LowPass.design(pass, stop, attenuation, rate);
        double ripple = Decibels.toAmplitude(-attenuation);
        double allowed = ripple * Decibels.toAmplitude(2);
        double passError = passError(filter);
        double stopGain = stopGain(filter);
        System.out.printf(
                "low-pass %.0f/%.0f Hz: %d taps, stop band %.2f dB, pass band error %.2f dB%n",
                pass,
                stop,
                filter.taps().length,
                Decibels.ofAmplitude(stopGain),
                Decibels.ofAmplitude(passError));
        assertTrue(stopGain <= allowed, "stop band " + Decibels.ofAmplitude(stopGain));
        assertTrue(passError <= 2 * allowed, "pass band " + Decibels.ofAmplitude(passError));
    }

    @Test
    void gainAgreesWithTheDefiningSum() {
        LowPass filter = LowPass.design(260, 442, 90, 48_000);
        for (double f = 0; f <= 600; f += 7) {
            Complex expected = direct(filter, f);
            assertEquals(expected.getReal(), filter.gain(f), 1e-12);
            assertEquals(0, expected.getImaginary(), 1e-12);
        }
    }

    @Test
    void passesTheMeanUnchangedAndIsSymmetrical() {
        LowPass filter = LowPass.design(300, 500, 90, 44_100);
        double[] taps = filter.taps();
        assertEquals(1, Arrays.stream(taps).sum(), 1e-14);
        for (int i = 0; i < taps.length / 2; i++) {
            assertEquals(taps[i], taps[taps.length - 1 - i], 1e-17);
        }
    }

    /** By Parseval Σ h² · fs = ∫ |H|² df over −fs/2 … fs/2; here integrated numerically. */
    @Test
    void noiseBandwidthIsTheIntegralOfThePowerGain() {
        LowPass filter = LowPass.design(2000, 4000, 90, 48_000);
        double integral =
                2
                        * new SimpsonIntegrator(1e-10, 1e-10, 8, 20)
                                .integrate(
                                        1 << 20,
                                        f -> Math.pow(direct(filter, f).abs(), 2),
                                        0,
                                        6000);
        assertEquals(integral, filter.noiseBandwidthHz(), 1e-4 * integral);
        // An ideal filter with its edge in the middle of the transition would pass 6000 Hz.
        assertEquals(6000, filter.noiseBandwidthHz(), 400);
    }

    /**
     * Halves of 0 to 5 samples, the middle ones 1, those outwards smaller: each result is Σ tap ·
     * sample, the first with the filter's first tap on the first sample, the next one step on.
     */
    @ParameterizedTest
    @CsvSource({"0, 1", "1, 1", "2, 3", "3, 2", "4, 4", "5, 1"})
    void thinningIsConvolutionAtEachStep(int half, int step) {
        double[] taps = new double[2 * half + 1];
        Arrays.setAll(taps, i -> 1.0 / (1 + Math.abs(i - half)));
        LowPass filter = new LowPass(taps, 1, 2, 10);
        double[] x = new Random(half).doubles(2 * half + 3 * step + 1, -1, 1).toArray();
        double[] out = {7, 7, 7, 7, 7, 7};
        filter.thin(x, step, out, 1, 4);
        double[] expected = {7, 0, 0, 0, 0, 7};
        for (int j = 0; j < 4; j++) {
            for (int i = 0; i < taps.length; i++) {
                expected[1 + j] += taps[i] * x[j * step + i];
            }
        }
        assertArrayEquals(expected, out, 1e-14);
    }

    /** A rate of 1000 Hz passes white noise of a density over ± 500 Hz: 1000 Hz in all. */
    @Test
    void noFilterChangesNothing() {
        LowPass none = LowPass.none(1000);
        double[] out = new double[3];
        none.thin(new double[] {1, 2, 3, 4, 5}, 2, out, 0, 3);
        assertArrayEquals(new double[] {1, 3, 5}, out, 0);
        assertEquals(1, none.gain(333), 0);
        assertEquals(1000, none.noiseBandwidthHz(), 0);
        assertEquals(500, none.passHz(), 0);
        assertEquals(500, none.stopHz(), 0);
    }

    @ParameterizedTest
    @CsvSource({
        "0, 10, 100",
        "-1, 10, 100",
        "10, 10, 100",
        "20, 10, 100",
        "10, 51, 100",
        "NaN, 10, 100",
        "10, NaN, 100",
        "10, 20, NaN",
    })
    void refusesEdgesOutOfOrder(double pass, double stop, double rate) {
        assertThrows(IllegalArgumentException.class, () -> LowPass.design(pass, stop, 60, rate));
    }

    private static double passError(LowPass filter) {
        return grid(0, filter.passHz(), filter)
                .map(f -> Math.abs(direct(filter, f).abs() - 1))
                .max()
                .orElseThrow();
    }

    private static double stopGain(LowPass filter) {
        double top = Math.min(filter.sampleRateHz() / 2, 6 * filter.stopHz());
        return grid(filter.stopHz(), top, filter)
                .map(f -> direct(filter, f).abs())
                .max()
                .orElseThrow();
    }

    /** Frequencies four times as close as the ripples of the filter. */
    private static DoubleStream grid(double from, double to, LowPass filter) {
        double step = filter.sampleRateHz() / filter.taps().length / 4;
        int count = Math.max(1, (int) Math.ceil((to - from) / step));
        return DoubleStream.iterate(0, i -> i <= count, i -> i + 1)
                .map(i -> from + i * (to - from) / count);
    }

    private static Complex direct(LowPass filter, double hz) {
        double[] taps = filter.taps();
        double re = 0;
        double im = 0;
        for (int i = 0; i < taps.length; i++) {
            double angle = 2 * Math.PI * hz / filter.sampleRateHz() * (i - taps.length / 2);
            re += taps[i] * Math.cos(angle);
            im -= taps[i] * Math.sin(angle);
        }
        return new Complex(re, im);
    }
}
