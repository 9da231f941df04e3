package offtape.report.measure.continuity;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import offtape.core.audio.MemoryAudio;
import offtape.core.programme.ChannelSet;
import offtape.core.programme.Cue;
import offtape.core.programme.Programme;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Pieces missing from a sweep. */
class SweepJumpsTest {

    private static final int RATE = ShortProgramme.RATE;

    /** So many milliseconds of the recording are missing at a moment. */
    private static List<Double> jumps(Cue.Sweep sweep, double atSeconds, double milliseconds) {
        Programme programme = ShortProgramme.of(4, sweep);
        MemoryAudio heard =
                ShortProgramme.broken(
                        (MemoryAudio) programme.audio(), atSeconds, -milliseconds / 1000);
        return SweepJumps.in(ShortProgramme.there(programme, heard, 0, 1));
    }

    private static Cue.Sweep sweep(double startHz, double endHz) {
        return new Cue.Sweep("sweep", ChannelSet.BOTH, RATE / 2, 3 * RATE, startHz, endHz, 0);
    }

    /**
     * From 100 Hz to 6.4 kHz six octaves pass in 3 s, two a second: 1 kHz at 0.5 s + 1.661 s. Of
     * 0.25 ms a quarter of a turn is missing there. What follows is heard too early by 0.25 ms,
     * which the mixed sweep shows as a frequency.
     */
    @ParameterizedTest
    @CsvSource({"1000", "600", "2500"})
    void aPieceMissingIsSeen(double hz) {
        double at = 0.5 + Math.log(hz / 100) / Math.log(2) / 2;
        List<Double> found = jumps(sweep(100, 6400), at, 250 / hz);
        assertEquals(1, found.size());
        assertEquals(at, found.get(0), 0.006);
    }

    /**
     * Under 300 Hz, and over seven tenths of the sweep's end (4480 Hz) or three tenths of the
     * sample rate (4800 Hz), nothing is looked for.
     */
    @ParameterizedTest
    @CsvSource({
        "100, 6400, 200, 0",
        "100, 6400, 5400, 0",
        "100, 7900, 5200, 0",
        "100, 7900, 4200, 1"
    })
    void onlyTheMiddleOfASweepIsSearched(double start, double end, double hz, int count) {
        double at = 0.5 + 3 * Math.log(hz / start) / Math.log(end / start);
        assertEquals(count, jumps(sweep(start, end), at, 250 / hz).size());
    }

    /** Between 300 Hz and seven tenths of the end an octave must lie. */
    @ParameterizedTest
    @CsvSource({"100, 850, 0", "100, 880, 1", "400, 1100, 0", "400, 1200, 1"})
    void aSweepOfLessThanAnOctaveTellsNothing(double start, double end, int count) {
        double at = 0.5 + 3 * Math.log(480 / start) / Math.log(end / start);
        assertEquals(count, jumps(sweep(start, end), at, 250 / 480.0).size());
    }
}
