package offtape.report.measure.tone;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Random;
import java.util.function.DoubleUnaryOperator;
import java.util.stream.IntStream;
import offtape.core.audio.MemoryAudio;
import offtape.report.locate.ProgrammeReturn;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class OrderSpectrumTest {

    private static final int RATE = 48_000;
    private static final ProgrammeReturn.Span SPAN = new ProgrammeReturn.Span(0.1, 1.3);

    /**
     * x + a·x³ with x = A·sin φ: sin³ = (3 sin φ − sin 3φ)/4 gives a fundamental of A·(1 + ¾aA²)
     * and a third harmonic of aA³/4, so K3 = (aA²/4) / (1 + ¾aA²), and no second harmonic.
     */
    @ParameterizedTest
    @CsvSource({
        "1000, 0.04, 4, 0.3",
        "1000, 4e-4, 9.55, 0.2",
        "315, 0.4, 0.6, 0.3",
        "997, 0.04, 40, 0.1"
    })
    void harmonicsOfAWaveringToneAreGathered(double hz, double aa, double wowHz, double percent) {
        double peak = 0.5;
        OrderSpectrum o =
                analyse(
                        t -> {
                            double x = Math.sin(wavering(t, hz, wowHz, percent));
                            return peak * (x + aa * x * x * x);
                        },
                        hz);
        double fundamental = peak * (1 + 0.75 * aa);
        double k3 = 0.25 * aa / (1 + 0.75 * aa);
        assertEquals(fundamental, Math.sqrt(o.power(1)), 1e-3 * fundamental);
        double measured = Math.sqrt(o.power(3) / o.power(1));
        System.out.printf(
                "K3 at %.0f Hz, %.1f %% of wow at %.2f Hz: %.3e off %.3e, K2 %.1e%n",
                hz, percent, wowHz, measured - k3, k3, Math.sqrt(o.power(2) / o.power(1)));
        assertEquals(k3, measured, 0.002 * k3);
        assertTrue(Math.sqrt(o.power(2) / o.power(1)) < 1e-5);
    }

    /** 0.1·(x² − ½)·2 adds a second harmonic of 0.1: sin² φ = (1 − cos 2φ)/2. */
    @Test
    void evenHarmonicsAreRead() {
        OrderSpectrum o =
                analyse(
                        t -> {
                            double x = Math.sin(wavering(t, 1000, 4, 0.1));
                            return 0.5 * (x + 0.02 * x * x);
                        },
                        1000);
        assertEquals(0.01, Math.sqrt(o.power(2) / o.power(1)), 1e-5);
    }

    /**
     * White noise of variance σ² has N0 = 2σ²/fs; Hann's line is 1.5/T wide, so a line of noise has
     * the mean square 3σ²/(fs·T) and the squared peak 6σ²/(fs·T). The median of 68 lines is known
     * to 1/√68 / ln 2 = 17 %; ten orders of ten draws bring that to 2 %.
     */
    @Test
    void noiseIsReadBesideTheHarmonics() {
        double sigma = 1e-3;
        double sum = 0;
        double fromLine = 0;
        for (int draw = 0; draw < 10; draw++) {
            Random random = new Random(draw);
            OrderSpectrum o =
                    analyse(
                            t -> 0.5 * Math.sin(2000 * Math.PI * t) + sigma * random.nextGaussian(),
                            1000);
            for (int order = 2; order <= 11; order++) {
                sum += o.noise(order) / 100;
                fromLine += o.power(order) / 100;
            }
        }
        double expected = 6 * sigma * sigma / (RATE * SPAN.seconds());
        System.out.printf("noise beside harmonics: %.4f of the closed form%n", sum / expected);
        assertEquals(expected, sum, 0.06 * expected);
        // A hundred lines of noise: 1/√100 = 10 %.
        assertEquals(expected, fromLine, 0.3 * expected);
    }

    /** Every channel is read on the phase of the louder: a tone 60 dB down keeps its ratio. */
    @Test
    void theQuietChannelFollowsTheLoudOne() {
        double[] loud = samples(t -> 0.5 * Math.sin(wavering(t, 1000, 4, 0.2)));
        double[] quiet = IntStream.range(0, loud.length).mapToDouble(i -> loud[i] / 1000).toArray();
        List<OrderSpectrum> both =
                OrderSpectrum.of(new MemoryAudio("x", RATE, quiet, loud), SPAN, 1000);
        assertEquals(1e-6, both.get(0).power(1) / both.get(1).power(1), 1e-9);
        Complex a = both.get(1).fundamental();
        assertEquals(0.5, Math.hypot(a.re(), a.im()), 5e-4);
    }

    @Test
    void nothingIsReadFromSilenceOrTooLittle() {
        MemoryAudio silence = new MemoryAudio("x", RATE, new double[RATE]);
        assertEquals(List.of(), OrderSpectrum.of(silence, SPAN, 1000));
        MemoryAudio tone = new MemoryAudio("x", RATE, samples(t -> Math.sin(6283 * t)));
        ProgrammeReturn.Span little = new ProgrammeReturn.Span(0.1, 0.11);
        assertEquals(List.of(), OrderSpectrum.of(tone, little, 1000));
        assertEquals(List.of(), OrderSpectrum.of(tone, SPAN, 23_900), "beyond half the rate");
    }

    /** Orders whose lines lie beyond the transform have no power, and no noise is invented. */
    @Test
    void ordersBeyondTheRateAreNothing() {
        OrderSpectrum o = analyse(t -> 0.5 * Math.sin(2000 * Math.PI * t), 1000);
        assertEquals(0, o.power(500), 0);
        assertEquals(0, o.noise(500), 0);
        assertEquals(20, OrderSpectrum.highestOrder(1000, 20_000));
        assertEquals(63, OrderSpectrum.highestOrder(315, 20_000));
    }

    /** The band of 555 Hz ends 2·(0.04·555 + 20) = 84.4 Hz higher, at half of 1278.8 Hz. */
    @ParameterizedTest
    @CsvSource({"1279, 1", "1278, 0"})
    void theBandLiesBelowHalfTheRate(int rate, int found) {
        double[] x =
                IntStream.range(0, 2 * rate)
                        .mapToDouble(i -> Math.sin(2 * Math.PI * 555 * i / rate))
                        .toArray();
        assertEquals(found, OrderSpectrum.of(new MemoryAudio("x", rate, x), SPAN, 555).size());
    }

    /** A tone has 26 cycles at least: 27 of 20 Hz lie in 1.36 s, 25 in 1.26 s. */
    @Test
    void aToneOfFewCyclesTellsNothing() {
        MemoryAudio tone = new MemoryAudio("x", RATE, samples(t -> Math.sin(2 * Math.PI * 20 * t)));
        ProgrammeReturn.Span longer = new ProgrammeReturn.Span(0.02, 1.38);
        ProgrammeReturn.Span shorter = new ProgrammeReturn.Span(0.02, 1.28);
        assertEquals(1, OrderSpectrum.of(tone, longer, 20).size());
        assertEquals(List.of(), OrderSpectrum.of(tone, shorter, 20));
    }

    /**
     * A level that swings by 2 % three times over the stretch has lines three beside the tone, of
     * 0.01·A. Hann's window shows each there and half as high beside: 1.5·(0.01·A)² to each side,
     * over the eight lines two to five beside the tone 3/8·(0.01·A)².
     */
    @Test
    void aLevelThatSwingsIsUnrest() {
        OrderSpectrum steady = analyse(t -> 0.5 * Math.sin(2000 * Math.PI * t), 1000);
        double slow = 3 / SPAN.seconds();
        OrderSpectrum swinging =
                analyse(
                        t ->
                                (1 + 0.02 * Math.cos(2 * Math.PI * slow * t))
                                        * 0.5
                                        * Math.sin(2000 * Math.PI * t),
                        1000);
        double expected = 3.0 / 8 * 0.005 * 0.005;
        assertEquals(expected, swinging.unrest(1), 0.02 * expected);
        assertTrue(steady.unrest(1) < 1e-3 * expected);
        assertEquals(0, steady.unrest(500), 0, "beyond the transform");
    }

    /** Where noise is all that moves a level, that is its unrest: never less than the noise. */
    @Test
    void noiseIsUnrest() {
        Random random = new Random(1);
        OrderSpectrum o =
                analyse(
                        t -> 0.5 * Math.sin(2000 * Math.PI * t) + 1e-3 * random.nextGaussian(),
                        1000);
        int more = 0;
        for (int order = 2; order <= 12; order++) {
            assertTrue(o.unrest(order) >= o.noise(order));
            more += o.unrest(order) > o.noise(order) ? 1 : 0;
        }
        assertTrue(more > 1 && more < 10, more + " of eleven over the noise, about half");
    }

    /**
     * Left leaks into right, the tone by 0.1 with 0.5 rad, its third harmonic by 0.3: what is left
     * of right is its own tone of 0.02 at another phase.
     */
    @Test
    void aLeakIsTakenOutOrderByOrder() {
        double[] left =
                samples(
                        t -> {
                            double phase = wavering(t, 1000, 4, 0.1);
                            return 0.5 * Math.sin(phase) + 0.05 * Math.sin(3 * phase);
                        });
        double[] right =
                samples(
                        t -> {
                            double phase = wavering(t, 1000, 4, 0.1);
                            return 0.05 * Math.sin(phase + 0.5)
                                    + 0.015 * Math.sin(3 * phase)
                                    + 0.02 * Math.sin(phase + 1);
                        });
        List<OrderSpectrum> both =
                OrderSpectrum.of(new MemoryAudio("x", RATE, left, right), SPAN, 1000);
        OrderSpectrum rest =
                both.get(1)
                        .without(
                                both.get(0),
                                order ->
                                        order < 2
                                                ? Complex.polar(0.1, 0.5)
                                                : order > 2.9 && order < 3.1
                                                        ? new Complex(0.3, 0)
                                                        : Complex.ZERO);
        assertEquals(4e-4, rest.power(1), 1e-6);
        assertEquals(0, rest.power(3), 1e-9);
        assertTrue(both.get(1).power(3) > 2e-4);
        double ahead = rest.fundamental().over(both.get(0).fundamental()).phase();
        assertEquals(1, ahead, 1e-3);
        assertEquals(0.04, rest.fundamental().over(both.get(0).fundamental()).size(), 1e-4);
    }

    /**
     * Noise is no tone though it has a phase that can be followed: 1 − π/4 of its power waves all
     * over the band. A tone of twenty times the power that noise has in ± 60 Hz of 24 kHz is one.
     */
    @ParameterizedTest
    @CsvSource({"1000, 20", "315, 20", "5000, 20"})
    void noiseAloneIsNoTone(double hz, double times) {
        double sigma = 1e-3;
        double band = OrderBand.of(hz).passHz() / (RATE / 4.0);
        double peak = sigma * Math.sqrt(2 * times * band);
        for (int draw = 0; draw < 5; draw++) {
            Random random = new Random(draw);
            double[] noise = samples(t -> sigma * random.nextGaussian());
            double[] tone = samples(t -> peak * Math.sin(2 * Math.PI * hz * t));
            double[] both =
                    IntStream.range(0, noise.length).mapToDouble(i -> noise[i] + tone[i]).toArray();
            MemoryAudio hissing = new MemoryAudio("x", RATE, noise, noise);
            assertEquals(List.of(), OrderSpectrum.of(hissing, SPAN, hz));
            MemoryAudio sounding = new MemoryAudio("x", RATE, noise, both);
            assertEquals(2, OrderSpectrum.of(sounding, SPAN, hz).size());
        }
    }

    private static double wavering(double t, double hz, double wowHz, double percent) {
        double wow = percent / 100 / (2 * Math.PI * wowHz) * Math.sin(2 * Math.PI * wowHz * t);
        return 2 * Math.PI * hz * (t + wow);
    }

    private static OrderSpectrum analyse(DoubleUnaryOperator sound, double hz) {
        return OrderSpectrum.of(new MemoryAudio("x", RATE, samples(sound)), SPAN, hz).get(0);
    }

    private static double[] samples(DoubleUnaryOperator sound) {
        return IntStream.range(0, (int) (1.4 * RATE))
                .mapToDouble(i -> sound.applyAsDouble((double) i / RATE))
                .toArray();
    }
}
