package offtape.report.measure.channel;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import offtape.core.programme.Cue;
import offtape.report.locate.ProgrammeReturn;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The level of a tone of peak 0.1, which at baseband is half of that: −26.02 dB. */
class LevelCurveTest {

    private static final double LEVEL_DB = 20 * Math.log10(0.05);

    private static List<Optional<LevelCurve>> curves(LongTone tone) {
        ProgrammeReturn ret = tone.play(1);
        return LevelCurve.of(ret, ret.cues(Cue.Tone.class).get(0));
    }

    /** Each channel has its own; the 50 ms at both ends, where the tone fades, are left out. */
    @Test
    void theLevelOfEachChannelOverTime() {
        List<Optional<LevelCurve>> curves = curves(new LongTone(8000, 1500, 2).rightGain(-0.5));
        for (int c = 0; c < 2; c++) {
            LevelCurve curve = curves.get(c).orElseThrow();
            double truth = LEVEL_DB - (c == 1 ? 20 * Math.log10(2) : 0);
            assertEquals(truth, Arrays.stream(curve.db()).min().orElseThrow(), 1e-3);
            assertEquals(truth, Arrays.stream(curve.db()).max().orElseThrow(), 1e-3);
            assertTrue(curve.rateHz() >= 2500);
            assertEquals(0.05, curve.firstSeconds(), 1e-3);
            assertEquals(1.9, curve.db().length / curve.rateHz(), 1e-3);
            assertEquals(0.05 + 1, curve.seconds(curve.rateHz()), 1e-3);
        }
    }

    /** A quarter fast: the tone is looked for at 2 kHz where 1.6 kHz were sent. */
    @Test
    void theToneIsThatOfTheReturn() {
        LevelCurve curve = curves(new LongTone(8000, 2000, 2).speed(1.25)).get(0).orElseThrow();
        assertEquals(LEVEL_DB, Arrays.stream(curve.db()).min().orElseThrow(), 1e-3);
        LevelCurve slow = curves(new LongTone(8000, 2000, 2).speed(0.75)).get(0).orElseThrow();
        assertEquals(LEVEL_DB, Arrays.stream(slow.db()).min().orElseThrow(), 1e-3);
    }

    /**
     * A step of 12 dB is softened by a raised cosine 4/(3·600 Hz) = 2.2 ms wide, and by the filter
     * before it: 4 ms away nothing is left of it, in between nothing is a tenth of a decibel lower
     * or higher than the two levels, and half of the amplitude is lost at the step.
     */
    @Test
    void aStepGetsSofterAndNoDeeper() {
        LongTone tone = new LongTone(8000, 1500, 2).damage(new LongTone.Damage(0, 1, 0.2, 12, 0));
        LevelCurve curve = curves(tone).get(0).orElseThrow();
        double low = LEVEL_DB - 12;
        double[] db = curve.db();
        assertEquals(low, Arrays.stream(db).min().orElseThrow(), 0.1);
        assertEquals(LEVEL_DB, Arrays.stream(db).max().orElseThrow(), 0.1);
        assertEquals(LEVEL_DB, db[at(curve, 0.996)], 0.05);
        assertEquals(low, db[at(curve, 1.004)], 0.05);
        double middle = 20 * Math.log10(0.05 * (1 + Math.pow(10, -12 / 20.0)) / 2);
        int crossed =
                IntStream.range(0, db.length).filter(k -> db[k] < middle).findFirst().orElseThrow();
        assertEquals(1, curve.seconds(crossed), 1 / curve.rateHz());
    }

    private static int at(LevelCurve curve, double seconds) {
        return (int) Math.rint((seconds - curve.firstSeconds()) * curve.rateHz());
    }

    /** Under 80 dB less than usual nothing is told apart. */
    @Test
    void silenceIsEightyDecibelsDown() {
        LongTone tone = new LongTone(8000, 1500, 2).damage(new LongTone.Damage(0, 1, 0.2, 200, 0));
        LevelCurve curve = curves(tone).get(0).orElseThrow();
        assertEquals(LEVEL_DB - 80, Arrays.stream(curve.db()).min().orElseThrow(), 0.01);
    }

    /** A tone of 2800 Hz has 600 Hz, and as much again for the filter, under half of 8 kHz. */
    @ParameterizedTest
    @CsvSource({"2800, true", "2810, false"})
    void aToneNearHalfTheRateHasNone(double hz, boolean known) {
        List<Optional<LevelCurve>> curves = curves(new LongTone(8000, hz, 1));
        assertEquals(2, curves.size());
        assertEquals(known, curves.get(0).isPresent());
        assertEquals(known, curves.get(1).isPresent());
    }

    /** A dead channel, and one whose noise is as strong as the tone, which swings by decibels. */
    @Test
    void whatIsNoToneHasNone() {
        assertTrue(curves(new LongTone(8000, 1500, 1).rightGain(0)).get(1).isEmpty());
        assertTrue(curves(new LongTone(8000, 1500, 2).hiss(5)).get(0).isEmpty());
        assertTrue(curves(new LongTone(8000, 1500, 2).hiss(-30)).get(0).isPresent());
    }

    /** Whole values, one at least. */
    @Test
    void secondsInSamples() {
        LevelCurve curve = new LevelCurve(new double[0], 2500, 3);
        assertEquals(25, curve.samples(0.01));
        assertEquals(1, curve.samples(1e-5));
        assertEquals(3.002, curve.seconds(5), 1e-12);
    }
}
