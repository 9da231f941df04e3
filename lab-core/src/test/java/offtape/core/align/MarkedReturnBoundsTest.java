package offtape.core.align;

import static offtape.core.align.HeardMark.RATE;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import offtape.core.audio.MemoryAudio;
import offtape.core.fault.UnusableInputException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Where what is said of a return flips; a mark and a pause have 2000 frames each here. */
class MarkedReturnBoundsTest {

    private static final double PEAK = 0.06;
    private static final int SOUND = 2000;
    private static final int SECOND = 2000 + 2000 + SOUND + 2000;

    private static MarkedSound sent(int rate, int frames) {
        return new MarkedSound(new MemoryAudio("stem", rate, new double[frames]), 1, PEAK);
    }

    private static double[] heard(double first, double second, double gain, double gainThen) {
        double[] x = new double[14_000];
        HeardMark.add(x, RATE, first, 1, gain);
        HeardMark.add(x, RATE, second, 1, gainThen);
        return x;
    }

    private static double[] heard(double first) {
        return heard(first, first + SECOND, PEAK, PEAK);
    }

    private static Alignment found(double[]... x) {
        return new MarkedReturn(sent(RATE, SOUND), new MemoryAudio("x", RATE, x)).find(4000);
    }

    /** A recording that is what was sent begins with the mark, and ends with it. */
    @Test
    void whatWasSentIsFoundInItself() {
        MarkedSound sent = sent(RATE, SOUND);
        double[] x = sent.read(0, (int) sent.frames())[0];
        Alignment found = new MarkedReturn(sent, new MemoryAudio("x", RATE, x)).find(0);
        assertTrue(found.isExact());
        assertEquals(4000, found.startFrame());
    }

    /**
     * The latest place of the first mark is one at which it is still found; its middle is 1000
     * frames behind.
     */
    @Test
    void theLatestPlaceIsStillOne() {
        double[] x = heard(1500);
        MarkedReturn back = new MarkedReturn(sent(RATE, SOUND), new MemoryAudio("x", RATE, x));
        assertEquals(4500, back.find(500).startFrame());
        assertThrows(UnusableInputException.class, () -> back.find(499));
    }

    /**
     * Hum of a peak h times that of the mark has an energy of h²/2 · 0.54 s in what is read about a
     * mark, which has 0.235 s · 1: it leaves a likeness of 0.235/(0.235 + 0.27·h²). That is 0.465
     * for 1, 0.491 for 0.95 and 0.340 for 1.3, and nine tenths of 0.491 are 0.442. The second
     * channel comes 10 frames later, and is the clock where the first one is too unclear.
     */
    @ParameterizedTest
    @CsvSource({"1, 0.95, 4500", "1.3, 0.95, 4510", "0.95, 1.3, 4500", "1.3, 0, 4510"})
    void theFirstChannelThatIsClearIsTheClock(double hum, double humToo, double start) {
        double[] x = heard(1500);
        double[] y = heard(1510);
        HeardMark.hum(x, RATE, hum * PEAK);
        HeardMark.hum(y, RATE, humToo * PEAK);
        assertEquals(start, found(x, y).startFrame(), 2);
    }

    /**
     * 20·lg of the second mark's gain over the first's, on the channel where it is farther from 0.
     */
    @ParameterizedTest
    @CsvSource({"0.5, -1, -1", "-1, 0.5, -1", "2, 1, 2", "0, 0, 0"})
    void theGreatestChangeOfLevelIsTold(double one, double other, double told) {
        double[] x = heard(1500, 1500 + SECOND, PEAK / 2, PEAK / 2 * Math.pow(10, one / 20));
        double[] y = heard(1500, 1500 + SECOND, PEAK / 3, PEAK / 3 * Math.pow(10, other / 20));
        assertEquals(told, found(x, y).levelChangeDb(), 0.001);
    }

    /**
     * The second mark is looked for 0.4 s to either side of its place, and a hundredth of the way
     * between the marks: with 20 s between them 0.6 s or 2400 frames.
     */
    @ParameterizedTest
    @CsvSource({"2380, true", "-2380, true", "2420, false", "-2420, false"})
    void theSecondMarkIsLookedForNearItsPlace(int off, boolean isThere) {
        double[] x = new double[90_000];
        HeardMark.add(x, RATE, 2000, 1, PEAK);
        HeardMark.add(x, RATE, 2000 + 80_000 + off, 1, PEAK);
        MarkedReturn back = new MarkedReturn(sent(RATE, 74_000), new MemoryAudio("x", RATE, x));
        if (isThere) {
            Alignment found = back.find(4000);
            assertEquals(1 + off / 80_000.0, found.step(), 1e-6);
            assertTrue(found.isBroken());
        } else {
            assertThrows(UnusableInputException.class, () -> back.find(4000));
        }
    }

    /** With half a second of sound between the marks, which then lie two seconds apart. */
    private static Alignment found(int rate, double first, double second, double speed) {
        double[] x = new double[25 * rate / 8];
        HeardMark.add(x, rate, first, speed, PEAK);
        HeardMark.add(x, rate, second, speed, PEAK);
        return new MarkedReturn(sent(rate, rate / 2), new MemoryAudio("x", rate, x)).find(rate / 2);
    }

    /**
     * A path that is fast as a whole is not broken, though 0.6 % is more than wow may do to a mark.
     * Taken for as slow, the low ends of its glides, 0.2 s from the middle and near 600 Hz, would
     * lie 0.2 s · 1.2 % or one and a half waves from where they are, and seem turned over.
     */
    @ParameterizedTest
    @ValueSource(doubles = {0.006, -0.006})
    void aFastPathIsNeitherBrokenNorInverted(double fast) {
        Alignment found = found(48_000, 24_000, 24_000 + 96_000 / (1 + fast), 1 + fast);
        assertEquals(1 + fast, 1 / found.step(), 1e-6);
        // from the middle of the mark to the sound: half a mark and a pause, 12 000 and 24 000
        assertEquals(24_000 + 36_000 / (1 + fast), found.startFrame(), 0.01);
        assertFalse(found.isBroken());
        assertTrue(found.gains().get(0) > 0);
    }

    /**
     * A clean mark's place is unsure by 5·10⁻⁴ frames, that of two by 7.1·10⁻⁴, and what is under
     * three times that, 2.1·10⁻³, is taken for none: as a part of a frame and as drift. The sound
     * lies three eighths of the way between the marks.
     */
    @ParameterizedTest
    @CsvSource({
        "0.0014, 0.0014, true, true",
        "0, 0.0014, true, true",
        "0.0014, 0, true, true",
        "0.0028, 0.0028, true, false",
        "-0.0028, -0.0028, true, false",
        "-0.0014, 0.0014, false, false",
        "0.0014, -0.0014, false, false",
    })
    void whatTheMarksCannotTellIsTakenForNone(
            double late, double lateThen, boolean isSteady, boolean isWhole) {
        Alignment found = found(16_000, 8000 + late, 40_000 + lateThen, 1);
        assertEquals(20_000 + late + 3 * (lateThen - late) / 8, found.startFrame(), 0.002);
        assertEquals(isSteady, found.step() == 1);
        assertEquals(isWhole, found.startFrame() == 20_000);
    }

    /** Marks 0.4 % apart from where their speed says are wow, 0.6 % are a piece lost or put in. */
    @ParameterizedTest
    @CsvSource({"0.004, false", "-0.004, false", "0.006, true", "-0.006, true"})
    void aDistanceThatIsNotThatOfTheSpeedIsABreak(double share, boolean isBroken) {
        assertEquals(
                isBroken, found(heard(1500, 1500 + SECOND * (1 + share), PEAK, PEAK)).isBroken());
    }
}
