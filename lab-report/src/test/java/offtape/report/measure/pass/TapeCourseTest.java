package offtape.report.measure.pass;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import offtape.core.programme.ChannelSet;
import offtape.core.programme.Cue;
import offtape.core.programme.CueSheet;
import offtape.core.programme.Programme;
import offtape.report.locate.ProgrammeReturn;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/**
 * Two replays of one tape laid over each other: the second starts later, runs slower, wavers
 * otherwise, and was located wrong by many turns of the tone.
 */
class TapeCourseTest {

    private static final double TONE_HZ = 1000;
    private static final double SECONDS = 6;

    /** Margin at either end, and 24 values, each of six samples, that a differentiator takes. */
    private static final double LEFT_OUT_S = 0.15 + 24 * 6 / 8000.0;

    /** Not whole turns of the tone by any means: 12.45 at the speed of the other one. */
    private static final double LATE_S = 0.0127;

    private static final Replay TAPE = Replay.tape(TONE_HZ, SECONDS).written(0.2, 1.7, 0.4);
    private static final Replay ONE = TAPE.again(0.4, 1.01).read(0.1, 3.1, 0);
    private static final Replay OTHER = TAPE.again(0.9, 0.98).read(0.15, 2.3, 1).misplaced(LATE_S);

    private static final ProgrammeReturn ONE_RETURN = ONE.play();
    private static final ProgrammeReturn OTHER_RETURN = OTHER.play();

    private TapeCourse one;
    private TapeCourse other;

    @BeforeEach
    void read() {
        one = TapeCourse.of(ONE_RETURN).orElseThrow();
        other = TapeCourse.of(OTHER_RETURN).orElseThrow();
    }

    /** Time of the recording at which a moment of the programme is heard, by trying. */
    private static double heardAt(Replay replay, double programmeSeconds) {
        double low = 0;
        double high = 12;
        while (high - low > 1e-10) {
            double middle = (low + high) / 2;
            if (replay.programmeSeconds(middle) < programmeSeconds) {
                low = middle;
            } else {
                high = middle;
            }
        }
        return low;
    }

    @Test
    void theToneIsThatOfTheProgramme() {
        assertEquals(TONE_HZ, one.toneHz(), 0);
        // 0.3 of a tone of 1 kHz at most
        assertTrue(one.bandHz() > 10 && one.bandHz() <= 300, one.bandHz() + " Hz");
    }

    /**
     * Laid beside itself a course is, on the mean, as late as the map says, which knows nothing of
     * what tape and replay waver.
     */
    @Test
    void theFirstLiesWhereTheMapSays() {
        double first = ONE_RETURN.map().recordingSeconds(Replay.FROM_S) + LEFT_OUT_S;
        double last = ONE_RETURN.map().recordingSeconds(Replay.FROM_S + SECONDS) - LEFT_OUT_S;
        double late = 0;
        int n = 2000;
        for (int i = 0; i < n; i++) {
            double t = first + (last - first) * (i + 0.5) / n;
            late += (ONE_RETURN.map().programmeSeconds(t) - ONE.programmeSeconds(t)) / n;
        }
        assertEquals(ONE.programmeSeconds(first) + late, one.from(one), 2e-4);
        assertEquals(ONE.programmeSeconds(last) + late, one.to(one), 1.3e-3);
    }

    /**
     * What is common to both is the place on the tape: where the other one begins and ends against
     * the first is known from the formula, within a hundredth of a turn.
     */
    @Test
    void theOtherIsShiftedToTheSamePlaces() {
        double oneFirst =
                ONE.programmeSeconds(ONE_RETURN.map().recordingSeconds(Replay.FROM_S) + LEFT_OUT_S);
        double otherFirst =
                OTHER.programmeSeconds(
                        OTHER_RETURN.map().recordingSeconds(Replay.FROM_S) + LEFT_OUT_S);
        assertEquals(otherFirst - oneFirst, other.from(one) - one.from(one), 1.3e-4);
        assertEquals(SECONDS - 2 * 0.98 * LEFT_OUT_S, other.to(one) - other.from(one), 1.5e-3);
    }

    /** The deviation at each place on the tape is that of the formula about its mean. */
    @Test
    void bothAreReadAtTheSamePlaces() {
        double from = 1.7;
        int count = 4500;
        // the first lies within 0.4 ms of its place: found by laying its course over the truth
        List<double[]> truths = new ArrayList<>();
        for (Replay replay : List.of(ONE, OTHER)) {
            double[] truth = new double[count];
            double mean = 0;
            for (int i = 0; i < count; i++) {
                truth[i] = replay.heardPercent(heardAt(replay, from + i / 1000.0));
                mean += truth[i] / count;
            }
            for (int i = 0; i < count; i++) {
                truth[i] -= mean;
            }
            truths.add(truth);
        }
        double late = one.from(one) - placeOfFirst();
        double[] first = one.along(one, from + late, count);
        double[] second = other.along(one, from + late, count);
        for (int i = 0; i < count; i += 10) {
            assertEquals(truths.get(0)[i], first[i], 2e-4, "first, " + i);
            assertEquals(truths.get(1)[i], second[i], 2e-4, "other, " + i);
        }
    }

    private static double placeOfFirst() {
        return ONE.programmeSeconds(ONE_RETURN.map().recordingSeconds(Replay.FROM_S) + LEFT_OUT_S);
    }

    /** Without a tone on both channels there is no course. */
    @Test
    void withoutAToneThereIsNoCourse() {
        CueSheet silent =
                new CueSheet(
                        Replay.RATE,
                        8L * Replay.RATE,
                        -18,
                        null,
                        List.of(new Cue.Silence("silence", ChannelSet.BOTH, 0, Replay.RATE)));
        ProgrammeReturn ret =
                new ProgrammeReturn(
                        new Programme(silent, ONE_RETURN.recording()),
                        ONE_RETURN.recording(),
                        ONE_RETURN.location());
        assertTrue(TapeCourse.of(ret).isEmpty());
    }
}
