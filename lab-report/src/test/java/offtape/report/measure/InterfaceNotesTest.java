package offtape.report.measure;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import offtape.core.unit.Quantity;
import offtape.report.measure.loopback.KnownInterface;
import offtape.report.result.HealthNote;
import offtape.report.result.InterfaceFigures;
import offtape.report.result.InterfaceShare;
import offtape.report.result.LoopbackSession;
import offtape.report.result.LoopbackUse;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class InterfaceNotesTest {

    private static final Quantity NO = Quantity.unknown("This was not measured.");

    private static final KnownInterface KNOWN =
            KnownInterface.of(
                    new LoopbackSession(
                            "loop/results.json",
                            48_000,
                            "0".repeat(64),
                            new LoopbackUse("2024-05-01T10:00:00Z", "1".repeat(64)),
                            new InterfaceFigures(NO, null, NO, NO, NO, List.of())));

    private static InterfaceShare.Entry entry(
            String figure, String channel, double own, Double share, boolean limits) {
        return new InterfaceShare.Entry(figure, channel, "dB", own, -60.0, share, limits, "");
    }

    private static List<HealthNote> notes(
            String mode,
            List<InterfaceShare.Entry> entries,
            InterfaceNotes.LevelChange... changes) {
        return InterfaceNotes.of(
                KNOWN, new InterfaceShare(entries, List.of()), mode, List.of(changes));
    }

    private static HealthNote last(List<HealthNote> notes, int size) {
        assertEquals(size, notes.size(), notes.toString());
        return notes.get(size - 1);
    }

    @Test
    void theLoopbackThatWasUsedIsNamed() {
        HealthNote note = last(notes(null, List.of()), 1);
        assertEquals("note", note.severity());
        assertEquals("loopback-used", note.code());
        assertTrue(note.message().contains("in the recording of 2024-05-01T10:00:00Z was taken"));
        assertTrue(note.message().endsWith("uncertainties."), note.message());
    }

    /** A tape of tones is replayed without the interface's output. */
    @Test
    void aTapeOfTonesDidNotPassTheOutput() {
        String said = last(notes("reference-tape", List.of()), 1).message();
        assertTrue(said.endsWith("not in use while this tape was replayed."), said);
    }

    @Test
    void whatLimitsIsListedWithItsShare() {
        HealthNote note =
                last(
                        notes(
                                "off-tape",
                                List.of(
                                        entry("Noise", "left", -70, 55.4, true),
                                        entry("Hum", "right", -80, 10.0, false),
                                        entry("Crosstalk", null, -66, 61.0, true),
                                        entry("Level of 3 %", "right", 4.5, null, true))),
                        2);
        assertEquals("warning", note.severity());
        assertEquals("interface-limits", note.code());
        assertEquals(
                "The interface itself limits what can be told of the machine: Noise, left (its own"
                        + " is 55 % of what was heard); Crosstalk (its own is 61 % of what was"
                        + " heard); Level of 3 %, right (4.5 dB). Against its noise raise the level"
                        + " at its input, against its distortion lower it, or use a better one.",
                note.message());
    }

    @Test
    void oneThatLimitsIsTheLast() {
        String said =
                last(notes(null, List.of(entry("Noise", "left", -70, 55.4, true))), 2).message();
        assertTrue(said.contains("machine: Noise, left (its own is 55 % of what was heard). A"));
    }

    @ParameterizedTest
    @CsvSource({"3, 0", "3.1, 1", "-3, 0", "-3.1, 1"})
    void aChangedGainIsToldBeyondThreeDecibels(double db, int told) {
        var change = new InterfaceNotes.LevelChange("right", db);
        assertEquals(1 + told, notes(null, List.of(), change).size());
    }

    @Test
    void onlyTheChannelsThatChangedAreNamed() {
        var left = new InterfaceNotes.LevelChange("left", -4.5);
        var right = new InterfaceNotes.LevelChange("right", 6);
        var little = new InterfaceNotes.LevelChange("right", 1);
        HealthNote both = last(notes(null, List.of(), left, right), 2);
        assertEquals("interface-gain-changed", both.code());
        assertEquals("warning", both.severity());
        assertTrue(both.message().contains("(-4.5 dB left, +6.0 dB right)"), both.message());
        String one = last(notes(null, List.of(), left, little), 2).message();
        assertTrue(one.contains("(-4.5 dB left)"), one);
    }
}
