package offtape.report.measure.speed;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.function.DoubleUnaryOperator;
import offtape.core.audio.MemoryAudio;
import offtape.core.unit.Quantity;
import offtape.report.locate.ProgrammeReturn;
import offtape.report.result.ScrapeReading;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Scrape flutter of tones that are made by formula. */
class ScrapeToneTest {

    /** Before a tone that begins at 3 s. */
    private static final ProgrammeReturn.Span SILENCE = new ProgrammeReturn.Span(0.2, 2.8);

    /**
     * White noise of density N beside a tone of mean square P gives the phase the density N/P, so
     * the band from 200 to 1500 Hz reads, re 3150 Hz, √(N/P · (1500³ − 200³)/3) / 3150. With −58 dB
     * up to 24 kHz that is 0.0085 %.
     */
    @Test
    void theFloorIsWhatNoiseReads() {
        double noise = Math.pow(10, -5.8) / 24_000;
        double floor = 100 * Math.sqrt(noise * (Math.pow(1500, 3) - Math.pow(200, 3)) / 3) / 3150;
        ScrapeReading read = read(12, 3150, Tones.noise(Tones.sigma(58), 5), 0, 1);
        assertEquals(0.0087, floor, 0.0002);
        assertEquals(floor, read.floor(), 0.03 * floor);
        assertFalse(read.figure().isKnown());
    }

    /** A line of 0.02 % peak at 700 Hz has 0.01414 % rms, bare or with a steady level. */
    @ParameterizedTest
    @ValueSource(doubles = {1500, 3000, 3150, 10_000})
    void aLineIsReadOnTonesOfManyFrequencies(double toneHz) {
        ScrapeReading read = read(8, toneHz, Tones.noise(Tones.sigma(75), 7), 0.02, 700);
        assertEquals(0.014142, read.figure().value(), 0.02 * 0.014142);
        assertEquals(0.014142, read.figure().value(), read.figure().uncertainty());
    }

    /** A tone from 3 s on, hiss throughout; in the silence before it perhaps another. */
    private static ScrapeReading afterSilence(
            double toneDb, double silenceDb, double percent, ProgrammeReturn.Span silence) {
        DoubleUnaryOperator tone = Tones.wavering(3150, 0.2, percent, 700);
        DoubleUnaryOperator hiss = Tones.noise(1, 11);
        double loud = Tones.sigma(toneDb);
        double quiet = Tones.sigma(silenceDb);
        MemoryAudio audio =
                Tones.audio(
                        8,
                        t ->
                                t < 3
                                        ? quiet * hiss.applyAsDouble(t)
                                        : tone.applyAsDouble(t) + loud * hiss.applyAsDouble(t));
        return ScrapeFlutter.of(ToneStream.of(audio, 3.2, 7.8, 3150, 3150), silence);
    }

    /**
     * The hiss of the silence is the tone's own: its floor n is that of theFloorIsWhatNoiseReads, 6
     * dB louder here. Without silence the level tells as much, but all of that may be modulation
     * noise, so that √(x² + n²) − x is doubt. With it the 38 blocks of 4.6 s leave x/√39.
     */
    @Test
    void silenceTellsTheNoise() {
        double x = 0.02 * Math.sqrt(0.5);
        double floor = 0.0087 * Math.pow(10, (58 - 52) / 20.0);
        ScrapeReading read = afterSilence(52, 52, 0.02, SILENCE);
        assertEquals(floor, read.floor(), 0.04 * floor);
        assertEquals(x, read.figure().value(), read.figure().uncertainty());
        assertEquals(x / Math.sqrt(39), read.figure().uncertainty(), 0.15 * x / Math.sqrt(39));
        ScrapeReading bare = afterSilence(52, 52, 0.02, null);
        assertEquals(floor, bare.floor(), 0.04 * floor);
        double fromLevel = Math.hypot(x, floor) - x;
        assertEquals(fromLevel, bare.figure().uncertainty(), 0.1 * fromLevel);
    }

    /** Silence quieter than what shakes the tone's level: the noise is taken from the silence. */
    @Test
    void silenceGoesBeforeALevelThatShakesMore() {
        double still = 0.0087 * Math.pow(10, (58 - 75) / 20.0);
        ScrapeReading read = afterSilence(60, 75, 0.02, SILENCE);
        assertEquals(still, read.floor(), 0.04 * still);
        // phase noise of 60 dB is then taken for speed
        double noise = 0.0087 * Math.pow(10, -2 / 20.0);
        double all = Math.sqrt(0.014142 * 0.014142 + noise * noise - still * still);
        assertEquals(all, read.figure().value(), 0.02 * all);
    }

    /** Silence that is louder than the level says, or too short: the level tells. */
    @Test
    void aLevelCalmerThanTheSilenceTellsTheNoise() {
        double calm = 0.0087 * Math.pow(10, (58 - 65) / 20.0);
        assertEquals(calm, afterSilence(65, 50, 0.02, SILENCE).floor(), 0.04 * calm);
        ProgrammeReturn.Span brief = new ProgrammeReturn.Span(1, 1.49);
        assertEquals(calm, afterSilence(65, 75, 0.02, brief).floor(), 0.04 * calm);
        double still = calm * Math.pow(10, -0.5);
        ProgrammeReturn.Span enough = new ProgrammeReturn.Span(1, 1.5);
        assertEquals(still, afterSilence(65, 75, 0.02, enough).floor(), 0.15 * still);
    }

    /**
     * Two channels of unlike noise count by its inverse: of excess and of noise alike. Left 60 dB,
     * right 70 dB, so with weights 1 : 10 the noise is that of (1·1 + 10·0.1)/11 of the left's.
     */
    @Test
    void channelsCountAsTheyAreClear() {
        DoubleUnaryOperator tone = Tones.wavering(3150, 0.2, 0.03, 700);
        MemoryAudio audio =
                Tones.audio(
                        6,
                        Tones.sum(tone, Tones.noise(Tones.sigma(60), 3)),
                        Tones.sum(tone, Tones.noise(Tones.sigma(70), 4)));
        ScrapeReading read = ScrapeFlutter.of(Tones.stream(audio, 3150), null);
        double left = 0.0087 * Math.pow(10, -2 / 20.0);
        assertEquals(left * Math.sqrt(2 / 11.0), read.floor(), 0.06 * left * Math.sqrt(2 / 11.0));
        assertEquals(0.03 * Math.sqrt(0.5), read.figure().value(), 0.01 * 0.0212);
    }

    /** Nothing under 0.001 % is told, however clean the tone. */
    @Test
    void aCleanToneTellsWhatScrapeIsBelow() {
        Quantity clean = read(5, 3150, t -> 0, 0, 700).figure();
        assertEquals(
                "Scrape flutter does not stand out of the noise: it is below 0.001 %.",
                clean.reason());
        // 0.0013 % peak is 0.00092 % rms: too little, and said to be below √(0.00092² + 0.001²).
        Quantity little = read(5, 3150, t -> 0, 0.0013, 700).figure();
        assertEquals(
                "Scrape flutter does not stand out of the noise: it is below 0.002 %.",
                little.reason());
    }

    /**
     * A line has all of the power P in each of n blocks that overlap by half, of which the doubt is
     * P/√(n + 1): 19 in two seconds. As an rms that is 1/√(n + 1) of it at k = 2. The line lies on
     * a bin of blocks of 1024 values, at a ninth of 48 kHz.
     */
    @Test
    void theDoubtFallsWithTheLengthThatWasRead() {
        for (int pieces : new int[] {1, 3, 6}) {
            double seconds = 2.5 + 2 * (pieces - 1);
            double hz = 134 * 48_000 / 9.0 / 1024;
            Quantity line = read(seconds, 3150, t -> 0, 0.05, hz).figure();
            double rms = 0.05 * Math.sqrt(0.5);
            assertEquals(rms, line.value(), 0.005 * rms);
            double doubt = Math.hypot(rms / Math.sqrt(19 * pieces + 1), 0.005 * rms);
            assertEquals(doubt, line.uncertainty(), 0.02 * doubt, pieces + " pieces");
        }
    }

    /**
     * Of 5.95 s two pieces of two seconds are read, the first and the last. What lies between them
     * is not heard; what fills one of them counts for half of the power.
     */
    @ParameterizedTest
    @CsvSource({"2.4, 3.9, 0", "0, 2.2, 0.5", "4.1, 7, 0.5", "0, 7, 1"})
    void piecesReachFromTheBeginningToTheEnd(double from, double to, double share) {
        double depth = 0.05 / 100 * 3150 / 700;
        MemoryAudio audio =
                Tones.audio(
                        6.4,
                        t -> {
                            // the phase of a line that is on in whole turns of it
                            double line = t >= from && t < to ? Math.sin(2 * Math.PI * 700 * t) : 0;
                            return 0.1 * Math.sin(2 * Math.PI * 3150 * t + depth * line);
                        });
        Quantity read = ScrapeFlutter.of(Tones.stream(audio, 3150), null).figure();
        assertEquals(share > 0, read.isKnown());
        if (share > 0) {
            double rms = 0.05 * Math.sqrt(0.5 * share);
            assertEquals(rms, read.value(), 0.03 * rms);
        }
    }

    /** 40 dB lower with its noise, a tone tells the same. */
    @Test
    void howLoudTheToneIsDoesNotMatter() {
        double floor = 0.0087;
        DoubleUnaryOperator noisy = Tones.sum(Tones.steady(3150), Tones.noise(Tones.sigma(58), 5));
        MemoryAudio audio = Tones.audio(6, t -> 0.01 * noisy.applyAsDouble(t));
        ScrapeReading read = ScrapeFlutter.of(Tones.stream(audio, 3150), null);
        assertEquals(floor, read.floor(), 0.04 * floor);
    }

    /** Every block has a hole in which the tone falls under 0.7 of its level. */
    @Test
    void aToneThatFlickersIsTooUnsteady() {
        DoubleUnaryOperator tone = Tones.steady(3150);
        MemoryAudio audio =
                Tones.audio(
                        4, t -> (1 + 0.4 * Math.sin(2 * Math.PI * 8 * t)) * tone.applyAsDouble(t));
        ScrapeReading read = ScrapeFlutter.of(Tones.stream(audio, 3150), null);
        assertEquals(
                "The tone is too faint or too unsteady for scrape flutter.",
                read.figure().reason());
        MemoryAudio milder =
                Tones.audio(
                        4, t -> (1 + 0.2 * Math.sin(2 * Math.PI * 8 * t)) * tone.applyAsDouble(t));
        ScrapeReading told = ScrapeFlutter.of(Tones.stream(milder, 3150), null);
        assertTrue(told.figure().reason().startsWith("Scrape flutter does not"), told.toString());
    }

    /** A hole of 30 ms and a click spoil their own blocks alone. */
    @Test
    void holesAndClicksAreLeftOut() {
        DoubleUnaryOperator tone = Tones.wavering(3150, 0, 0.03, 700);
        double[] x = Tones.samples(5, t -> t > 1.5 && t < 1.53 ? 0 : tone.applyAsDouble(t));
        x[3 * Tones.RATE] += 0.03;
        MemoryAudio audio = new MemoryAudio("struck", Tones.RATE, x);
        Quantity read = ScrapeFlutter.of(Tones.stream(audio, 3150), null).figure();
        assertEquals(0.03 * Math.sqrt(0.5), read.value(), 0.01 * 0.0212);
    }

    private static ScrapeReading read(
            double seconds, double toneHz, DoubleUnaryOperator noise, double percent, double hz) {
        DoubleUnaryOperator tone = Tones.wavering(toneHz, 0.2, percent, hz);
        return ScrapeFlutter.of(
                Tones.stream(Tones.audio(seconds, Tones.sum(tone, noise)), toneHz), null);
    }

    @Test
    void reasonsAreGiven() {
        assertTrue(
                read(8, 500, t -> 0, 0, 1).figure().reason().contains("800 Hz or more"),
                "low tone");
        ScrapeReading brief = read(2.2, 3150, t -> 0, 0, 1);
        assertTrue(brief.figure().reason().contains("too short"), brief.toString());
        assertNull(brief.floor());
    }
}
