package offtape.report.result;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.networknt.schema.InputFormat;
import com.networknt.schema.JsonSchemaFactory;
import com.networknt.schema.SpecVersion;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import offtape.core.unit.Quantity;
import offtape.reference.Schemas;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class ResultsJsonTest {

    private static final Quantity NO = Quantity.unknown("This recording cannot tell.");

    /** A session of which nothing but the delay is known. */
    private static Results least(String note) {
        return new Results(
                Results.FORMAT,
                Results.VERSION,
                new Session(
                        null,
                        null,
                        null,
                        "two-pass",
                        "2026-01-01T00:00:00Z",
                        note,
                        "offtape",
                        "0".repeat(64)),
                new Timing(Quantity.known(1.0 / 3, "ms", 0.002), NO, NO, "normal", NO),
                new Speed(
                        NO, NO, NO, NO, NO, NO, NO, NO, NO, NO, null, List.of(), null, null, null,
                        null, null, NO, null, null, null, List.of()),
                List.of(),
                List.of(),
                List.of(),
                new Channels(
                        NO,
                        NO,
                        NO,
                        Quantity.known(0.31, "µs", 0.05),
                        NO,
                        NO,
                        NO,
                        NO,
                        NO,
                        NO,
                        NO,
                        List.of(),
                        null),
                List.of(),
                List.of(new HealthNote("note", "short", "A \"short\" recording.")),
                Verdict.open("No limits were applied."),
                null,
                null,
                null,
                List.of());
    }

    @Test
    void theLeastSessionKeepsTheSchema() {
        assertEquals(
                Set.of(),
                JsonSchemaFactory.getInstance(SpecVersion.VersionFlag.V202012)
                        .getSchema(Schemas.results())
                        .validate(ResultsJson.write(least(null)), InputFormat.JSON));
    }

    @Test
    void keysStandInTheOrderOfTheContract() throws JsonProcessingException {
        List<String> keys = new ArrayList<>();
        new ObjectMapper()
                .readTree(ResultsJson.write(least(null)))
                .fieldNames()
                .forEachRemaining(keys::add);
        assertEquals(
                List.of(
                        "format",
                        "version",
                        "session",
                        "timing",
                        "speed",
                        "response",
                        "distortion",
                        "noise",
                        "channels",
                        "dropouts",
                        "health",
                        "verdict",
                        "losses"),
                keys);
    }

    @Test
    void figuresAreKnownOrHaveAReason() throws JsonProcessingException {
        JsonNode timing = new ObjectMapper().readTree(ResultsJson.write(least(null))).get("timing");
        assertEquals(
                "{\"value\":0.333333333,\"unit\":\"ms\",\"uncertainty\":0.002}",
                timing.get("delay").toString());
        assertEquals(
                "{\"value\":null,\"reason\":\"This recording cannot tell.\"}",
                timing.get("headDelay").toString());
    }

    /** Nine significant digits, halves to the even neighbour, no negative zero. */
    @ParameterizedTest
    @CsvSource({
        "0.1234567894, 0.123456789",
        "0.1234567896, 0.12345679",
        "123456789.4, 1.23456789E8",
        "-0.0, 0.0",
        "1e-12, 1.0E-12",
        "2, 2.0",
        "-66.66666666666667, -66.6666667",
    })
    void numbersAreRounded(double value, String written) {
        String json = ResultsJson.write(new HumLine(50, value, 0.1));
        assertTrue(json.contains("\"levelDb\" : " + written + ","), json);
        String array = ResultsJson.write(new SpeedSpectrum(new double[] {value}, new double[] {1}));
        assertTrue(array.contains("[ " + written + " ]"), array);
    }

    @ParameterizedTest
    @ValueSource(doubles = {Double.NaN, Double.POSITIVE_INFINITY, Double.NEGATIVE_INFINITY})
    void whatIsNotFiniteIsRefused(double value) {
        HumLine line = new HumLine(50, value, 0.1);
        assertThrows(IllegalStateException.class, () -> ResultsJson.write(line));
        LadderStep step =
                new LadderStep(0, value, null, null, null, null, null, true, StepNoise.NOT_HEARD);
        assertThrows(IllegalStateException.class, () -> ResultsJson.write(step));
        SpeedSpectrum spectrum = new SpeedSpectrum(new double[] {1, value}, new double[] {1, 1});
        assertThrows(IllegalStateException.class, () -> ResultsJson.write(spectrum));
    }

    /**
     * Notes are the user's: quotes, line ends, other scripts and escapes come back as they were.
     */
    @ParameterizedTest
    @ValueSource(
            strings = {
                "\"quoted\" \\ back",
                "two\nlines\t",
                "Gerät № 2 — ②",
                "\u001b[2J",
                "</script>"
            })
    void notesComeBackAsTheyWere(String note) throws JsonProcessingException {
        String json = ResultsJson.write(least(note));
        assertEquals(note, new ObjectMapper().readTree(json).at("/session/note").textValue());
        assertFalse(json.contains("\u001b"));
    }

    @Test
    void theTextIsTheSameEachTimeAndEndsItsLine() {
        assertEquals(ResultsJson.write(least("x")), ResultsJson.write(least("x")));
        assertTrue(ResultsJson.write(least("x")).endsWith("}\n"));
        assertFalse(ResultsJson.write(least("x")).contains("\r"));
    }
}
