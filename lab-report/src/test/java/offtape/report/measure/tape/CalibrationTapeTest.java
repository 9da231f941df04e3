package offtape.report.measure.tape;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.networknt.schema.InputFormat;
import com.networknt.schema.JsonSchemaFactory;
import com.networknt.schema.SpecVersion;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import java.util.Set;
import offtape.core.audio.AudioSource;
import offtape.core.audio.MemoryAudio;
import offtape.core.fault.UnusableInputException;
import offtape.core.standard.TimeConstants;
import offtape.core.standard.TrackSpacing;
import offtape.core.tape.ToneList;
import offtape.core.unit.Quantity;
import offtape.reference.Schemas;
import offtape.report.result.ResultsJson;
import offtape.report.result.TapeReading;
import offtape.report.result.TapeTone;
import org.junit.jupiter.api.Test;

/** Tapes of our own invention, whose truth is their formula. */
class CalibrationTapeTest {

    private static TapeReading read(AudioSource tape, TapeQuestion question) {
        return CalibrationTape.read(tape, question, 0, Double.POSITIVE_INFINITY);
    }

    private static String refusal(AudioSource tape, TapeQuestion question) {
        return assertThrows(UnusableInputException.class, () -> read(tape, question)).getMessage();
    }

    private static void assertWithin(double truth, Quantity figure, double most, String what) {
        assertTrue(figure.isKnown(), what + " is unknown: " + figure.reason());
        assertEquals(truth, figure.value(), most, what);
    }

    /** Level, speech, azimuth, speed and a series from 31.5 Hz to 20 kHz, hiss, wow and hum. */
    @Test
    void everyToneOfAHissyWaveringTapeIsFoundAndRead() {
        TapeBench bench =
                new TapeBench()
                        .gap(0.5)
                        .speech(2)
                        .tone(1000, 0, 4)
                        .speech(1.5)
                        .tone(10_000, -10, 4)
                        .gap(0.5)
                        .tone(3150, -10, 6)
                        .speech(1)
                        .tone(1000, -20, 2.5)
                        .gap(0.4)
                        .series(-20, 2.5, 31.5, 40, 125, 500, 4000, 12_500, 20_000)
                        .tone(1000, -10, 2)
                        .tone(1000, -5, 2)
                        .at(0.97)
                        .wow(0.1, 0.55)
                        .wow(0.15, 4.1)
                        .right(35, -0.3)
                        .noise(-55)
                        .hum(-40);
        TapeReading r =
                read(
                        bench.play(),
                        new TapeQuestion(
                                null, 3150.0, null, null, 190.5, TrackSpacing.named("two-track")));
        List<TapeBench.Truth> truth = bench.truth();
        assertEquals(truth.size(), r.tones().size());
        double worst = 0;
        for (int i = 0; i < truth.size(); i++) {
            TapeTone t = r.tones().get(i);
            String which = truth.get(i).hz() + " Hz";
            assertEquals(truth.get(i).from(), t.fromSeconds(), 0.15, which);
            assertEquals(truth.get(i).to(), t.toSeconds(), 0.15, which);
            assertWithin(truth.get(i).hz(), t.frequency(), 0.0012 * truth.get(i).hz(), which);
            Quantity level = t.levels().get(0).level();
            worst = Math.max(worst, Math.abs(level.value() - truth.get(i).levelDb()));
            assertWithin(truth.get(i).levelDb(), level, 0.03, which);
            assertWithin(-0.3, t.channelDifference(), 0.03, which);
        }
        System.out.printf("worst level of %d tones: %.4f dB off%n", truth.size(), worst);
        assertEquals(31.5, r.tones().get(4).nominalHz());
        assertWithin(-3, r.speedDeviation(), 0.01, "speed");
        assertTrue(r.speedFrom().startsWith("Read from tone 3"), r.speedFrom());
        assertNotNull(r.speed());
        assertWithin(35, r.interchannelDelay(), 0.1, "delay");
        // 190.5 mm/s · 0.97 · 35 µs / 4 mm = 1.6169 mrad = 5.558 arc minutes.
        assertWithin(5.558, r.azimuth(), 0.02, "azimuth");
        assertEquals("normal", r.polarity());
        // the tones at −20 dB are the response; that of 0 dB at the beginning is not among them
        assertEquals(4, r.responseZero().tone());
        for (double db : r.response().get(0).asReadDb()) {
            assertEquals(0, db, 0.03);
        }
        assertEquals(
                Set.of(),
                JsonSchemaFactory.getInstance(SpecVersion.VersionFlag.V202012)
                        .getSchema(Schemas.toneReadings())
                        .validate(ResultsJson.write(r), InputFormat.JSON));
    }

    /** Level and phase against a plain least-squares sine fit of the samples, on a steady tape. */
    @Test
    void levelsAreThoseOfASineFit() {
        MemoryAudio tape =
                new TapeBench()
                        .gap(0.3)
                        .series(-17, 2, 63, 1000, 15_000)
                        .right(12.5, 0.7)
                        .noise(-70)
                        .play();
        double[][] x = tape.read(0, (int) tape.frames());
        for (TapeTone t : read(tape, TapeQuestion.PLAIN).tones()) {
            int from = (int) ((t.fromSeconds() + 0.4) * TapeBench.RATE);
            double[] left = sine(x[0], from, t.nominalHz());
            double[] right = sine(x[1], from, t.nominalHz());
            assertWithin(20 * Math.log10(left[0]), t.levels().get(0).level(), 0.005, "left");
            assertWithin(20 * Math.log10(right[0]), t.levels().get(1).level(), 0.005, "right");
            assertEquals(right[1] - left[1], t.phaseDegrees(), 0.15);
            assertWithin(12.5, t.interchannelDelay(), 2e-1 * 1000 / t.nominalHz(), "delay");
        }
    }

    /** Peak and phase in degrees of a sine, by the normal equations over one second. */
    private static double[] sine(double[] x, int from, double hz) {
        double cc = 0;
        double cs = 0;
        double ss = 0;
        double xc = 0;
        double xs = 0;
        for (int i = from; i < from + TapeBench.RATE; i++) {
            double c = Math.cos(2 * Math.PI * hz * i / TapeBench.RATE);
            double s = Math.sin(2 * Math.PI * hz * i / TapeBench.RATE);
            cc += c * c;
            cs += c * s;
            ss += s * s;
            xc += c * x[i];
            xs += s * x[i];
        }
        double a = (xc * ss - xs * cs) / (cc * ss - cs * cs);
        double b = (xs * cc - xc * cs) / (cc * ss - cs * cs);
        return new double[] {Math.hypot(a, b), Math.toDegrees(Math.atan2(-b, a))};
    }

    /** A list says what was recorded: levels, purposes, the tape's equalisation. */
    @Test
    void aListGivesTheResponseAgainstWhatWasRecorded() {
        MemoryAudio tape =
                new TapeBench()
                        .tone(1000, 0, 2)
                        .gap(0.3)
                        .tone(1000, -20, 2)
                        .gap(0.3)
                        .tone(8000, -12, 2)
                        .gap(0.3)
                        .tone(777, -20, 2)
                        .rate(24_000)
                        .play();
        String list =
                """
                {"format": "offtape-tones", "version": 1, "name": "own", "equalisation": "none,70",
                 "tones": [{"frequencyHz": 1000, "levelDb": 0, "purpose": "reference"},
                  {"frequencyHz": 1000, "levelDb": -20}, {"frequencyHz": 16000, "levelDb": -20},
                  {"frequencyHz": 8000, "levelDb": -10}, {"frequencyHz": 777, "levelDb": -20}]}
                """;
        TapeReading r =
                read(
                        tape,
                        new TapeQuestion(
                                ToneList.fromJson(list),
                                null,
                                null,
                                TimeConstants.parse("3180,50"),
                                null,
                                null));
        assertEquals(List.of(16_000.0), r.series().missingHz());
        assertEquals(1, r.reference().tone());
        // 8 kHz was recorded at −10 dB and comes back at −12 dB.
        double[] asRead = r.response().get(0).asReadDb();
        assertEquals(-2, asRead[asRead.length - 1], 0.01);
        // Fluxes re 1 kHz at 8 kHz, lg(1 + (ωτ)²): 70 µs: −10·lg(13.381/1.19344) = −10.497 dB; 50
        // µs:
        // −10·lg(7.3165/1.09870) + 10·lg(1.0000391/1.0025049) = −8.2345 − 0.0107 = −8.245 dB. A
        // machine
        // set to 50 µs reads the tape of 70 µs 2.252 dB too low, so −2 dB are +0.252 dB.
        assertEquals(0.252, r.response().get(0).correctedDb()[asRead.length - 1], 0.015);
        assertTrue(
                r.notes().stream().anyMatch(n -> n.startsWith("Not found of the list: 16000 Hz")),
                r.notes().toString());
    }

    @Test
    void aListThatDoesNotFitIsRefused() {
        MemoryAudio tape = new TapeBench().series(-10, 2, 1000, 437, 2718).rate(16_000).play();
        String list =
                "{\"format\": \"offtape-tones\", \"version\": 1, \"tones\": [{\"frequencyHz\": 1000},"
                        + " {\"frequencyHz\": 6300}]}";
        String said =
                refusal(
                        tape,
                        new TapeQuestion(ToneList.fromJson(list), null, null, null, null, null));
        assertTrue(
                said.startsWith("The tones in tape.wav do not fit the list: 1 of 3 tones"), said);
        assertTrue(said.contains("437.0 Hz, at 2."), said);
    }

    @Test
    void tonesOfNoSeriesHaveNoNominalFrequency() {
        TapeReading r =
                read(
                        new TapeBench()
                                .series(-10, 2, 1000, 437, 1111, 5432, 2718)
                                .rate(16_000)
                                .play(),
                        TapeQuestion.PLAIN);
        assertEquals("none", r.series().kind());
        assertNull(r.tones().get(0).nominalHz());
        assertFalse(r.speedDeviation().isKnown());
    }

    /** Half the speed: 6300 Hz is no half of 12 500 Hz, so that the series tells. */
    @Test
    void halfTheSpeedIsSaid() {
        TapeReading r =
                read(
                        new TapeBench()
                                .series(-10, 1.5, 1000, 63, 500, 3150, 12_500, 16_000)
                                .at(0.5)
                                .rate(24_000)
                                .play(),
                        TapeQuestion.PLAIN);
        assertWithin(-50, r.speedDeviation(), 0.02, "speed");
        assertTrue(
                r.notes().get(0).startsWith("The tones fit at half the speed"), r.notes().get(0));
    }

    @Test
    void dropoutsAreLeftOutOfTheLevels() {
        TapeBench bench =
                new TapeBench()
                        .series(-10, 3, 125, 1000, 8000)
                        .right(0, -1)
                        .noise(-60)
                        .holes()
                        .rate(24_000);
        TapeReading r = read(bench.play(), TapeQuestion.PLAIN);
        assertEquals(3, r.tones().size());
        for (int i = 0; i < 3; i++) {
            TapeTone t = r.tones().get(i);
            assertWithin(bench.truth().get(i).levelDb(), t.levels().get(0).level(), 0.03, "level");
            assertTrue(t.leftOutSeconds() > 0.08, "left out");
        }
        assertTrue(r.notes().toString().contains("The level jumps in places"));
    }

    @Test
    void oneToneAloneIsSaidToBeOne() {
        TapeBench bench =
                new TapeBench().gap(0.5).tone(10_000, -10, 4).right(20, 0).noise(-60).rate(24_000);
        TapeReading r = read(bench.play(), TapeQuestion.PLAIN);
        assertTrue(r.notes().toString().contains("holds one steady tone only"));
        assertEquals(List.of(), r.response());
        assertTrue(
                r.interchannelDelay().reason().contains("delays of 20.0 µs and -80.0 µs fit"),
                r.interchannelDelay().reason());
        TapeReading mono = read(TapeBench.mono(bench.play()), TapeQuestion.PLAIN);
        assertTrue(mono.notes().toString().contains("one channel only"));
        assertEquals("The recording has one channel only.", mono.channelDifference().reason());
        assertNull(mono.polarity());
    }

    /** 3150 Hz that is 1 % fast may be 3000 Hz that is 6 % fast. */
    @Test
    void aToneThatMayBeTwoIsSaidToBe() {
        MemoryAudio tape = new TapeBench().tone(3150, -10, 6).at(1.01).rate(16_000).play();
        TapeReading r = read(tape, TapeQuestion.PLAIN);
        assertTrue(r.series().ambiguous());
        assertFalse(r.speedDeviation().isKnown());
        TapeReading named = read(tape, new TapeQuestion(null, 3000.0, null, null, null, null));
        // 3181.5 Hz over 3000 Hz
        assertWithin(6.05, named.speedDeviation(), 0.001, "speed");
    }

    @Test
    void speechMusicAndNoiseHoldNoTones() {
        MemoryAudio speech = new TapeBench().speech(6).noise(-60).rate(16_000).play();
        Random random = new Random(3);
        double[] noise = new double[4 * TapeBench.RATE];
        Arrays.setAll(noise, i -> 0.1 * random.nextGaussian());
        double[] music = new double[6 * TapeBench.RATE];
        Arrays.setAll(
                music,
                i -> {
                    // A scale in half seconds, each note fading.
                    double t = i % (TapeBench.RATE / 2) / (double) TapeBench.RATE;
                    double hz = 220 * Math.pow(2, i / (TapeBench.RATE / 2) * 2 / 12.0);
                    return 0.2 * Math.exp(-3 * t) * Math.sin(2 * Math.PI * hz * t);
                });
        for (AudioSource sound :
                List.of(
                        speech,
                        new MemoryAudio("noise", TapeBench.RATE, noise),
                        new MemoryAudio("music", TapeBench.RATE, music),
                        new MemoryAudio("silence", TapeBench.RATE, new double[96_000]))) {
            String said = refusal(sound, TapeQuestion.PLAIN);
            assertTrue(said.startsWith("No steady tone of 1.2 s or more"), said);
        }
    }
}
