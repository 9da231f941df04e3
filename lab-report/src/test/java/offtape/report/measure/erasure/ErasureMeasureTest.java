package offtape.report.measure.erasure;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.List;
import java.util.Random;
import java.util.function.DoubleUnaryOperator;
import offtape.core.audio.MemoryAudio;
import offtape.core.dsp.Downconverter;
import offtape.core.fault.UnusableInputException;
import offtape.report.result.Erasure;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class ErasureMeasureTest {

    private static final int RATE = 4000;
    private static final double TONE_HZ = 1004;

    /** −7.96 dB re a full-scale sine. */
    private static final double PEAK = 0.4;

    /**
     * White hiss whose density is h²/2000: what passes 12 Hz to either side wholly and 24 Hz no
     * more holds between 24 and 48 Hz of it, −88.7 dB re 1 in 30 Hz.
     */
    private static final double HISS = 3.01e-4;

    /** A tone of a course in dB, −∞ for none, with wow of 0.3 % and white hiss. */
    private static double[] tone(
            double seconds, double hz, DoubleUnaryOperator db, double hissRms, long seed) {
        Random random = new Random(seed);
        double[] x = new double[(int) Math.round(seconds * RATE)];
        double phase = 0;
        for (int i = 0; i < x.length; i++) {
            double t = (double) i / RATE;
            double wow = 0.003 * Math.sin(2 * Math.PI * 0.7 * t);
            phase += 2 * Math.PI * hz * (1 + wow) / RATE;
            double gain = Math.pow(10, db.applyAsDouble(t) / 20);
            x[i] = PEAK * gain * Math.sin(phase) + hissRms * random.nextGaussian();
        }
        return x;
    }

    /** Ten erased seconds and ten of the tone. */
    private static double[] replay(double residueDb, double hissRms, long seed) {
        return tone(20, TONE_HZ, t -> t < 10 ? residueDb : 0, hissRms, seed);
    }

    private static List<Erasure> read(double[]... channels) {
        return ErasureMeasure.read(new MemoryAudio("replay.wav", RATE, channels));
    }

    private static double erasureDb(double[] replay) {
        return read(replay).get(0).erasure().value();
    }

    private static String refusal(double[] replay) {
        return assertThrows(UnusableInputException.class, () -> read(replay)).getMessage();
    }

    /**
     * What is left is known by construction: −52 and −63 dB. The latter has a mean square of −74.0
     * dB re 1, 15 dB over the hiss.
     */
    @Test
    void whatIsLeftIsReadThroughWowAndHiss() {
        List<Erasure> read = read(replay(-52, HISS, 1), replay(-63, HISS, 2));
        assertEquals(List.of("left", "right"), read.stream().map(Erasure::channel).toList());
        double[] expected = {52, 63};
        for (int c = 0; c < 2; c++) {
            Erasure e = read.get(c);
            assertEquals(TONE_HZ, e.frequencyHz(), 2);
            assertEquals(-7.96, e.toneDbfs(), 0.05);
            assertEquals(expected[c], e.erasure().value(), 0.1 + e.erasure().uncertainty());
            assertEquals("dB", e.erasure().unit());
            assertTrue(e.erasure().uncertainty() < 0.6, () -> "± " + e.erasure().uncertainty());
            assertNull(e.atLeastDb());
        }
    }

    /**
     * A steady rest of power S beats with noise of power N, so the mean over v values scatters by
     * √((2·S·N + 1.5·N²)/v). With −43 dB (15 dB louder than above, 35 dB over the hiss in some 36
     * Hz) over seven seconds that is √(2/3300/250) = 0.0016, 0.014 dB at k = 2; with −63 dB 0.14
     * dB. Five replays of two channels each must scatter as stated.
     */
    @ParameterizedTest
    @CsvSource({"-43, 0.014", "-63, 0.14"})
    void theUncertaintyIsThatOfTheScatter(double residueDb, double expected) {
        double squares = 0;
        double stated = 0;
        for (int draw = 0; draw < 5; draw++) {
            DoubleUnaryOperator db = t -> t < 4 ? 0 : residueDb;
            List<Erasure> read =
                    read(
                            tone(14, TONE_HZ, db, HISS, 100 + draw),
                            tone(14, TONE_HZ, db, HISS, 200 + draw));
            for (Erasure e : read) {
                squares += Math.pow(e.erasure().value() + residueDb, 2) / 10;
                stated += e.erasure().uncertainty() / 10;
            }
        }
        assertEquals(expected, stated, 0.3 * expected);
        // 10 values know their scatter to 22 %
        assertEquals(stated / 2, Math.sqrt(squares), 0.45 * stated / 2);
    }

    /**
     * −130 dB lies far under the hiss. Its mean over v = 7 s · 36 Hz scatters by σ = N·√(1.5/v), N
     * = (h²/2000)·36/2 in units in which the tone has 0.4²/4: two to five σ are told as the bound,
     * 63.6 + 36.2 − (10·lg 2 … 10·lg 5) dB.
     */
    @ParameterizedTest
    @ValueSource(longs = {3, 4, 6})
    void whatLiesUnderTheHissIsALimit(long seed) {
        Erasure e = read(replay(-130, HISS, seed)).get(0);
        assertFalse(e.erasure().isKnown());
        assertTrue(e.erasure().reason().contains("under the noise"));
        double noise = HISS * HISS / 2000 * 36 / 2;
        double sigma = noise * Math.sqrt(1.5 / (7 * 36));
        double most = 10 * Math.log10(PEAK * PEAK / 4 / (2 * sigma));
        double least = 10 * Math.log10(PEAK * PEAK / 4 / (5 * sigma));
        assertTrue(
                e.atLeastDb() > least - 0.7 && e.atLeastDb() < most + 0.7,
                () -> "at least " + e.atLeastDb());
    }

    @Test
    void digitalSilenceIsNoErasedTape() {
        Erasure e =
                read(tone(20, TONE_HZ, t -> t < 10 ? Double.NEGATIVE_INFINITY : 0, 0, 4)).get(0);
        assertTrue(e.erasure().reason().contains("digital silence"));
        assertEquals(-7.96, e.toneDbfs(), 0.05);
        assertNull(e.atLeastDb());
    }

    /**
     * The noise under a rest S is the mean of what lies 75 Hz to either side. A line as strong as
     * the rest on one side makes it S/2: 3.01 dB less are left, and as much noise as rest scatters
     * by √((1.5 + 2)/v) of either, v being the band's width times seven seconds.
     */
    @ParameterizedTest
    @ValueSource(doubles = {-75, 75})
    void noiseIsTheMeanOfBothSides(double besideHz) {
        double[] x = new double[14 * RATE];
        for (int i = 0; i < x.length; i++) {
            double t = (double) i / RATE;
            double at = 2 * Math.PI * 1000 * t;
            x[i] = PEAK * (t < 10 ? 0.003 * Math.sin(at) : Math.sin(at));
            x[i] += t < 10 ? PEAK * 0.003 * Math.sin(at + 2 * Math.PI * besideHz * t) : 0;
        }
        Erasure e = read(x).get(0);
        assertEquals(50.46 + 3.01, e.erasure().value(), 0.03);
        double values = 7 * Downconverter.of(12, 24, RATE).noiseBandwidthHz();
        assertEquals(
                2 * 10 / Math.log(10) * Math.sqrt(3.5 / values), e.erasure().uncertainty(), 0.01);
    }

    /**
     * Erased to −40 dB before the tone and to −60 dB after it. What precedes counts if three
     * seconds of it are clear: a second and a half at its start and before the tone are not.
     */
    @ParameterizedTest
    @CsvSource({"6.2, 6.2, 40", "5.8, 6.2, 60", "6.2, 2, 40"})
    void whatPrecedesTheToneCountsFirst(double before, double after, double expectedDb) {
        double to = before + 5;
        double[] x =
                tone(to + after, TONE_HZ, t -> t < before ? -40 : t < to ? 0 : -60, HISS / 10, 1);
        assertEquals(expectedDb, erasureDb(x), 0.1);
    }

    @Test
    void tooLittleErasedTapeIsRefused() {
        double[] x = tone(16.6, TONE_HZ, t -> t < 5.8 || t > 10.8 ? -50 : 0, HISS, 1);
        assertTrue(refusal(x).startsWith("replay.wav has its tone from 5.8 s to 10.8 s"));
    }

    /** Passages between the parts, up to 1.2 s, are left out, wherever the erased part lies. */
    @ParameterizedTest
    @ValueSource(booleans = {true, false})
    void passagesDoNotCount(boolean erasedFirst) {
        DoubleUnaryOperator erased = t -> t > 1.2 && t < 8.8 ? -52 : -15;
        double[] x =
                tone(
                        15,
                        TONE_HZ,
                        t ->
                                erasedFirst
                                        ? t < 10 ? erased.applyAsDouble(t) : 0
                                        : t < 5 ? 0 : erased.applyAsDouble(t - 5),
                        HISS / 10,
                        1);
        assertEquals(52, erasureDb(x), 0.1);
    }

    /** A tone of four seconds that comes up and goes down over 0.3 s, by 4 dB. */
    @Test
    void theEndsOfTheToneDoNotCount() {
        double[] x =
                tone(14, TONE_HZ, t -> t < 10 ? -52 : t < 10.3 || t > 13.7 ? -4 : 0, HISS / 10, 1);
        Erasure e = read(x).get(0);
        assertEquals(20 * Math.log10(PEAK), e.toneDbfs(), 0.02);
        assertEquals(52, e.erasure().value(), 0.1);
    }

    /** A quieter tone somewhere is not the one, also if it lies nearer to 1 kHz, or on the left. */
    @Test
    void theLoudestToneCounts() {
        double[] quiet = tone(19, 1000, t -> t < 4 ? -12 : -90, HISS / 10, 1);
        double[] loud = tone(19, 1050, t -> t < 4 ? -90 : t < 14 ? -50 : 0, HISS / 10, 2);
        Erasure right = read(quiet, loud).get(1);
        assertEquals(1050, right.frequencyHz(), 2);
        assertEquals(50, right.erasure().value(), 3);
        assertEquals(-7.96, right.toneDbfs(), 0.05);
    }

    /**
     * A channel with less than a thousandth of the other's tone holds its crosstalk, whose erasure
     * is the other one's, or hiss, which nothing was erased from.
     */
    @ParameterizedTest
    @CsvSource({"-29, true", "-31, false", "-200, false"})
    void aChannelWithoutToneTellsNothing(double toneDb, boolean told) {
        double[] full = replay(-52, HISS, 1);
        double[] other = tone(20, TONE_HZ, t -> toneDb + (t < 10 ? -40 : 0), HISS / 10, 2);
        for (int c = 0; c < 2; c++) {
            List<Erasure> read = c == 0 ? read(other, full) : read(full, other);
            assertEquals(told, read.get(c).erasure().isKnown());
            assertEquals(told, read.get(c).toneDbfs() != null);
            assertNull(read.get(c).atLeastDb());
            assertTrue(
                    told || read.get(c).erasure().reason().contains("not heard on this channel"));
            assertEquals(52, read.get(1 - c).erasure().value(), 0.1);
        }
    }

    /** Of a file of many tracks the first two are left and right. */
    @Test
    void twoChannelsAtMostAreRead() {
        double[] x = replay(-52, HISS, 1);
        assertEquals(2, read(x, x, x).size());
        assertEquals(1, read(x).size());
    }

    @ParameterizedTest
    @CsvSource({"905, true", "1095, true", "500, false", "1800, false"})
    void theToneLiesNearOneKilohertz(double hz, boolean found) {
        double[] x = tone(14, hz, t -> t < 10 ? -52 : 0, HISS, 1);
        if (found) {
            assertEquals(hz, read(x).get(0).frequencyHz(), 2);
        } else {
            assertTrue(refusal(x).contains("no steady tone near 1 kHz"));
        }
    }

    /** What reaches into the range of a tone beside it is not taken for the tone. */
    @ParameterizedTest
    @ValueSource(doubles = {800, 860, 870, 880, 895, 1105, 1120, 1140, 1250})
    void aToneOffSpeedIsRefused(double hz) {
        String refused = refusal(tone(14, hz, t -> t < 10 ? -52 : 0, HISS, 1));
        assertTrue(refused.startsWith("The tone in replay.wav has "), refused);
        double told = Double.parseDouble(refused.replaceAll(".* has (\\d+) Hz, more than.*", "$1"));
        assertEquals(hz, told, 3);
    }

    @Test
    void withoutToneOrErasedPartItIsRefused() {
        double[] silent = new double[10 * RATE];
        assertTrue(refusal(silent).contains("no steady tone near 1 kHz"));
        assertTrue(refusal(replay(0, HISS, 5)).contains("too little erased tape"));
        double[] whole = replay(-130, HISS, 5);
        assertTrue(
                refusal(Arrays.copyOf(whole, 12 * RATE)).contains("no steady tone near 1 kHz"),
                "two seconds of it are too few");
    }
}
