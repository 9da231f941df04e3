package offtape.cli.command;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.HashMap;
import java.util.Map;
import java.util.function.Function;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * The table of bad inputs (bad-inputs.txt): command, exit code and sentence of each. In a command a
 * name in braces stands for what a factory of that name makes; in a sentence {it} for its path and
 * {its name} for its file name. With exit code 0 the sentence is severity, code and a part of the
 * message of a remark in the results, what is said beside a bare tone's figures, or "none" where
 * there is no remark but notes.
 */
class BadInputsTest {

    @TempDir private static Path folder;

    private static Lab lab;
    private static final Map<String, Function<Lab, Path>> FACTORIES = new HashMap<>();
    private static final Map<String, Path> MADE = new HashMap<>();

    @BeforeAll
    static void aWorkshop() {
        lab = new Lab(folder);
        new BadSounds()
                .all()
                .forEach((name, bytes) -> FACTORIES.put(name, l -> l.file(name, bytes.get())));
        new BadTexts()
                .all()
                .forEach(
                        (name, text) ->
                                FACTORIES.put(name, l -> l.file(name + ".json", text.get())));
        FACTORIES.putAll(new BadReturns().all());
        FACTORIES.putAll(new BadPlaces().all());
        ProcessedReturns processed = new ProcessedReturns(lab);
        FACTORIES.putAll(processed.all());
        FACTORIES.put("programme", Lab::programme);
        FACTORIES.put("trial", l -> processed.programme());
        FACTORIES.put("out", l -> l.path("out"));
    }

    /** A row of the table. */
    record Row(String name, String line, int code, String sentence) {

        static Row of(String text) {
            String[] cells =
                    Arrays.stream(text.split("\\|")).map(String::strip).toArray(String[]::new);
            return new Row(cells[0], cells[1], Integer.parseInt(cells[2]), cells[3]);
        }

        @Override
        public String toString() {
            return name;
        }
    }

    static Stream<Row> rows() {
        try (InputStream in = BadInputsTest.class.getResourceAsStream("bad-inputs.txt")) {
            return new String(in.readAllBytes(), StandardCharsets.UTF_8)
                    .lines()
                    .filter(line -> !line.isBlank() && !line.startsWith("#"))
                    .map(Row::of);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    @ParameterizedTest
    @MethodSource("rows")
    void comesOutAsTheTableSays(Row row) throws IOException {
        Path[] it = new Path[1];
        Object[] line =
                Arrays.stream(row.line().split(" ")).map(word -> argument(word, it)).toArray();
        String sentence =
                row.sentence()
                        .replace("{it}", it[0].toString())
                        .replace("{its name}", String.valueOf(it[0].getFileName()))
                        .replace("{lab}", folder.toString());
        if (row.code() != 0) {
            lab.check(Lab.Case.of(row.name(), row.code(), sentence, l -> line));
            return;
        }
        Tool.Outcome outcome = Tool.run(Lab.line(line, "--json"));
        assertEquals(0, outcome.code(), outcome.err());
        JsonNode answer = new ObjectMapper().readTree(outcome.out());
        if (answer.has("health")) {
            remark(sentence, answer.get("health"));
        } else {
            assertEquals(sentence.equals("none") ? "" : sentence, outcome.err().strip());
        }
    }

    /** The first thing made for a row is what its sentence speaks of. */
    private static Object argument(String word, Path[] it) {
        if (!word.startsWith("{")) {
            return word;
        }
        String name = word.substring(1, word.length() - 1);
        Path made = MADE.computeIfAbsent(name, n -> FACTORIES.get(n).apply(lab));
        it[0] = it[0] == null ? made : it[0];
        return made;
    }

    private static void remark(String wanted, JsonNode health) {
        if (wanted.equals("none")) {
            for (JsonNode note : health) {
                assertEquals("note", note.get("severity").asText(), health.toString());
            }
            return;
        }
        String[] parts = wanted.split(" ", 3);
        boolean found = false;
        for (JsonNode note : health) {
            found |=
                    note.get("severity").asText().equals(parts[0])
                            && note.get("code").asText().equals(parts[1])
                            && note.get("message").asText().contains(parts[2]);
        }
        assertTrue(found, wanted + " in " + health);
    }
}
