package offtape.report.locate;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Lateness foretold from a few readings whose best use can be written down. */
class LinearPredictionTest {

    private static final double ANCHOR_S = 0.5;

    /** A frequency so high that no phase of the path could hide a delay. */
    private static final double SHARP_HZ = 1e9;

    /** A machine that runs evenly, seen for so many seconds. */
    private static TonePhase.Course steady(double seconds) {
        return new TonePhase.Course(20, 0.1, new double[(int) Math.round(seconds / 0.1)], 0);
    }

    private static WowMemory even() {
        return WowMemory.of(steady(10));
    }

    private static PhaseReading sharp(double at, double late, double sigma) {
        return new PhaseReading(at, late, SHARP_HZ, sigma, 0);
    }

    private static LinearPrediction evenly(double slopeSigma) {
        return new LinearPrediction(ANCHOR_S, slopeSigma, even(), Optional.empty());
    }

    /**
     * One reading at the anchor is believed. What may have happened in the half second before it
     * adds to its own doubt: the slope's over that time, and the wander.
     */
    @ParameterizedTest
    @ValueSource(doubles = {2e-5, 1e-3})
    void oneReadingStandsForTheStart(double slope) {
        LinearPrediction.Result even = evenly(slope).from(List.of(sharp(ANCHOR_S, 3e-4, 1e-5)));
        assertEquals(3e-4, even.lateSeconds(), 1e-9);
        double known = 1e-10 + slope * slope * 0.25;
        assertEquals(known, even.variance(), 1e-5 * known);
        WowMemory wow = WowMemory.assumed();
        LinearPrediction.Result uneven =
                new LinearPrediction(ANCHOR_S, slope, wow, Optional.empty())
                        .from(List.of(sharp(ANCHOR_S, 3e-4, 1e-5)));
        assertEquals(3e-4, uneven.lateSeconds(), 1e-9);
        double wander = known + wow.variance(ANCHOR_S);
        assertEquals(wander, uneven.variance(), 1e-3 * wander);
    }

    /**
     * Readings of lateness 10 µs a second apart. If the mean speed is not known, they tell it, and
     * the line is drawn back by half a second: −5 µs. If it is known, they are two readings of one
     * thing, whose mean is 5 µs.
     */
    @Test
    void twoReadingsTellTheSpeedUnlessItIsKnown() {
        List<PhaseReading> two = List.of(sharp(0.5, 0, 1e-6), sharp(1.5, 1e-5, 1e-6));
        LinearPrediction.Result line = evenly(1).from(two);
        assertEquals(-5e-6, line.lateSeconds(), 1e-10);
        // weights 1.5 and −0.5
        double twice = 1e-12 + 4e-16;
        assertEquals((1.5 * 1.5 + 0.5 * 0.5) * twice, line.variance(), 1e-3 * 2.5e-12);
        LinearPrediction.Result mean = evenly(1e-9).from(two);
        assertEquals(5e-6, mean.lateSeconds(), 1e-9);
        assertEquals(twice / 2, mean.variance(), 1e-3 * 5e-13);
    }

    /** Of two readings at one place the one of half the doubt counts four times as much. */
    @Test
    void theClearerReadingCountsMore() {
        LinearPrediction.Result both =
                evenly(1e-9).from(List.of(sharp(0.5, 0, 1e-6), sharp(0.5, 1e-5, 2e-6)));
        assertEquals(2e-6, both.lateSeconds(), 1e-8);
    }

    /**
     * The path turns all readings of a group by one phase, here by a radian: 159 ms of a cycle at 1
     * Hz, 0.159 ms at 1 kHz. Over many frequencies that is known from delay.
     */
    @ParameterizedTest
    @CsvSource({"0, 0", "1, 0", "0, 2e-4", "-1.5, -3e-5"})
    void aTurnOfPhaseIsNoDelay(double radians, double late) {
        List<PhaseReading> marker = new ArrayList<>();
        for (int k = 0; k < 9; k++) {
            double hz = 500 + 500 * k;
            marker.add(
                    new PhaseReading(
                            ANCHOR_S + 0.01 * (k % 3),
                            late + radians / (2 * Math.PI * hz),
                            hz,
                            1e-8,
                            0));
        }
        assertEquals(late, evenly(1e-6).from(marker).lateSeconds(), 2e-7);
    }

    /** A tone's phase says nothing of place, but how place changes while it lasts. */
    @ParameterizedTest
    @ValueSource(doubles = {0, 1e-4, -7e-5})
    void aToneTellsTheSpeedAlone(double unknown) {
        List<PhaseReading> all = new ArrayList<>(List.of(sharp(0.5, 2e-5, 1e-6)));
        for (int k = 0; k <= 10; k++) {
            // 40 µs a second
            all.add(new PhaseReading(1 + 0.1 * k, unknown + 4e-6 * k, 1000, 1e-8, 1));
        }
        for (int k = 0; k <= 10; k++) {
            all.add(new PhaseReading(3 + 0.1 * k, 5e-5 + 4e-6 * k, 2000, 1e-8, 2));
        }
        assertEquals(2e-5 - 0.5 * 4e-5, evenly(1e-3).from(all).lateSeconds(), 2e-8);
    }

    /** Steady wow is continued: half a turn before the reading it stands on the other side. */
    @Test
    void wowIsContinuedAsItSwings() {
        double a = 1e-4;
        double[] late = new double[1500];
        Arrays.setAll(late, k -> a * Math.sin(2 * Math.PI * 2 * 0.02 * k));
        WowMemory memory = WowMemory.of(new TonePhase.Course(20, 0.02, late, 0));
        List<PhaseReading> turn = new ArrayList<>();
        for (int k = 0; k <= 25; k++) {
            double at = 0.5 + 0.02 * k;
            turn.add(sharp(at, a * Math.sin(4 * Math.PI * at + 1), 1e-7));
        }
        LinearPrediction.Result told =
                new LinearPrediction(ANCHOR_S, 1e-9, memory, Optional.empty()).from(turn);
        assertEquals(a * Math.sin(1), told.lateSeconds(), 0.05 * a);
    }

    /**
     * A tone of 2.5 s is too short to try in and tells a twelfth of what thirty seconds do, one of
     * 30 s or more is believed. In these the prediction cannot be tried, since it reaches over 29 s
     * and more.
     */
    @ParameterizedTest
    @CsvSource({"2.5, 12", "15, 2", "30, 1", "31, 1"})
    void aShortToneIsDoubted(double seconds, double doubt) {
        double at = seconds < 3 ? ANCHOR_S : seconds - 2;
        LinearPrediction prediction =
                new LinearPrediction(at, 1e-3, even(), Optional.of(steady(seconds)));
        double known = 1e-10 + 1e-6 * at * at;
        LinearPrediction.Result told = prediction.from(List.of(sharp(at, 0, 1e-5)));
        assertEquals(doubt * known, told.variance(), 1e-4 * doubt * known);
    }

    /**
     * In a long tone the prediction is tried. On an even machine it misses nothing there; what is
     * left is noise by the weights, and the slope over the time from the weighted readings on.
     */
    @Test
    void whatIsSeenCountsBesideNoiseAndSlope() {
        Optional<TonePhase.Course> tone = Optional.of(steady(40));
        // one reading: weight 1, half a second from the start
        double slope = 1e-3;
        LinearPrediction.Result one =
                new LinearPrediction(ANCHOR_S, slope, even(), tone)
                        .from(List.of(sharp(ANCHOR_S, 0, 1e-5)));
        double known = 1e-10 + slope * slope * 0.25;
        assertEquals(known, one.variance(), 1e-5 * known);
        // slope known well: weights of a half each, a second from the start on average
        List<PhaseReading> two = List.of(sharp(0.5, 0, 1e-4), sharp(1.5, 0, 1e-4));
        double small = 1e-5;
        LinearPrediction.Result mean =
                new LinearPrediction(ANCHOR_S, small, even(), tone).from(two);
        double left = 2 * 0.25 * 1e-8 + small * small;
        assertEquals(left, mean.variance(), 0.02 * left);
        // slope not known: weights 1.5 and −0.5, whose line goes through the start
        LinearPrediction.Result line = new LinearPrediction(ANCHOR_S, 1, even(), tone).from(two);
        assertEquals(2.5e-8, line.variance(), 1e-3 * 2.5e-8);
    }

    /**
     * Wow that one reading cannot foretell: what the trial misses, squared (PredictionTrialTest).
     */
    @Test
    void whatTheTrialMissesIsSeen() {
        double a = 1e-4;
        double[] late = new double[6000];
        Arrays.setAll(late, k -> a * Math.sin(2 * Math.PI * 2 * 0.01 * k));
        TonePhase.Course tone = new TonePhase.Course(30, 0.01, late, 0);
        LinearPrediction.Result told =
                new LinearPrediction(0.25, 1e-9, even(), Optional.of(tone))
                        .from(List.of(sharp(0.25, 0, 1e-6)));
        // half a turn: off by twice the peak at most, 2a/√2 rms; Student's t for 59 places is 2.05
        assertEquals(2 * a * a * 1.025 * 1.025, told.variance(), 0.04 * a * a);
    }
}
