package offtape.report.measure.continuity;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import offtape.core.audio.MemoryAudio;
import offtape.core.programme.Programme;
import offtape.report.locate.Locator;
import offtape.report.locate.ProgrammeReturn;
import offtape.report.locate.Returns;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Returns out of which a piece was cut, or into which silence was put, at a known place. */
class JumpSearchTest {

    private static final int RATE = 48_000;

    /**
     * In the tone of 3150 Hz, 10 ms are 31.5 of its periods; in a sweep, of which 4 ms are missing
     * or where 40 ms of silence make a hole, as in a tone too low to tell its phase. Between two
     * tones, or two steps of a ladder, only the next edge tells; in a silence another is no hole.
     * What is read of edges is good to some tenths of a millisecond.
     */
    @ParameterizedTest
    @CsvSource({
        "1, 10.2, -0.010, true",
        "0.985, 10.4, 0.040, true",
        "1, 7, 0.040, true",
        "0.985, 7.5, -0.004, true",
        "1, 12, 0.030, true",
        "1, 11.25, -0.020, false",
        "0.985, 4.1, -0.004, false",
        "1, 3.15, 0.030, false"
    })
    void aGapAndACutAreFoundWithTheirPlaceAndLength(
            double speed, double atSeconds, double addedSeconds, boolean sharp) {
        MemoryAudio heard =
                ShortProgramme.broken(ShortProgramme.heard(speed, 0.4), atSeconds, addedSeconds);
        List<Jump> found = JumpSearch.find(ShortProgramme.there(heard, speed));
        assertEquals(1, found.size(), () -> "found " + found);
        Jump jump = found.get(0);
        assertEquals(addedSeconds, jump.lateSeconds(), 5e-4);
        // an edge between which and the next one it lies is known to some tenths
        double edge = sharp ? 0 : 0.001;
        assertTrue(
                jump.fromSeconds() < atSeconds + edge && jump.toSeconds() > atSeconds - edge,
                () -> "at " + jump);
        assertEquals(sharp, jump.isSharp());
        if (sharp) {
            assertEquals(0.012, jump.toSeconds() - jump.fromSeconds(), 1e-9);
        }
    }

    /** Where the polarity turns the phase jumps as well, but no time is missing. */
    @Test
    void aJumpOfPhaseElsewhereIsNotThePlace() {
        MemoryAudio cut = ShortProgramme.broken(ShortProgramme.heard(1, 0.4), 10.2, -0.010);
        double[][] x = cut.read(0, (int) cut.frames());
        for (int i = 0; i < 2.5 * ShortProgramme.RATE; i++) {
            x[0][i] *= -1;
            x[1][i] *= -1;
        }
        MemoryAudio heard = new MemoryAudio("return", ShortProgramme.RATE, x);
        List<Jump> found = JumpSearch.find(ShortProgramme.there(heard, 1));
        assertEquals(1, found.size(), () -> "found " + found);
        assertEquals(10.2, found.get(0).middleSeconds(), 0.006);
        assertTrue(found.get(0).isSharp());
    }

    @Test
    void theProgrammeIsLocatedWithAGapInIt() {
        Returns returns = Returns.ofBrief();
        MemoryAudio heard = ShortProgramme.broken(returns.of(RATE, 1, 1, 1, 0.5, 0.4), 44, 0.03);
        Programme programme = returns.programme();
        List<Jump> found =
                JumpSearch.find(
                        new ProgrammeReturn(programme, heard, Locator.locate(programme, heard)));
        assertEquals(1, found.size(), () -> "found " + found);
        assertEquals(0.03, found.get(0).lateSeconds(), 5e-4);
    }

    @ParameterizedTest
    @ValueSource(doubles = {1, 0.985})
    void aWholeReturnHasNone(double speed) {
        MemoryAudio heard = ShortProgramme.heard(speed, 0.4);
        assertEquals(List.of(), JumpSearch.find(ShortProgramme.there(heard, speed)));
    }
}
