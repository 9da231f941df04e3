package offtape.cli.command;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.networknt.schema.InputFormat;
import com.networknt.schema.JsonSchemaFactory;
import com.networknt.schema.SpecVersion;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Set;
import offtape.reference.Schemas;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Faults and machines of sessions written by hand, on the terminal and as JSON. */
class CompareCommandTest {

    private static final String DIRTY =
            """
            {"code": "dirty-head", "name": "Dirty head", "channel": "right", "likelihood": 0.87,
             "evidence": [], "unlike": [], "remedy": "Clean it.", "caution": null}""";

    @TempDir private Path folder;

    private Path worn;
    private Path clean;
    private Path other;
    private Path out;

    @BeforeEach
    void sessions() throws IOException {
        worn = session("worn", "Deck A", "2026-03-14", -0.8, "service", DIRTY);
        clean = session("clean", "Deck A", "2026-03-28", 0.1, "keep", "");
        other = session("other", "Deck B", "2026-03-28", 0.1, "keep", "");
        out = folder.resolve("out");
    }

    private Path session(
            String folderName,
            String machine,
            String day,
            double balance,
            String decision,
            String faults)
            throws IOException {
        String text =
                """
                {"format": "offtape-results", "version": 1,
                 "session": {"machineName": "%s", "tape": null, "tapeSpeedMmPerS": 190.5,
                   "mode": "two-pass", "madeAt": "%sT12:00:00Z", "note": null,
                   "software": "offtape", "recordingSha256": "%s"},
                 "response": [], "distortion": [], "noise": [], "dropouts": [], "health": [],
                 "losses": [],
                 "channels": {"balance": {"value": %s, "unit": "dB", "uncertainty": 0.05},
                   "crosstalk": []},
                 "verdict": {"decision": "%s", "because": [], "checks": [], "faults": [%s],
                   "soundLikelihood": 0.1, "next": [], "cautions": []}}
                """
                        .formatted(
                                machine,
                                day,
                                folderName.substring(0, 1).equals("w")
                                        ? "0a".repeat(32)
                                        : "1b".repeat(32),
                                balance,
                                decision,
                                faults);
        Path session = Files.createDirectories(folder.resolve(folderName));
        Files.writeString(session.resolve("results.json"), text);
        return session;
    }

    private Tool.Outcome compare(Object... args) {
        Object[] all = new Object[args.length + 4];
        all[0] = "compare";
        System.arraycopy(args, 0, all, 1, args.length);
        all[args.length + 1] = "--out";
        all[args.length + 2] = out;
        all[args.length + 3] = "--force";
        return Tool.run(all);
    }

    @Test
    void aServiceIsToldAsBeforeAndAfter() {
        Tool.Outcome o = compare(worn, clean);
        assertEquals(0, o.code(), o.err());
        assertEquals(
                """
                Decision: service before, keep after.
                better  Balance, right against left: -0.80 to 0.10 dB, a difference of +0.90 ± 0.07
                Fault, gone: Dirty head (right); very likely, 87\u00a0% before, under 15\u00a0% after
                """,
                o.err().replaceFirst("(?s)Page: .*", ""));
    }

    @Test
    void twoMachinesAreToldByName() {
        Tool.Outcome o = compare(worn, other);
        assertEquals(0, o.code(), o.err());
        assertEquals(
                """
                Taken for two machines, since the names differ. Add --as service if it is one under \
                two names.
                Two machines: Deck A and Deck B.
                Decision: service for Deck A, keep for Deck B.
                better on Deck B: Balance, right against left: -0.80 dB on Deck A, 0.10 dB on Deck B, a \
                difference of +0.90 ± 0.07
                Fault, Deck A only: Dirty head (right); very likely, 87\u00a0% on Deck A, under 15\u00a0% \
                on Deck B
                """,
                o.err().replaceFirst("(?s)Page: .*", ""));
    }

    @Test
    void theUserMaySayWhichItIs() throws IOException {
        Tool.Outcome one = compare(worn, other, "--as", "service");
        assertTrue(one.err().contains("Fault, gone: Dirty head (right)"), one.err());
        assertFalse(one.err().contains("Taken for"), one.err());
        Tool.Outcome two = compare(worn, clean, "--as", "machines");
        assertTrue(two.err().contains("better on Deck A (second): Balance"), two.err());
        assertTrue(Files.readString(out.resolve("comparison.html")).contains("Two machines side"));
        Tool.Outcome wrong = compare(worn, clean, "--as", "friends");
        assertEquals(2, wrong.code());
        assertTrue(
                wrong.err().contains("\"friends\" must be one of service, machines."), wrong.err());
    }

    @Test
    void whatIsPrintedKeepsItsSchema() throws IOException {
        for (Path second : new Path[] {clean, other}) {
            Tool.Outcome o = compare(worn, second, "--json");
            assertEquals(Files.readString(out.resolve("comparison.json")), o.out());
            assertKeeps(Schemas.comparison(), o.out());
        }
        Tool.Outcome history = Tool.run("history", worn, clean, "--json");
        assertEquals(0, history.code(), history.err());
        assertKeeps(Schemas.history(), history.out());
    }

    private static void assertKeeps(String schema, String json) {
        assertEquals(
                Set.of(),
                JsonSchemaFactory.getInstance(SpecVersion.VersionFlag.V202012)
                        .getSchema(schema)
                        .validate(json, InputFormat.JSON));
    }
}
