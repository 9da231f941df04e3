package offtape.report.render;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.networknt.schema.InputFormat;
import com.networknt.schema.JsonSchema;
import com.networknt.schema.JsonSchemaFactory;
import com.networknt.schema.SpecVersion;
import java.time.Instant;
import java.util.List;
import java.util.Set;
import offtape.reference.Schemas;
import offtape.report.compare.Comparison;
import offtape.report.compare.History;
import offtape.report.result.Results;
import offtape.report.result.ResultsJson;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What is written of sessions set against each other keeps its schema. */
class ComparisonSchemaTest {

    private static final JsonSchema COMPARISON = schema(Schemas.comparison());
    private static final JsonSchema HISTORY = schema(Schemas.history());

    private static final Results WORN = Pairs.worn("Deck A");
    private static final Results FINE = Pairs.fine("Deck A");

    private static JsonSchema schema(String text) {
        return JsonSchemaFactory.getInstance(SpecVersion.VersionFlag.V202012).getSchema(text);
    }

    private static void assertKeeps(JsonSchema schema, Object what) {
        assertEquals(Set.of(), schema.validate(ResultsJson.write(what), InputFormat.JSON));
    }

    @Test
    void comparisonsKeepIt() {
        assertKeeps(COMPARISON, Comparison.of(WORN, FINE, List.of()));
        assertKeeps(COMPARISON, Comparison.of(WORN, Pairs.fine("Deck B"), List.of(WORN, FINE)));
        Results bare = Scenario.after();
        Comparison untold = Comparison.of(WORN, bare, List.of());
        assertKeeps(COMPARISON, untold);
        assertTrue(ResultsJson.write(untold).contains("\"cannot-be-told\""));
    }

    @Test
    void historiesKeepIt() {
        assertKeeps(HISTORY, History.of(List.of(WORN, FINE), null));
        assertKeeps(
                HISTORY,
                History.of(
                        List.of(WORN, FINE, WORN, Scenario.empty(null)),
                        Instant.parse("2026-03-01T00:00:00Z")));
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            quoteCharacter = '`',
            value = {
                "\"version\" : 1|\"version\" : 2",
                "\"as\" : \"service\"|\"as\" : \"both\"",
                "\"outcome\" : \"went\"|\"outcome\" : \"cannot-be-told\"",
                "\"outcome\" : \"went\"|\"outcome\" : \"mended\"",
                "\"before\" : 0.87|\"before\" : 87",
                "\"direction\" : \"better\"|\"direction\" : \"up\"",
                "\"before\" : \"service\"|\"before\" : \"maybe\"",
            })
    void whatDoesNotKeepItIsRefused(String right, String wrong) {
        String good = ResultsJson.write(Comparison.of(WORN, FINE, List.of()));
        String bad = good.replace(right, wrong);
        assertFalse(bad.equals(good), "nothing was changed");
        assertFalse(COMPARISON.validate(bad, InputFormat.JSON).isEmpty());
    }
}
