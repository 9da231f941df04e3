package offtape.cli.command;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.networknt.schema.InputFormat;
import com.networknt.schema.JsonSchema;
import com.networknt.schema.JsonSchemaFactory;
import com.networknt.schema.SpecVersion;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import offtape.cli.batch.Seal;
import offtape.core.output.OutputFolder;
import offtape.core.output.Sha256;
import offtape.reference.Schemas;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Many returns in one go: a session each, one summary, what is done is left alone. */
class MeasureBatchTest {

    @TempDir private Path folder;

    private Tool.Outcome batch(Object... more) {
        Object[] line =
                Lab.line(
                        "measure",
                        "--batch",
                        folder.resolve("list.csv"),
                        "--programme",
                        folder.resolve("programme"),
                        "--out",
                        folder.resolve("archive"));
        return Tool.run(Lab.line(line, more));
    }

    private List<String> summary() throws IOException {
        return Files.readAllLines(folder.resolve("archive/summary.csv"));
    }

    /** The first cells of a row: name, file, state. */
    private String row(int number) throws IOException {
        String[] cells = summary().get(number).split(",", 4);
        return cells[0] + " " + cells[1] + " " + cells[2];
    }

    private static JsonSchema schema(String text) {
        return JsonSchemaFactory.getInstance(SpecVersion.VersionFlag.V202012).getSchema(text);
    }

    @Test
    void oneBadFileStopsNoOtherAndWhatIsDoneIsLeftAlone() throws Exception {
        Lab lab = new Lab(folder);
        lab.same("return.wav", lab.programme().resolve("programme.wav"));
        lab.file("words.wav", "no sound");
        lab.file(
                "list.csv",
                "\ufeff# what the workshop has\r\n"
                        + "file;note;mode\r\n"
                        + "\r\n"
                        + "words.wav;;\r\n"
                        + "return.wav;\"=1+1; \"\"as found\"\"\";reference-tape\r\n"
                        + "words.wav\r\n");

        Tool.Outcome first = batch("--tape", "A");

        assertEquals(3, first.code(), first.err());
        assertEquals("words words.wav refused", row(1));
        assertEquals("return return.wav measured", row(2));
        assertTrue(
                first.err()
                        .contains("2 returns: 1 measured, 0 unchanged and left alone, 1 refused."),
                first.err());
        assertEquals(3, first.out().lines().count(), first.out());
        assertTrue(
                first.err()
                        .startsWith(
                                lab.path("list.csv")
                                        + ", line 6: words.wav is in line 4 already and is measured"
                                        + " once.\n"),
                first.err());
        assertEquals(
                Set.of(),
                schema(Schemas.batchSession())
                        .validate(
                                Files.readString(lab.path("archive/return/batch.json")),
                                InputFormat.JSON));
        // the session is the one that the same options give by themselves
        Tool.run(
                Lab.line(
                        lab.measure(lab.path("return.wav")),
                        "--tape",
                        "A",
                        "--mode",
                        "reference-tape",
                        "--note",
                        "=1+1; \"as found\""));
        Set<String> names = new TreeSet<>(lab.namesIn("session"));
        names.remove(".offtape-manifest.json");
        for (String name : names) {
            assertArrayEquals(
                    lab.bytes(lab.path("session/" + name)),
                    lab.bytes(lab.path("archive/return/" + name)),
                    name);
        }

        Object before = Files.getLastModifiedTime(lab.path("archive/return/results.json"));
        List<String> once = summary();
        Tool.Outcome second = batch("--tape", "A", "--json");
        assertEquals("return return.wav unchanged", row(2));
        assertEquals(once.get(2), summary().get(2).replace(",unchanged,", ",measured,"));
        assertEquals(before, Files.getLastModifiedTime(lab.path("archive/return/results.json")));
        assertEquals(Set.of(), schema(Schemas.batch()).validate(second.out(), InputFormat.JSON));
        JsonNode json = new ObjectMapper().readTree(second.out());
        assertEquals("refused", json.at("/returns/0/state").asText());
        assertEquals("unchanged", json.at("/returns/1/state").asText());
        assertEquals("%", json.at("/returns/1/figures/6/unit").asText());

        // what is no longer the same is not left alone, and a refusal takes no session away
        Files.delete(lab.path("return.wav"));
        lab.file("return.wav", "no sound either");
        batch("--tape", "B");
        assertEquals("return return.wav refused", row(2));
        batch("--tape", "A");
        assertEquals("return return.wav refused", row(2));
        assertEquals(before, Files.getLastModifiedTime(lab.path("archive/return/results.json")));
    }

    @Test
    void anotherOptionAnotherProgrammeOrResultsFromElsewhereAreNoSeal() throws Exception {
        Path session = Files.createDirectory(folder.resolve("session"));
        Path recording = Files.writeString(folder.resolve("a.wav"), "sound");
        try (OutputFolder out = OutputFolder.open(session, false)) {
            out.write("results.json", new byte[] {1});
            Seal.put(out, Sha256.ofFile(recording), "inputs");
            out.commit();
        }
        Seal seal = Seal.in(session).orElseThrow();
        assertTrue(seal.isOf(recording, "inputs"));
        assertFalse(seal.isOf(recording, "others"));
        Files.writeString(recording, "another sound");
        assertFalse(seal.isOf(recording, "inputs"));
        Files.write(session.resolve("results.json"), new byte[] {2});
        assertTrue(Seal.in(session).isEmpty());
    }

    @Test
    void aFolderOfTheUsersIsNotWrittenInto() throws IOException {
        Files.writeString(folder.resolve("list.csv"), "gone.wav\n");
        Files.createDirectory(folder.resolve("archive"));
        Path own = Files.writeString(folder.resolve("archive/own.txt"), "mine");
        Tool.Outcome outcome = batch();
        assertEquals(2, outcome.code());
        assertTrue(outcome.err().contains("already holds files"), outcome.err());
        assertTrue(Files.exists(own));
        assertFalse(Files.exists(folder.resolve("archive/summary.csv")));
    }

    @Test
    void aListAndReturnsDoNotGoTogether() {
        Tool.Outcome outcome = batch("return.wav");
        assertEquals(2, outcome.code());
        assertEquals(
                "offtape: --batch takes the returns from its list. Leave out return.wav, or leave"
                        + " out --batch. See \"offtape measure --help\".\n",
                outcome.err());
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "measure | Missing required options and parameters: '--programme=DIR', '--out=SESSION', 'RETURN'.",
                "measure a.wav | Missing required options: '--programme=DIR', '--out=SESSION'.",
                "measure a.wav --out o | Missing required option: '--programme=DIR'.",
                "measure --out o --programme p | Missing required parameter: 'RETURN'.",
                "measure --batch l | Missing required option: '--out=SESSION'.",
            })
    void whatIsMissingIsTold(String line, String sentence) {
        Tool.Outcome outcome = Tool.run((Object[]) line.split(" "));
        assertEquals(2, outcome.code());
        assertEquals("offtape: " + sentence + " See \"offtape measure --help\".\n", outcome.err());
    }
}
