package offtape.core.tape;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.networknt.schema.InputFormat;
import com.networknt.schema.JsonSchemaFactory;
import com.networknt.schema.SpecVersion;
import offtape.core.fault.UnusableInputException;
import offtape.core.standard.TimeConstants;
import offtape.reference.Schemas;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ToneListTest {

    private static final String HEAD = "{\"format\": \"offtape-tones\", \"version\": 1, ";

    private static boolean keepsTheSchema(String json) {
        return JsonSchemaFactory.getInstance(SpecVersion.VersionFlag.V202012)
                .getSchema(Schemas.tones())
                .validate(json, InputFormat.JSON)
                .isEmpty();
    }

    @Test
    void theTemplateKeepsTheSchemaAndIsRead() {
        String template = ToneList.template();
        assertTrue(keepsTheSchema(template));
        ToneList list = ToneList.fromJson(template);
        assertEquals(9, list.tones().size());
        assertEquals(ListedTone.Purpose.REFERENCE, list.tones().get(0).purpose());
        assertEquals(new TimeConstants(Double.POSITIVE_INFINITY, 70), list.constants().get());
        assertEquals(190.5, list.speed().get().mmPerS(), 1e-9);
    }

    /** What schema and reader both refuse, and the words for it. */
    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            quoteCharacter = '`',
            value = {
                "\"tones\": [{\"frequenzyHz\": 6}]}|the member \"tones[0].frequenzyHz\" is not known."
                        + " Perhaps \"frequencyHz\" is meant.",
                "\"tones\": []}|\"tones\" must hold one tone or more.",
                "\"tones\": [{\"levelDb\": -20}]}|tones[0]: a tone needs its \"frequencyHz\".",
                "\"tones\": [{\"frequencyHz\": 5}]}|tones[0]: \"frequencyHz\" is 5; it must lie"
                        + " between 20 and 25000 Hz.",
                "\"tones\": [{\"frequencyHz\": 50, \"purpose\": \"bass\"}]}|purpose: \"purpose\" is"
                        + " one of reference, speed, azimuth and response.",
                "\"accuracyPercent\": 50, \"tones\": [{\"frequencyHz\": 50}]}|\"accuracyPercent\" is"
                        + " 50; it must lie between 0 and 5 %.",
            })
    void whatIsWrongIsRefusedInWords(String rest, String words) {
        assertFalse(keepsTheSchema(HEAD + rest));
        assertRefused(rest, words);
    }

    @Test
    void whatTheSchemaCannotTellIsRefusedToo() {
        String tone = "{\"frequencyHz\": 50, \"purpose\": \"reference\"}";
        assertRefused(
                "\"tones\": [" + tone + "," + tone + "]}",
                "one tone of the purpose reference only");
        assertRefused(
                "\"equalisation\": \"flat\", \"tones\": [" + tone + "]}",
                "\"equalisation\": \"flat\" is no pair of time constants");
        assertRefused(
                "\"tapeSpeed\": \"fast\", \"tones\": [" + tone + "]}",
                "\"tapeSpeed\": \"fast\" is not a tape speed");
    }

    private static void assertRefused(String rest, String words) {
        String said =
                assertThrows(UnusableInputException.class, () -> ToneList.fromJson(HEAD + rest))
                        .getMessage();
        assertTrue(said.contains(words), said);
    }
}
