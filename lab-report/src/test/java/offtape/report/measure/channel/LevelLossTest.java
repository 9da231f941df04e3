package offtape.report.measure.channel;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import java.util.function.IntToDoubleFunction;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Losses in curves by formula: 2500 values a second, the first at 10 s, three seconds long. */
class LevelLossTest {

    private static final double RATE = 2500;
    private static final int COUNT = 7500;
    private static final int AT = 3000;

    private static List<LevelLoss.Loss> in(IntToDoubleFunction db) {
        double[] curve = new double[COUNT];
        for (int k = 0; k < COUNT; k++) {
            curve[k] = db.applyAsDouble(k);
        }
        return LevelLoss.in(new LevelCurve(curve, RATE, 10));
    }

    /** So many values lower by some decibels, about a level. */
    private static IntToDoubleFunction loss(int at, int count, double depthDb) {
        return k -> -30 - (k >= at && k < at + count ? depthDb : 0);
    }

    /**
     * The mark is 3 dB, or 1.5 dB above the bottom, at least 1.5. Between the last value at level
     * and the first at the bottom the curve is straight, so a mark of m in a depth of d lies 1 −
     * m/d before it, and as far behind the last: n − 1 + 2·(1 − m/d) values.
     */
    @ParameterizedTest
    @CsvSource({"2.95, 1.5", "3, 1.5", "4, 2.5", "4.5, 3", "10, 3", "40, 3"})
    void depthAndLengthAreRead(double depthDb, double markDb) {
        List<LevelLoss.Loss> found = in(loss(AT, 100, depthDb));
        assertEquals(1, found.size());
        LevelLoss.Loss loss = found.get(0);
        double before = 1 - markDb / depthDb;
        assertEquals(depthDb, loss.depthDb(), 1e-9);
        assertEquals(10 + (AT - before) / RATE, loss.startSeconds(), 1e-9);
        assertEquals((99 + 2 * before) / RATE * 1000, loss.milliseconds(), 1e-6);
        assertEquals(10 + (AT + 99 + before) / RATE, loss.endSeconds(), 1e-9);
    }

    /** 2.9 dB deep; 9.2 ms long: 22 values at 10 dB are 21 + 1.4 of 0.4 ms, 8.96; 23 are 9.36. */
    @ParameterizedTest
    @CsvSource({
        "2.88, 100, 0",
        "2.92, 100, 1",
        "10, 22, 0",
        "10, 23, 1",
        "10, 4200, 1",
        "10, 4400, 0"
    })
    void whatIsShallowBriefOrVeryLongIsNone(double depthDb, int count, int found) {
        assertEquals(found, in(loss(1500, count, depthDb)).size());
    }

    /**
     * A valley of 4 dB with straight sides. It counts from 1 dB under its rim on, and what lies 3
     * to 63 ms beside that is 0.3 dB higher, so of 3.3 dB the part from 0.3 to 0.8 takes 1.63 dB of
     * a side: of 1200 values 490, less than 0.2 s, of 1350 values 548. One such side is enough.
     */
    @ParameterizedTest
    @CsvSource({
        "1200, 1200, 1",
        "1350, 1350, 0",
        "1200, 1600, 1",
        "1600, 1200, 1",
        "20, 1600, 1",
        "1600, 20, 1"
    })
    void oneSideIsSteep(int down, int up, int found) {
        int bottom = AT + 500;
        IntToDoubleFunction share =
                k -> k < bottom ? (bottom - k) / (double) down : (k - bottom) / (double) up;
        assertEquals(found, in(k -> -4 * Math.max(0, 1 - share.applyAsDouble(k))).size());
    }

    /**
     * Sides less than 1.5 dB apart: the level goes straight from one to the other, and the loss is
     * read from there. Means of an eighth of its length are taken, 12 of 100 values; the deepest
     * are those next to the higher side: the last, whose middle lies at 0.935, or the first, at
     * 0.055.
     */
    @ParameterizedTest
    @CsvSource({"1, 0.935", "-1, 0.945", "1.4, 0.935", "-1.4, 0.945", "0, 0"})
    void alikeSidesAreJoined(double upDb, double share) {
        List<LevelLoss.Loss> found =
                in(k -> k < AT ? 0 : k < AT + 100 ? Math.min(0, upDb) - 8 : upDb);
        assertEquals(1, found.size());
        assertEquals(8 + share * Math.abs(upDb), found.get(0).depthDb(), 1e-9);
    }

    /** Sides that are not alike: the lower one may lie in another loss, so the higher counts. */
    @ParameterizedTest
    @ValueSource(doubles = {1.6, -1.6, 2.5, -2.5})
    void ofUnlikeSidesTheHigherCounts(double upDb) {
        List<LevelLoss.Loss> found =
                in(k -> k < AT ? 0 : k < AT + 100 ? Math.min(0, upDb) - 8 : upDb);
        assertEquals(1, found.size());
        assertEquals(8 + Math.abs(upDb), found.get(0).depthDb(), 1e-9);
    }

    /** At an end of the curve there is one side; the loss begins and ends with the curve. */
    @Test
    void theEndsOfTheCurve() {
        List<LevelLoss.Loss> found = in(k -> k < 100 || k >= COUNT - 100 ? -9 : 0);
        assertEquals(2, found.size());
        assertEquals(9, found.get(0).depthDb(), 1e-9);
        assertEquals(9, found.get(1).depthDb(), 1e-9);
        assertEquals(10, found.get(0).startSeconds(), 1e-9);
        assertEquals(10 + (COUNT - 1) / RATE, found.get(1).endSeconds(), 1e-9);
        // 3 dB of 9 lie a third of the way to the value beyond the last one
        assertEquals((99 + 2 / 3.0) / RATE * 1000, found.get(0).milliseconds(), 1e-6);
        assertEquals((99 + 2 / 3.0) / RATE * 1000, found.get(1).milliseconds(), 1e-6);
    }

    /** A deeper piece within a longer loss is part of it. */
    @Test
    void aLongLossTakesInWhatLiesInIt() {
        List<LevelLoss.Loss> found =
                in(
                        k ->
                                -(k >= AT && k < AT + 1250 ? 6 : 0)
                                        - (k >= AT + 400 && k < AT + 600 ? 6 : 0));
        assertEquals(1, found.size());
        assertEquals(12, found.get(0).depthDb(), 1e-9);
        // 3 dB of 6 on both sides
        assertEquals(1250 / RATE * 1000, found.get(0).milliseconds(), 1e-6);
    }

    /** A short loss at the bottom of a slow valley, which is none, has its own depth and length. */
    @Test
    void aLossInASlowValley() {
        IntToDoubleFunction valley = k -> Math.max(-2, -2.5 + Math.abs(k - 3750) / 500.0);
        List<LevelLoss.Loss> found =
                in(k -> Math.min(0, valley.applyAsDouble(k)) + loss(3700, 75, 6).applyAsDouble(k));
        assertEquals(1, found.size());
        assertEquals(6, found.get(0).depthDb(), 0.1);
        assertEquals(30, found.get(0).milliseconds(), 0.5);
    }

    /** Beside a loss the mean of 60 ms counts, less the 3 ms next to it: 150 values and 8. */
    @Test
    void theLevelBesideIsAMean() {
        IntToDoubleFunction curve =
                k -> {
                    int away = k < AT ? AT - k : k - AT - 59;
                    return away <= 0
                            ? -10
                            : away <= 8 ? 0.9 : away <= 158 ? 0.2 + away % 2 * 0.6 : 0;
                };
        List<LevelLoss.Loss> found = in(curve);
        assertEquals(1, found.size());
        assertEquals(10.5, found.get(0).depthDb(), 1e-9);
    }

    /** Two whose surroundings overlap: neither is part of the level beside the other. */
    @Test
    void anotherLossIsNotTheLevelBeside() {
        List<LevelLoss.Loss> found =
                in(k -> loss(AT, 40, 10).applyAsDouble(k) + loss(AT + 80, 30, 7).applyAsDouble(k));
        assertEquals(2, found.size());
        assertEquals(10, found.get(0).depthDb(), 1e-9);
        assertEquals(7, found.get(1).depthDb(), 1e-9);
    }

    @Test
    void lossesAreToldInOrderOfTime() {
        // the longer one comes first but is found in a later turn
        List<LevelLoss.Loss> found =
                in(
                        k ->
                                loss(1000, 1000, 10).applyAsDouble(k)
                                        + loss(5000, 40, 10).applyAsDouble(k));
        assertEquals(2, found.size());
        assertEquals(10.4, found.get(0).startSeconds(), 1e-3);
        assertEquals(12, found.get(1).startSeconds(), 1e-3);
    }
}
