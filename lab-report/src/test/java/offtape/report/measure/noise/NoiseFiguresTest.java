package offtape.report.measure.noise;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import offtape.core.audio.MemoryAudio;
import offtape.core.programme.ChannelSet;
import offtape.core.programme.Cue;
import offtape.core.programme.CueSheet;
import offtape.core.programme.Programme;
import offtape.core.unit.Quantity;
import offtape.report.locate.Location;
import offtape.report.locate.ProgrammeReturn;
import offtape.report.locate.TimeMap;
import offtape.report.measure.tone.ReferenceLevels;
import offtape.report.result.Distortion;
import offtape.report.result.Noise;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Silences that hold a sine of a known level, whose weighted levels are those of tables, beside a
 * reference tone of peak 0.1 from ½ to 1½ s.
 */
class NoiseFiguresTest {

    private static final double PEAK = 0.1;

    /** A return on one channel with a silence of so many seconds from 2 s on. */
    private static ProgrammeReturn returned(
            int rate, double seconds, double hz, double db, double hiss) {
        return returned(rate, seconds, hz, db, hiss, 2.2 + seconds);
    }

    /** One in which the programme is heard up to a time only. */
    private static ProgrammeReturn returned(
            int rate, double seconds, double hz, double db, double hiss, double heardTo) {
        double[] x = new double[(int) ((2.2 + seconds) * rate)];
        Random random = new Random(1);
        for (int i = 0; i < x.length; i++) {
            double t = (double) i / rate;
            boolean tone = t >= 0.5 && t < 1.5;
            double peak = tone ? PEAK : t < 2 ? 0 : PEAK * Math.pow(10, db / 20);
            x[i] =
                    peak * Math.sin(2 * Math.PI * (tone ? 1000 : hz) * t)
                            + hiss * random.nextGaussian();
        }
        List<Cue> cues = new ArrayList<>();
        cues.add(new Cue.Tone("reference", ChannelSet.BOTH, rate / 2, rate, 1000, 0));
        if (seconds > 0) {
            cues.add(
                    new Cue.Silence(
                            "silence", ChannelSet.BOTH, 2L * rate, Math.round(seconds * rate)));
        }
        CueSheet sheet = new CueSheet(rate, x.length, -20, null, cues);
        MemoryAudio audio = new MemoryAudio("silence", rate, x);
        double length = 2.2 + seconds;
        Location location =
                new Location(
                        TimeMap.straight(0, 1, length),
                        length,
                        0,
                        0,
                        Collections.nCopies(1, 1),
                        true,
                        true,
                        0,
                        heardTo,
                        List.of());
        return new ProgrammeReturn(new Programme(sheet, audio), audio, location);
    }

    private static Noise noise(ProgrammeReturn ret, List<Distortion> ladders) {
        NoiseDensities densities = NoiseDensities.measure(ret).orElse(null);
        return new NoiseMeasure(
                        ret,
                        ReferenceLevels.measure(ret).orElse(null),
                        densities,
                        ModulationNoise.of(ret, densities))
                .measure(0, ladders);
    }

    private static Noise sine(double hz, double db) {
        return noise(returned(44_100, 2.4, hz, db, 0), List.of());
    }

    /**
     * Weightings of a steady sine of −40 dB: A after IEC 61672-1, table 2, and the network of ITU-R
     * BS.468-4, table 1; a quasi-peak meter reads a steady sine as its rms value.
     */
    @ParameterizedTest
    @CsvSource({"1000, 0.0, 0.0", "6300, -0.1, 12.2", "100, -19.1, -19.8"})
    void aSineHasItsWeightedLevels(double hz, double aDb, double ituDb) {
        Noise noise = sine(hz, -40);
        assertEquals(-40, noise.unweighted().value(), 0.02);
        assertEquals(-40 + aDb, noise.aWeighted().value(), 0.06);
        assertEquals(-40 + ituDb, noise.itu468().value(), 0.3);
        assertArrayEquals(new double[] {22.4, 22_050}, noise.unweightedBandHz());
    }

    /**
     * Its third of an octave holds a sine of 1 kHz, the others nothing. Centres go from 25 Hz to 16
     * kHz, the last that fits below half the rate with its upper edge; nothing is told of less than
     * −200 dB.
     */
    @Test
    void theSpectrumIsInThirdsOfAnOctave() {
        Noise noise = sine(1000, -40);
        double[] hz = noise.spectrum().frequencyHz();
        double[] level = noise.spectrum().levelDb();
        assertEquals(25.119, hz[0], 0.001);
        assertEquals(15_848.9, hz[hz.length - 1], 0.1);
        for (int i = 0; i < hz.length; i++) {
            if (Math.abs(hz[i] - 1000) < 1) {
                assertEquals(-40, level[i], 0.02);
            } else {
                assertTrue(level[i] < -80 && level[i] >= -200, hz[i] + " Hz: " + level[i]);
            }
        }
    }

    /** From 96 kHz the band ends at 22.4 kHz: what lies above, at −20 dB, is not counted. */
    @Test
    void whatLiesAboveTheBandDoesNotCount() {
        Noise noise = noise(returned(96_000, 1, 30_000, -20, 1e-6), List.of());
        assertTrue(noise.unweighted().value() < -60, noise.unweighted().toString());
        assertTrue(noise.aWeighted().value() < -60, noise.aWeighted().toString());
        assertArrayEquals(new double[] {22.4, 22_400}, noise.unweightedBandHz());
    }

    /** What a recording of 32 kHz does not hold is not told, but hum and spectrum are. */
    @Test
    void aNarrowRecordingTellsNoLevels() {
        Noise noise = noise(returned(32_000, 2, 50, -40, 1e-6), List.of());
        String reason =
                "The recording has 32000 frames a second and so nothing above 16.0 kHz, but a noise"
                        + " level takes in all that can be heard.";
        for (Quantity q :
                List.of(
                        noise.unweighted(),
                        noise.aWeighted(),
                        noise.itu468(),
                        noise.dynamicRange())) {
            assertEquals(reason, q.reason());
        }
        assertEquals(1, noise.hum().size());
        assertEquals(-40, noise.hum().get(0).levelDb(), 0.05);
        assertEquals(50, noise.mainsFrequency().value(), 0.01);
        assertTrue(noise.humThreshold().isKnown());
        assertEquals("left", noise.channel());
        assertNull(noise.unweightedBandHz());
        double[] hz = noise.spectrum().frequencyHz();
        assertEquals(12_589.3, hz[hz.length - 1], 0.1);
    }

    /**
     * White noise of rms r is spread to half the rate: the band of 22.03 kHz holds all but 0.1 %.
     */
    @Test
    void hissHasTheLevelOfItsBand() {
        Noise noise = noise(returned(44_100, 2.5, 1000, -200, 1e-4), List.of());
        double level = 20 * Math.log10(1e-4 / (PEAK / Math.sqrt(2)));
        assertEquals(level, noise.unweighted().value(), noise.unweighted().uncertainty());
        assertTrue(noise.unweighted().uncertainty() < 0.1);
        assertTrue(noise.hum().isEmpty());
        assertEquals("No hum stands out of the noise.", noise.mainsFrequency().reason());
        assertFalse(noise.residue().isKnown());
    }

    @Test
    void silenceOfZerosIsDigital() {
        Noise noise = noise(returned(44_100, 2.4, 1000, -9000, 0), List.of());
        String digital = "The silence of the recording is digital silence.";
        for (Quantity q :
                List.of(
                        noise.unweighted(),
                        noise.aWeighted(),
                        noise.itu468(),
                        noise.dynamicRange(),
                        noise.mainsFrequency(),
                        noise.residue())) {
            assertEquals(digital, q.reason());
        }
        double[] level = noise.spectrum().levelDb();
        assertEquals(-200, level[10]);
    }

    /** Without silence, or without a reference, nothing is told but why. */
    @Test
    void whatIsMissingIsSaid() {
        Noise none = noise(returned(44_100, 0, 1000, -40, 0), List.of());
        assertEquals(
                "The recording holds no recorded silence long enough.", none.unweighted().reason());
        assertEquals(none.unweighted().reason(), none.residue().reason());
        assertEquals("left", none.channel());
        assertNull(none.spectrum());
        ProgrammeReturn ret = returned(44_100, 1, 1000, -40, 0);
        NoiseDensities densities = NoiseDensities.measure(ret).orElseThrow();
        ModulationNoise modulation = ModulationNoise.of(ret, densities);
        Noise unheard = new NoiseMeasure(ret, null, densities, modulation).measure(0, List.of());
        assertEquals(
                "The reference tone was not heard on this channel.", unheard.aWeighted().reason());
        assertEquals(unheard.aWeighted().reason(), unheard.humThreshold().reason());
    }

    /** Where the programme breaks off before the end of the silence, that is why. */
    @Test
    void aSilenceThatIsNotWholeIsNamed() {
        ProgrammeReturn ret = returned(8000, 4, 1000, -40, 0, 3);
        assertEquals(
                "The programme breaks off at 3.0 s of the recording, before the end of its part"
                        + " \"silence\".",
                noise(ret, List.of()).unweighted().reason());
    }

    /** The meter needs a second to settle and as much again to be read, clear of both ends. */
    @ParameterizedTest
    @CsvSource({"2.3, true", "2.2999, false"})
    void aShortSilenceHasNoQuasiPeak(double seconds, boolean read) {
        Noise noise = noise(returned(44_100, seconds, 1000, -40, 0), List.of());
        assertEquals(read, noise.itu468().isKnown());
        if (!read) {
            assertEquals(
                    "The recorded silence is too short for a quasi-peak reading.",
                    noise.itu468().reason());
        }
        assertEquals(-40, noise.unweighted().value(), 0.05);
    }

    /**
     * The pointer is read for 1.2 s, in which white noise behind the network of ITU-R BS.468-4 has
     * 2·1.2 s·(∫W df)²/∫W² df = 2·1.2·8875 = 21 300 degrees of freedom (by the table's network,
     * integrated numerically), and a tenth less where the density is the mean of ten transforms
     * that half overlap: 10·lg(ν/χ²) = 0.085 to 0.089 dB, beside 0.02 of its own.
     */
    @Test
    void aPointerIsAsUnsteadyAsItsNoise() {
        Noise noise = noise(returned(44_100, 2.5, 1000, -200, 1e-4), List.of());
        assertEquals(0.090, noise.itu468().uncertainty(), 0.008);
    }

    /**
     * A reference known to 5 %, one standard deviation, leaves 2·20·lg 1.05 = 0.8476 dB; hiss of 22
     * kHz in 1.7 s has 75 000 degrees of freedom and leaves 0.045 dB.
     */
    @Test
    void levelsAreNoSurerThanTheirReference() {
        ProgrammeReturn ret = returned(44_100, 2, 1000, -200, 1e-4);
        NoiseDensities densities = NoiseDensities.measure(ret).orElseThrow();
        ReferenceLevels known = ReferenceLevels.measure(ret).orElseThrow();
        ReferenceLevels doubtful =
                new ReferenceLevels(
                        known.cue(), known.peaks(), known.rightOverLeft(), new double[] {0.05});
        Noise noise =
                new NoiseMeasure(ret, doubtful, densities, ModulationNoise.of(ret, densities))
                        .measure(0, List.of());
        assertEquals(0.849, noise.unweighted().uncertainty(), 0.002);
        assertEquals(0.849, noise.aWeighted().uncertainty(), 0.006);
    }

    /** From the A-weighted noise up to the level of 3 % of the same channel, first ladder first. */
    @Test
    void theDynamicRangeReachesToTheMaximumOutputLevel() {
        List<Distortion> ladders =
                List.of(
                        ladder("right", Quantity.known(9, "dB", 0.1)),
                        ladder("left", Quantity.unknown("Not reached.")),
                        ladder("left", Quantity.known(6, "dB", 0.3)),
                        ladder("left", Quantity.known(5, "dB", 0.3)));
        ProgrammeReturn ret = returned(44_100, 1, 1000, -40, 0);
        Noise noise = noise(ret, ladders);
        assertEquals(46, noise.dynamicRange().value(), 0.05);
        assertEquals(
                Math.hypot(0.3, noise.aWeighted().uncertainty()),
                noise.dynamicRange().uncertainty(),
                1e-12);
        assertEquals(
                "The maximum output level is not known on this channel.",
                noise(ret, ladders.subList(0, 2)).dynamicRange().reason());
    }

    private static Distortion ladder(String channel, Quantity maximum) {
        Quantity none = Quantity.unknown("Not asked.");
        return new Distortion(
                channel, 1000, List.of(), none, none, none, maximum, none, none, none, null, null);
    }

    /** A silence is read clear of 0.15 s at both ends; half a second must be left. */
    @ParameterizedTest
    @CsvSource({"0.81, true", "0.79, false"})
    void aSilenceMustBeLongEnough(double seconds, boolean read) {
        ProgrammeReturn ret = returned(8000, seconds, 1000, -40, 0);
        assertEquals(read, NoiseDensities.measure(ret).isPresent());
        if (read) {
            ProgrammeReturn.Span span = NoiseDensities.span(ret).orElseThrow();
            assertEquals(2.15, span.from(), 1e-9);
            assertEquals(2 + seconds - 0.15, span.to(), 1e-9);
        }
    }
}
