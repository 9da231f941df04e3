package offtape.core.dsp;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.function.DoubleUnaryOperator;
import java.util.stream.IntStream;
import offtape.core.audio.MemoryAudio;
import offtape.core.unit.Decibels;
import offtape.reference.Source;
import org.apache.commons.math3.special.BesselJ;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class DownconverterTest {

    private static final int RATE = 48_000;
    private static final double CARRIER = 3150;

    /** The stop band of 90 dB is what is left of the image at twice the carrier. */
    private static final double LEFT_OVER = Decibels.toAmplitude(-89);

    private final Downconverter converter = Downconverter.of(260, 442, RATE, 1000);

    /** 3 s take several blocks; A·cos(ωt + φ) becomes (A/2)·exp(iφ) at every sample. */
    @Test
    void steadyToneStandsStill() {
        Baseband base = convert(t -> 0.4 * Math.cos(2 * Math.PI * CARRIER * t + 1.1), 3);
        for (int k = 0; k < base.size(); k++) {
            assertEquals(0.2 * Math.cos(1.1), base.re()[k], 0.2 * LEFT_OVER);
            assertEquals(0.2 * Math.sin(1.1), base.im()[k], 0.2 * LEFT_OVER);
        }
    }

    /** 100 Hz below the carrier the phasor turns backwards 100 times a second, from phase 0. */
    @Test
    void detunedToneTurns() {
        Baseband base = convert(t -> Math.cos(2 * Math.PI * (CARRIER - 100) * t), 1);
        double[] phase = base.unwrappedPhase();
        for (int k = 0; k < base.size(); k++) {
            double since = base.seconds(k) - base.seconds(0);
            assertEquals(-2 * Math.PI * 100 * since, phase[k], 4 * LEFT_OVER);
        }
    }

    /**
     * 0.2 % of deviation at 10 Hz: m = 6.3 / 10 = 0.63 rad. Amplitude modulation of 30 % beside.
     */
    @Test
    void phaseOfAModulatedToneIsRecovered() {
        double m = 0.63;
        Baseband base =
                convert(
                        t ->
                                (1 + 0.3 * Math.cos(2 * Math.PI * 7 * t))
                                        * Math.cos(
                                                2 * Math.PI * CARRIER * t
                                                        + m * Math.sin(2 * Math.PI * 10 * t)),
                        2);
        double[] phase = base.unwrappedPhase();
        double worst = 0;
        for (int k = 0; k < phase.length; k++) {
            double expected = m * Math.sin(2 * Math.PI * 10 * base.seconds(k));
            worst = Math.max(worst, Math.abs(phase[k] - expected));
        }
        System.out.printf("phase under 30 %% amplitude modulation: worst %.1e rad%n", worst);
        // The pass band ripple of 90 dB on every sideband, over the smallest amplitude 0.7.
        assertTrue(worst < 4 * LEFT_OVER / 0.7, "worst " + worst);
    }

    /**
     * cos(ωt + m·sin Ωt) = Σ J_n(m)·cos((ω + nΩ)t): lines at n times 25 Hz of height J_n(m)/2 in
     * the baseband, the odd ones below the carrier negative.
     */
    @ParameterizedTest
    @ValueSource(doubles = {0.1, 1, 2.404825557695773, 4})
    @Source("Abramowitz and Stegun 9.1.42 and 9.1.43; Bessel functions by Commons Math")
    void sidebandsFollowTheBesselFunctions(double m) {
        Baseband base =
                convert(
                        t -> Math.cos(2 * Math.PI * CARRIER * t + m * Math.sin(50 * Math.PI * t)),
                        4);
        for (int n = -8; n <= 8; n++) {
            double[] line = line(base, 25.0 * n);
            double bessel = BesselJ.value(Math.abs(n), m) * (n < 0 && n % 2 != 0 ? -1 : 1);
            assertEquals(bessel / 2, line[0], 2 * LEFT_OVER, "order " + n);
            assertEquals(0, line[1], 2 * LEFT_OVER, "order " + n);
        }
    }

    /** What lies more than the stop edge away from the carrier is gone, on either side. */
    @ParameterizedTest
    @ValueSource(doubles = {3150 - 460, 3150 + 460, 50, 20_000})
    void removesOtherTones(double hz) {
        Baseband base = convert(t -> Math.cos(2 * Math.PI * hz * t), 1);
        assertTrue(Math.sqrt(base.meanPower()) < 0.5 * LEFT_OVER);
    }

    @Test
    void channelsShareTheirTimes() {
        double[] left = samples(t -> Math.cos(2 * Math.PI * CARRIER * t), 1);
        MemoryAudio audio = new MemoryAudio("two", RATE, left, new double[left.length]);
        List<Baseband> bases = converter.convert(audio, 0.25, 0.75, PhaseLaw.steady(CARRIER));
        assertEquals(2, bases.size());
        assertEquals(0.25, bases.get(0).seconds(0), 1e-12);
        assertEquals(bases.get(0).seconds(9), bases.get(1).seconds(9), 0);
        assertEquals(0, bases.get(1).meanPower(), 0);
        double end = bases.get(0).seconds(bases.get(0).size());
        assertEquals(0.75, end, 1 / bases.get(0).rateHz());
        assertTrue(bases.get(0).rateHz() >= 1000);
    }

    /** Before the first and after the last sample there is silence, not an error. */
    @Test
    void stretchesBeyondTheRecordingAreSilent() {
        MemoryAudio audio = new MemoryAudio("short", RATE, new double[100]);
        assertEquals(0, converter.convert(audio, -2, -1, t -> 0).get(0).meanPower(), 0);
        assertEquals(0, converter.convert(audio, 5, 6, t -> 0).get(0).meanPower(), 0);
        assertEquals(0, converter.convert(audio, 0.5, 0.5, t -> 0).get(0).size());
        assertEquals(0, converter.convert(audio, 0.5, 0.1, t -> 0).get(0).size());
    }

    @Test
    void refusesAnotherSampleRate() {
        MemoryAudio audio = new MemoryAudio("other", 44_100, new double[100]);
        assertThrows(IllegalArgumentException.class, () -> converter.convert(audio, 0, 1, t -> 0));
    }

    /**
     * The carrier turned by multiplication against cosine and sine of its phase. One hour in, the
     * time itself is known to 4.5e-13 s, which is 9e-9 rad at 3150 Hz.
     */
    @Test
    void steadyCarrierDoesNotDrift() {
        double[] cos = new double[5000];
        double[] sin = new double[5000];
        PhaseLaw.steady(CARRIER).fill(3600, 1.0 / RATE, cos, sin);
        for (int i = 0; i < cos.length; i++) {
            // 3600 s hold whole cycles; 3150 · i / 48000 cycles follow.
            double phase = 2 * Math.PI * (3150L * i % RATE) / RATE;
            assertEquals(Math.cos(phase), cos[i], 2e-8);
            assertEquals(Math.sin(phase), sin[i], 2e-8);
        }
    }

    /** A law of its own, 2π(100 t + 5 t²), is evaluated at every time. */
    @Test
    void anyLawCanBeFollowed() {
        PhaseLaw law = t -> 2 * Math.PI * (100 * t + 5 * t * t);
        double[] cos = new double[300];
        double[] sin = new double[300];
        law.fill(0.5, 0.01, cos, sin);
        assertEquals(Math.cos(2 * Math.PI * (150 + 11.25)), cos[100], 1e-12);
        assertEquals(Math.sin(2 * Math.PI * (150 + 11.25)), sin[100], 1e-12);
        // at 0.53 s: 53 + 1.4045 cycles
        assertEquals(Math.cos(2 * Math.PI * 1.4045), cos[3], 1e-12);
        assertEquals(Math.sin(2 * Math.PI * 1.4045), sin[3], 1e-12);
    }

    private Baseband convert(DoubleUnaryOperator sound, double seconds) {
        MemoryAudio audio = new MemoryAudio("tone", RATE, samples(sound, seconds + 0.4));
        return converter.convert(audio, 0.2, seconds + 0.2, PhaseLaw.steady(CARRIER)).get(0);
    }

    private static double[] samples(DoubleUnaryOperator sound, double seconds) {
        return IntStream.range(0, (int) (seconds * RATE))
                .mapToDouble(i -> sound.applyAsDouble((double) i / RATE))
                .toArray();
    }

    /** Complex height of a line, by correlation over whole periods of 25 Hz. */
    private static double[] line(Baseband base, double hz) {
        int n = (int) Math.round(base.rateHz() / 25 * Math.floor(base.size() * 25 / base.rateHz()));
        double re = 0;
        double im = 0;
        for (int k = 0; k < n; k++) {
            double angle = -2 * Math.PI * hz * base.seconds(k);
            re += (base.re()[k] * Math.cos(angle) - base.im()[k] * Math.sin(angle)) / n;
            im += (base.im()[k] * Math.cos(angle) + base.re()[k] * Math.sin(angle)) / n;
        }
        return new double[] {re, im};
    }

    /** A sum of a carrier and its second and third harmonic: each stands still in its own order. */
    @Test
    void multiplesOfTheCarrierAreConvertedTogether() {
        double w = 2 * Math.PI * CARRIER;
        double[] x = new double[RATE];
        for (int i = 0; i < x.length; i++) {
            double t = (double) i / RATE;
            x[i] =
                    0.8 * Math.cos(w * t + 0.3)
                            + 0.2 * Math.cos(2 * w * t - 1)
                            + 0.1 * Math.cos(3 * w * t + 2);
        }
        List<List<Baseband>> orders =
                converter.convert(
                        new MemoryAudio("x", RATE, x), 0.2, 0.8, PhaseLaw.steady(CARRIER), 3);
        double[] peaks = {0.8, 0.2, 0.1};
        double[] phases = {0.3, -1, 2};
        for (int order = 0; order < 3; order++) {
            Baseband base = orders.get(order).get(0);
            for (int k = 0; k < base.size(); k++) {
                double half = peaks[order] / 2;
                assertEquals(half * Math.cos(phases[order]), base.re()[k], LEFT_OVER);
                assertEquals(half * Math.sin(phases[order]), base.im()[k], LEFT_OVER);
            }
        }
    }
}
