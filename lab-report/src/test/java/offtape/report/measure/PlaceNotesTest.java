package offtape.report.measure;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import offtape.core.audio.MemoryAudio;
import offtape.report.locate.Location;
import offtape.report.locate.ProgrammeReturn;
import offtape.report.locate.Take;
import offtape.report.result.HealthNote;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class PlaceNotesTest {

    private static List<HealthNote> notes(Location place) {
        return notes(null, place);
    }

    private static List<HealthNote> notes(Double tapeSpeedMmPerS, Location place) {
        int rate = StraightReturn.RATE;
        MemoryAudio recording = new MemoryAudio("r.wav", rate, new double[8], new double[8]);
        return new PlaceNotes(
                        new ProgrammeReturn(
                                StraightReturn.programme(StraightReturn.sheet(tapeSpeedMmPerS)),
                                recording,
                                place))
                .notes();
    }

    private static HealthNote only(List<HealthNote> notes) {
        assertEquals(1, notes.size(), notes.toString());
        return notes.get(0);
    }

    @Test
    void aWholeProgrammeAtItsSpeedNeedsNoWord() {
        assertEquals(List.of(), notes(StraightReturn.place(0.7, 1, 21)));
        assertEquals(List.of(), notes(StraightReturn.place(0.7, 1.03, 22)));
    }

    /** A stretch of ½ is twice the speed; 5/6 of the speed is a motor for 60 Hz on 50 Hz. */
    @ParameterizedTest
    @CsvSource({
        "0.5, blocking, wrong-speed",
        "2, blocking, wrong-speed",
        "1.2, warning, mains-frequency",
        "0.9, warning, far-off-speed"
    })
    void aSpeedFarFromNominalIsTold(double stretch, String severity, String code) {
        HealthNote note = only(notes(StraightReturn.place(0, stretch, 50)));
        assertEquals(severity, note.severity());
        assertEquals(code, note.code());
    }

    @Test
    void theSpeedThatWasSelectedIsNamed() {
        String said = only(notes(190.5, StraightReturn.place(0, 0.5, 50))).message();
        assertTrue(said.contains("for 19.05 cm/s and ran at 38.1 cm/s"), said);
    }

    @Test
    void allTakesAreListedAndTheOneMeasuredIsNamed() {
        List<Take> takes =
                List.of(
                        new Take(-0.5, 19.5, true),
                        new Take(30.25, 41.5, false),
                        new Take(50, 70, true));
        HealthNote note = only(notes(StraightReturn.place(50, 1, 75, true, true, takes)));
        assertEquals("note", note.severity());
        assertEquals("several-takes", note.code());
        assertTrue(
                note.message()
                        .contains(
                                "3 times: from 0.0 s whole, from 30.3 s to 41.5 s in part, from"
                                        + " 50.0 s whole. The one from 50.0 s was measured"),
                note.message());
    }

    /** A take that begins before the recording does is told from the recording's beginning. */
    @Test
    void aTakeIsNotToldFromBeforeTheRecording() {
        List<Take> takes = List.of(new Take(-0.25, 19.75, true), new Take(30, 35, false));
        HealthNote note = only(notes(StraightReturn.place(-0.25, 1, 75, true, true, takes)));
        assertTrue(note.message().contains("The one from 0.0 s"), note.message());
    }

    @Test
    void aMarkerThatWasNotHeardIsTold() {
        HealthNote start = only(notes(StraightReturn.place(0, 1, 20, false, true, List.of())));
        assertEquals("warning", start.severity());
        assertEquals("no-start-marker", start.code());
        HealthNote end = only(notes(StraightReturn.place(0, 1, 20, true, false, List.of())));
        assertEquals("note", end.severity());
        assertEquals("no-end-marker", end.code());
    }

    /** What is not there at all includes the marker: that is not told a second time. */
    @Test
    void whatIsMissingIsNamedWithTheReason() {
        HealthNote note = only(notes(StraightReturn.place(0, 1, 5.5, true, false, List.of())));
        assertEquals("warning", note.severity());
        assertEquals("incomplete", note.code());
        String said = note.message();
        assertTrue(said.startsWith("The recording does not hold the whole programme. "), said);
        assertTrue(said.contains("Missing: \"high\", \"end\";"), said);
        assertTrue(said.contains("5.5 s"), said);
    }
}
