package offtape.cli.fuzz;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.code_intelligence.jazzer.junit.FuzzTest;
import java.util.Comparator;
import java.util.List;
import offtape.core.programme.Cue;
import offtape.core.programme.CueSheet;
import offtape.core.programme.CueSheetJson;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Timeout;

/** Cue sheets. */
@Tag("fuzz")
@Timeout(20)
final class CueSheetFuzzTest {

    private final HostileFile file = HostileFile.named("programme.json");

    @FuzzTest
    void anyBytes(byte[] bytes) {
        file.holding(bytes).read(CueSheetJson::read).ifPresent(CueSheetFuzzTest::check);
    }

    /** Cues lie within the programme, in order; what is written of them says the same. */
    private static void check(CueSheet sheet) {
        List<Cue> cues = sheet.cues();
        for (Cue cue : cues) {
            assertTrue(cue.startFrame() >= 0 && cue.frames() >= 1, "place");
            assertTrue(cue.startFrame() + cue.frames() <= sheet.frames(), "beyond the end");
        }
        List<Cue> ordered =
                cues.stream().sorted(Comparator.comparingLong(Cue::startFrame)).toList();
        assertEquals(ordered, cues);
        assertEquals(sheet, CueSheetJson.parse(CueSheetJson.write(sheet), "the same"));
    }
}
