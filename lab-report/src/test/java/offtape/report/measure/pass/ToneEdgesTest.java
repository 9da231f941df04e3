package offtape.report.measure.pass;

import static org.junit.jupiter.api.Assertions.assertEquals;

import offtape.report.locate.ProgrammeReturn;
import offtape.report.measure.speed.SpeedTone;
import offtape.report.measure.speed.ToneCourse;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Where a tone begins and ends. */
class ToneEdgesTest {

    private static final double NONE = Double.NaN;

    /** Both edges count alike; one that is not heard in either does not count. */
    @ParameterizedTest
    @CsvSource({
        "1.5, 9.25, 1.25, 9.125, 0.1875",
        "1.25, 9, 1.5, 9.25, -0.25",
        "NaN, 9.25, 1.25, 9, 0.25",
        "1.5, 9.25, NaN, 9, 0.25",
        "1.5, NaN, 1, 9, 0.5",
        "1.5, 9, 1, NaN, 0.5",
        "NaN, 9, 1, NaN, 0",
        "NaN, NaN, NaN, NaN, 0"
    })
    void edgesTellHowMuchLaterATakeLies(
            double begins, double ends, double otherBegins, double otherEnds, double later) {
        ToneEdges own = new ToneEdges(begins, ends);
        assertEquals(later, own.laterThan(new ToneEdges(otherBegins, otherEnds)), 1e-12);
    }

    private static ToneEdges of(Replay replay, double placeLate) {
        ProgrammeReturn ret = replay.play();
        ToneCourse tone = SpeedTone.course(ret).orElseThrow();
        return ToneEdges.of(ret.recording(), tone, t -> replay.programmeSeconds(t) + placeLate);
    }

    /**
     * A tone from 1 s to 6 s of the programme, cut hard, so that a filter whose response is
     * symmetric leaves half of the level at its edges. What precedes and follows is silence. Told
     * in the programme's time, wherever that is taken to lie.
     */
    @ParameterizedTest
    @CsvSource({"0.3, 1, 0", "0.3, 1, 0.013", "1.1, 1.03, 0", "0.2, 0.96, -0.004"})
    void edgesLieWhereTheToneIsCut(double start, double speed, double placeLate) {
        Replay replay = Replay.tape(1000, 5).again(start, speed).read(0.2, 4, 1);
        ToneEdges edges = of(replay, placeLate);
        assertEquals(1 + placeLate, edges.begins(), 4e-5);
        assertEquals(6 + placeLate, edges.ends(), 4e-5);
    }

    /**
     * Places are known as far as the course goes, which ends short of the edges; beyond it they are
     * only continued. Here they are wrong by 2 % of the time that lies between, 3.5 ms at the
     * edges: the tone's own phase says so and leaves the error that the places have inside.
     */
    @ParameterizedTest
    @CsvSource({"0, 0.02", "0.003, 0.02", "0, -0.015"})
    void thePhaseOfTheToneLeadsFromTheCourseToTheEdges(double inside, double beyond) {
        Replay replay = Replay.tape(1000, 5).again(0.3, 1.02).read(0.3, 5, 0);
        ProgrammeReturn ret = replay.play();
        ToneCourse tone = SpeedTone.course(ret).orElseThrow();
        double first = tone.firstSeconds();
        double last = tone.seconds(tone.percent().length - 1);
        ToneEdges edges =
                ToneEdges.of(
                        ret.recording(),
                        tone,
                        t ->
                                replay.programmeSeconds(t)
                                        + inside
                                        + beyond * Math.max(0, Math.max(first - t, t - last)));
        assertEquals(1 + inside, edges.begins(), 4e-5);
        assertEquals(6 + inside, edges.ends(), 4e-5);
    }

    /** A tone that was there before and goes on has no edges. */
    @Test
    void aToneWithoutSilenceAroundItHasNoEdges() {
        ToneEdges edges = of(Replay.tape(1000, 5).again(0.6, 1).withoutSilence(), 0);
        assertEquals(NONE, edges.begins());
        assertEquals(NONE, edges.ends());
    }

    /** A tone that has broken off a second early, so that it is not heard where it should end. */
    @Test
    void anEndThatIsCutOffIsNotTold() {
        ToneEdges edges = of(Replay.tape(1000, 5).again(0.3, 1).shortened(1), 0);
        assertEquals(1, edges.begins(), 4e-5);
        assertEquals(NONE, edges.ends());
    }
}
