package offtape.report.measure.pass;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import offtape.core.standard.FlutterBand;
import offtape.core.unit.Quantity;
import offtape.report.result.PassLine;
import offtape.report.result.PassParts;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/** From the sound of several replays to what was written and what each adds. */
class PassPartingTest {

    /** A reel's wow and a capstan's line on the tape; the same capstan and an idler in replay. */
    private static final Replay TAPE =
            Replay.tape(1000, 6.5).written(0.1, 1.3, 0.4).written(0.08, 9, 1);

    private static List<TapeCourse> courses;
    private static PassParting parts;

    private static Replay replay(int n) {
        double turn = 2 * Math.PI * n / 3;
        return TAPE.again(0.3 + 0.11 * n, 1 + 0.002 * n)
                .read(0.05, 9, 0.7 + turn)
                .read(0.06, 21, 0.3 - turn);
    }

    private static TapeCourse course(Replay replay) {
        return TapeCourse.of(replay.play()).orElseThrow();
    }

    @BeforeAll
    static void part() {
        courses = List.of(course(replay(0)), course(replay(1)), course(replay(2)));
        parts = PassParting.of(courses);
    }

    private static void holds(double truth, Quantity figure, double most) {
        assertTrue(figure.isKnown(), figure.toString());
        assertEquals(truth, figure.value(), Math.min(most, figure.uncertainty()));
        assertEquals("%", figure.unit());
    }

    private static PassLine line(double hz) {
        return parts.lines().stream()
                .filter(l -> Math.abs(l.frequencyHz() - hz) < 0.05)
                .findFirst()
                .orElseThrow();
    }

    /** Root mean square in a band of sines, each {peak, hertz}. */
    private static double rms(FlutterBand band, double[]... sines) {
        double sum = 0;
        for (double[] s : sines) {
            sum += Math.pow(s[0] * band.gain(s[1]), 2) / 2;
        }
        return Math.sqrt(sum);
    }

    /** By the formula of either part and the gain of each band. */
    @Test
    void eachPartIsTheFormulas() {
        double[][] written = {{0.1, 1.3}, {0.08, 9}};
        double[][] read = {{0.05, 9}, {0.06, 21}};
        holds(rms(FlutterBand.WEIGHTED, written), parts.written().weightedRms(), 0.003);
        holds(rms(FlutterBand.UNWEIGHTED, written), parts.written().unweightedRms(), 0.003);
        holds(rms(FlutterBand.WOW, written), parts.written().wowRms(), 0.003);
        holds(rms(FlutterBand.FLUTTER, written), parts.written().flutterRms(), 0.003);
        holds(rms(FlutterBand.WEIGHTED, read), parts.read().weightedRms(), 0.002);
        holds(rms(FlutterBand.UNWEIGHTED, read), parts.read().unweightedRms(), 0.002);
        holds(rms(FlutterBand.FLUTTER, read), parts.read().flutterRms(), 0.002);
    }

    /** Strongest first; each in the part in which it is. */
    @Test
    void linesAreToldInBothParts() {
        holds(0.08, line(9).writtenPeak(), 0.01);
        holds(0.05, line(9).readPeak(), 0.01);
        holds(0.1, line(1.3).writtenPeak(), 0.01);
        holds(0.06, line(21).readPeak(), 0.01);
    }

    /** The tone less its margins, of the slowest replay's ends: 6.5 − 2·(0.15 + 0.018 + 0.1) s. */
    @Test
    void theLengthThatIsComparedIsTold() {
        assertEquals(6.5 - 0.536, parts.seconds(), 0.01);
    }

    private static void isNothing(String reason, PassParting none) {
        assertEquals(reason, none.written().weightedRms().reason());
        assertEquals(reason, none.read().flutterRms().reason());
        assertEquals(List.of(), none.lines());
        assertNull(none.seconds());
    }

    @Test
    void oneReplayIsNotParted() {
        String reason = "Fewer than two replays hold the speed tone.";
        isNothing(reason, PassParting.of(List.of()));
        isNothing(reason, PassParting.of(courses.subList(0, 1)));
    }

    /** Of 5.52 s less than 5 are left once 0.536 s of margins are taken off. */
    @Test
    void aShortStretchIsNotParted() {
        Replay brief = Replay.tape(1000, 5.52).written(0.1, 9, 0);
        isNothing(
                "The replays have less than 5 s of the speed tone in common.",
                PassParting.of(List.of(course(brief.again(0.2, 1)), course(brief.again(0.4, 1)))));
    }

    /**
     * Two replays do not part a line that both hold: it is said how well they tell it. And a tone
     * of 350 Hz has room for 0.55 of that, 192 Hz, to either side.
     */
    @Test
    void whatTwoReplaysOfALowToneDoNotTellIsSaid() {
        Replay low = Replay.tape(350, 6).written(0.1, 4, 0.4);
        PassParting two =
                PassParting.of(
                        List.of(
                                course(low.again(0.2, 1).read(0.1, 4, 0)),
                                course(low.again(0.3, 1).read(0.1, 4, 1.9))));
        PassLine line = two.lines().get(0);
        assertEquals(4, line.frequencyHz(), 0.05);
        for (Quantity q : List.of(line.writtenPeak(), line.readPeak())) {
            assertTrue(
                    q.reason().startsWith("With 2 replays this part of the line is known within ±"),
                    q.toString());
        }
        for (PassParts part : List.of(two.written(), two.read())) {
            String narrow = "This tone does not show changes of speed up to 200 Hz.";
            assertEquals(narrow, part.flutterRms().reason());
            assertEquals(narrow, part.unweightedRms().reason());
            for (Quantity q : List.of(part.wowRms(), part.weightedRms())) {
                assertTrue(
                        q.reason()
                                .startsWith(
                                        "With 2 replays this part of the wavering is known within"
                                                + " ±"),
                        q.toString());
            }
        }
    }
}
