package offtape.report.measure.speed;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.function.DoubleUnaryOperator;
import java.util.stream.IntStream;
import offtape.core.audio.MemoryAudio;
import offtape.core.dsp.PowerDensity;
import offtape.core.unit.Decibels;
import offtape.reference.ReferenceTable;
import offtape.reference.Source;
import org.apache.commons.math3.special.BesselJ;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class ToneStreamTest {

    private static final double TONE = 3150;

    /** The level is modulated by 30 % at 7 Hz besides, which must not show. */
    @ParameterizedTest
    @CsvSource({
        "3150, 0.5, 0.3",
        "3150, 4, 0.1",
        "3150, 50, 0.1",
        "3150, 150, 0.05",
        "3000, 9.55, 0.2",
        "1000, 9.55, 0.2",
        "1000, 180, 0.05",
        "10000, 9.55, 0.2",
        "10000, 0.5, 0.3",
        "300, 4, 0.2",
        "12000, 30, 0.1"
    })
    void deviationIsRecovered(double toneHz, double hz, double percent) {
        double mean = 0.05;
        DoubleUnaryOperator tone = Tones.wavering(toneHz, mean, percent, hz);
        MemoryAudio audio =
                Tones.audio(
                        4, t -> (1 + 0.3 * Math.sin(2 * Math.PI * 7 * t)) * tone.applyAsDouble(t));
        ToneStream stream = Tones.stream(audio, toneHz);
        double[] read = Tones.deviation(stream);
        assertEquals(stream.samples(), read.length);
        double worst = 0;
        for (int k = 0; k < read.length; k++) {
            double t = stream.firstSeconds() + k / stream.rateHz();
            double expected = mean + percent * Math.sin(2 * Math.PI * hz * t);
            worst = Math.max(worst, Math.abs(read[k] - expected));
        }
        System.out.printf(
                "%5.0f Hz, deviation of %.2f %% at %.2f Hz: worst %.1e %%%n",
                toneHz, percent, hz, worst);
        // The differentiator's 1e-4, and the filter's 3e-5 of phase at up to 200 Hz over the tone.
        assertTrue(worst < 1e-4 * percent + 2e-4 * TONE / toneHz, "worst " + worst);
    }

    /**
     * cos(ωt + m·sin Ωt) = Σ J_n(m)·cos((ω + nΩ)t): a tone put together from such lines deviates by
     * m·Ω·cos Ωt, also where the carrier itself vanishes, at m = 2.4048.
     */
    @ParameterizedTest
    @ValueSource(doubles = {0.1, 1, 2.404825557695773, 4})
    @Source("Abramowitz and Stegun 9.1.42 and 9.1.43; Bessel functions by Commons Math")
    void besselLinesAreOneDeviation(double index) {
        double rate = 20;
        double[] height = new double[16];
        Arrays.setAll(height, n -> BesselJ.value(n, index));
        MemoryAudio audio = Tones.audio(3, t -> Tones.PEAK * lines(t, rate, height));
        ToneStream stream = Tones.stream(audio, TONE);
        double[] read = Tones.deviation(stream);
        double peak = 100 * index * rate / TONE;
        double worst = 0;
        for (int k = 0; k < read.length; k++) {
            double t = stream.firstSeconds() + k / stream.rateHz();
            worst = Math.max(worst, Math.abs(read[k] - peak * Math.cos(2 * Math.PI * rate * t)));
        }
        System.out.printf(
                "Bessel lines, index %.3f: worst %.1e of the peak%n", index, worst / peak);
        // 15 pairs of lines leave J_16(4) = 2e-7; the filter's ripple is 3e-5 of each line.
        assertTrue(worst < 2e-4 * peak + 2e-4, "worst " + worst);
    }

    private static double lines(double t, double rate, double[] height) {
        double sum = height[0] * Math.cos(2 * Math.PI * TONE * t);
        for (int n = 1; n < height.length; n++) {
            double sign = n % 2 == 0 ? 1 : -1;
            sum += height[n] * Math.cos(2 * Math.PI * (TONE + n * rate) * t);
            sum += sign * height[n] * Math.cos(2 * Math.PI * (TONE - n * rate) * t);
        }
        return sum;
    }

    /** 20 % of amplitude modulation reads as next to nothing; the distance is printed. */
    @ParameterizedTest
    @CsvSource({"3150, 4", "3150, 30", "1000, 4", "1000, 30", "10000, 30", "315, 4", "315, 30"})
    void amplitudeDoesNotLeak(double toneHz, double hz) {
        DoubleUnaryOperator tone = Tones.steady(toneHz);
        MemoryAudio audio =
                Tones.audio(
                        8, t -> (1 + 0.2 * Math.sin(2 * Math.PI * hz * t)) * tone.applyAsDouble(t));
        ToneStream stream = Tones.stream(audio, toneHz);
        double[] read = Tones.deviation(stream);
        double worst = Arrays.stream(read).map(Math::abs).max().orElseThrow();
        double weighted = Tones.read(read, stream.rateHz()).weightedPeak();
        System.out.printf(
                "%5.0f Hz, 20 %% amplitude modulation at %2.0f Hz: %.1e %% at most, weighted %.1e %%"
                        + " (%.0f dB)%n",
                toneHz, hz, worst, weighted, Decibels.ofAmplitude(weighted / 20));
        // The image at twice the tone's frequency is 90 dB down: 3.2e-5 rad at 2f turn the
        // frequency by 6.3e-5 of f. The weighting takes 33 dB of what is faster than 600 Hz.
        assertTrue(worst < 0.0063, "worst " + worst);
        assertTrue(weighted < 0.00015, "weighted " + weighted);
    }

    /**
     * White noise of variance σ² beside a tone of peak A: N0 = 2σ²/fs, C = A²/2, and half of the
     * noise turns the phase: one-sided Sφ = N0 / C. As speed it rises with f: its rms from 20 to
     * 200 Hz is 100/3150·√(Sφ·(200³ − 20³)/3) percent. Channels combine as 1/S = 1/S1 + 1/S2.
     */
    @ParameterizedTest
    @CsvSource({"1e-3, 1e-3", "1e-3, 4e-3", "3e-4, 3e-2"})
    @Source("closed form of phase noise from additive white noise; Rife and Boorstyn 1974")
    void noiseIsToldAndWeighed(double left, double right) {
        MemoryAudio audio =
                Tones.audio(
                        12,
                        Tones.sum(Tones.steady(TONE), Tones.noise(left, 5)),
                        Tones.sum(Tones.steady(TONE), Tones.noise(right, 6)));
        ToneStream stream = Tones.stream(audio, TONE);
        double[] read = Tones.deviation(stream);
        double one = 4 * left * left / Tones.RATE / 0.01;
        double two = 4 * right * right / Tones.RATE / 0.01;
        double density = 1 / (1 / one + 1 / two);
        double told = stream.read(x -> {}).noiseDensity();
        assertEquals(density, told, 0.1 * density);
        double expected = 100 / TONE * Math.sqrt(density * (200 * 200 * 200 - 20 * 20 * 20) / 3);
        double rms = Math.sqrt(PowerDensity.of(read, stream.rateHz(), 1024).power(20, 200, f -> 1));
        System.out.printf("noise as speed: %.5f %%, closed form %.5f %%%n", rms, expected);
        // 11 s of 180 Hz know an rms to 1/√(4 · 11 · 180) = 1.1 %, the two ends of the band more.
        assertEquals(expected, rms, 0.05 * expected);
    }

    /** No estimate of a tone's frequency scatters less than the bound; the mean of slopes more. */
    @Test
    @Source({"Rife and Boorstyn 1974", "Kay 1993"})
    void scatterOfTheMeanKeepsTheCramerRaoBound() {
        ReferenceTable table = ReferenceTable.load("crlb");
        int row =
                IntStream.range(0, table.size())
                        .filter(r -> table.number(r, "snr") == 40)
                        .filter(r -> table.number(r, "duration") == 1)
                        .findFirst()
                        .orElseThrow();
        double bound = table.number(row, "deviation");
        double squares = 0;
        int draws = 40;
        for (int d = 0; d < draws; d++) {
            DoubleUnaryOperator noise = Tones.noise(Tones.sigma(40), d);
            MemoryAudio audio = Tones.audio(1.45, Tones.sum(Tones.steady(TONE), noise));
            double mean =
                    Arrays.stream(Tones.deviation(Tones.stream(audio, TONE)))
                            .average()
                            .orElseThrow();
            squares += Math.pow(mean / 100 * TONE, 2) / draws;
        }
        double ratio = Math.sqrt(squares) / bound;
        System.out.printf(
                "mean frequency in 1 s at 40 dB: %.1f times the Cramér-Rao bound%n", ratio);
        // 40 draws know a deviation to 11 %.
        assertTrue(ratio > 0.8, "better than possible: " + ratio);
        // Phases at both ends, each of √(Sφ · 350 Hz) = 1.2 mrad: √2 · 1.2e-3 / 2π = 2.7e-4 Hz.
        assertTrue(ratio < 1.4 * 2.7e-4 / bound, "ratio " + ratio);
    }

    /** The channel whose tone is missing does not spoil the other. */
    @Test
    void aDeadChannelDoesNotEnter() {
        DoubleUnaryOperator tone = Tones.wavering(TONE, 0.02, 0.1, 4);
        double[] both =
                Tones.deviation(Tones.stream(Tones.audio(3, tone, Tones.noise(1e-4, 8)), TONE));
        double[] one = Tones.deviation(Tones.stream(Tones.audio(3, tone), TONE));
        for (int k = 0; k < one.length; k++) {
            assertEquals(one[k], both[k], 1e-6);
        }
    }

    @Test
    void nothingIsReadFromSilenceNoiseOrTooLittle() {
        assertNull(Tones.stream(Tones.audio(3, t -> 0), TONE));
        assertNull(Tones.stream(Tones.audio(3, Tones.noise(0.1, 3)), TONE));
        MemoryAudio tone = Tones.audio(3, Tones.steady(TONE));
        assertNull(ToneStream.of(tone, 0.2, 0.9, TONE, TONE));
        assertNull(ToneStream.of(tone, 2, 1, TONE, TONE));
    }

    /** A second of values, 48 of which the differentiator takes besides. */
    @Test
    void aSecondIsEnough() {
        MemoryAudio tone = Tones.audio(2, Tones.steady(TONE));
        assertNull(ToneStream.of(tone, 0.2, 1.23, TONE, TONE));
        ToneStream stream = ToneStream.of(tone, 0.2, 1.26, TONE, 3160);
        assertEquals(1.26 - 0.2 - 48 / stream.rateHz(), stream.samples() / stream.rateHz(), 2e-3);
        assertEquals(0.2 + 24 / stream.rateHz(), stream.firstSeconds(), 1e-9);
        assertEquals(TONE, stream.nominalHz());
        assertEquals(3160, stream.expectedHz());
        assertEquals(tone, stream.recording());
        // 220 Hz and 1.2 % of the tone pass; 1.7 times that stops.
        assertEquals(257.92, stream.bandHz(), 1e-9);
        assertEquals(1, stream.gain(200), 1e-4);
        assertEquals(0, stream.gain(257.92 * 1.7), 1e-4);
    }

    /**
     * Noise of 1e-3 beside a peak of 0.1 has the density 4·1e-6/(48000·0.01), and weighs as 1/that.
     */
    @Test
    void channelsWeighByTheirNoise() {
        DoubleUnaryOperator tone = Tones.steady(TONE);
        MemoryAudio audio =
                Tones.audio(
                        6,
                        Tones.sum(tone, Tones.noise(1e-3, 5)),
                        Tones.sum(tone, Tones.noise(4e-3, 6)),
                        Tones.noise(1e-3, 7));
        ToneStream stream = Tones.stream(audio, TONE);
        assertEquals(1.2e8, stream.weight(0), 0.15 * 1.2e8);
        assertEquals(7.5e6, stream.weight(1), 0.15 * 7.5e6);
        assertEquals(0, stream.weight(2));
    }

    /**
     * While the left channel is gone for 0.1 s the right one has to have a fifth of all weight, a
     * quarter of the left's, which is half of its noise; or the weight of 1e8, noise of 1.1e-3,
     * however little that is. Three pieces of two seconds, so that the one with the hole weighs
     * none.
     */
    @ParameterizedTest
    @CsvSource({"4e-3, 6e-3, 0", "4e-3, 12e-3, 1", "1e-4, 8e-4, 0", "1e-4, 1.6e-3, 1"})
    void theOtherChannelTellsIfItIsClearEnough(double left, double right, int gaps) {
        DoubleUnaryOperator tone = Tones.steady(TONE);
        MemoryAudio audio =
                Tones.audio(
                        6.4,
                        Tones.sum(
                                t -> t > 3 && t < 3.1 ? 0 : tone.applyAsDouble(t),
                                Tones.noise(left, 5)),
                        Tones.sum(tone, Tones.noise(right, 6)));
        ToneStream.Summary summary = Tones.stream(audio, TONE).read(x -> {});
        assertEquals(gaps, summary.gaps());
        // what the filters see of it is bridged too: 24 values a side, and some of the band's
        double bridged = summary.bridgedSeconds();
        assertTrue(gaps == 0 ? bridged == 0 : bridged > 0.12 && bridged < 0.17, "for " + bridged);
    }

    /**
     * A level 24 dB over the noise around the tone still tells the phase, but none under a
     * fiftieth, and a quarter in any noise. The band holds some 650 Hz, so that the noise of a tone
     * of 30 dB has √(0.5 · 650 Hz · 2/(10³ · 48 kHz)) = 0.0037 of its level, 16 of which are 0.06;
     * of one of 20 dB 0.19, of one of 15 dB 0.33.
     */
    @ParameterizedTest
    @CsvSource({
        "70, 0.025, 0",
        "70, 0.015, 1",
        "30, 0.08, 0",
        "30, 0.04, 1",
        "20, 0.28, 0",
        "20, 0.1, 1",
        "15, 0.5, 0",
        "15, 0.12, 1"
    })
    void aToneIsGoneWhereNoiseTurnsItsPhase(double snr, double level, int gaps) {
        DoubleUnaryOperator tone = Tones.steady(TONE);
        DoubleUnaryOperator noise = Tones.noise(Tones.sigma(snr), 5);
        MemoryAudio audio =
                Tones.audio(
                        3,
                        t -> {
                            double edge = Math.max(0, Math.min(1, 10 * (0.3 - Math.abs(t - 1.5))));
                            double dip = 1 - (1 - level) * (0.5 - 0.5 * Math.cos(Math.PI * edge));
                            return dip * tone.applyAsDouble(t) + noise.applyAsDouble(t);
                        });
        int found = Tones.stream(audio, TONE).read(x -> {}).gaps();
        assertTrue(gaps == 0 ? found == 0 : found > 0, "gaps " + found);
    }
}
