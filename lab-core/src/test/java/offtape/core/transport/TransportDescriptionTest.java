package offtape.core.transport;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.networknt.schema.InputFormat;
import com.networknt.schema.JsonSchemaFactory;
import com.networknt.schema.SpecVersion;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.OptionalDouble;
import offtape.core.fault.UnusableInputException;
import offtape.reference.Schemas;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class TransportDescriptionTest {

    private static final String HEAD = "{\"format\": \"offtape-transport\", \"version\": 1";

    private static boolean keepsTheSchema(String json) {
        return JsonSchemaFactory.getInstance(SpecVersion.VersionFlag.V202012)
                .getSchema(Schemas.transport())
                .validate(json, InputFormat.JSON)
                .isEmpty();
    }

    @Test
    void theTemplateKeepsTheSchemaAndNamesNothing() {
        String template = TransportDescription.template();
        assertTrue(keepsTheSchema(template));
        TransportDescription read = TransportDescription.fromJson(template);
        assertEquals(List.of(), ExpectedLines.of(read, OptionalDouble.of(190.5), 0));
    }

    @Test
    void theLeastDescriptionIsItsFormat() {
        String least = HEAD + "}";
        assertTrue(keepsTheSchema(least));
        assertEquals(List.of(), TransportDescription.fromJson(least).idlers());
    }

    /** A reel that is empty is its hub. */
    @Test
    void aHubMayBeAsLargeAsThePack() {
        TransportDescription read =
                TransportDescription.fromJson(
                        HEAD + ", \"supplyReel\": {\"hubRadiusMm\": 30, \"packRadiusMm\": 30}}");
        assertEquals(30, read.supplyReel().leastRadiusMm());
    }

    @Test
    void aFileIsReadLikeItsText(@TempDir Path folder) throws IOException {
        Path file = Files.writeString(folder.resolve("deck.json"), HEAD + ", \"mainsHz\": 50}");
        assertEquals(50, TransportDescription.fromJson(file).mainsHz());
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            quoteCharacter = '`',
            value = {
                "{\"format\": \"offtape-machine\", \"version\": 1}|\"format\" must be"
                        + " \"offtape-transport\": this is no description of a transport.",
                "{\"version\": 1}|\"format\" must be"
                        + " \"offtape-transport\": this is no description of a transport.",
                "{\"format\": \"offtape-transport\", \"version\": 2}|\"version\" must be 1; no"
                        + " other is known here.",
                "{\"format\": \"offtape-transport\"}|\"version\" must be 1; no other is known"
                        + " here.",
            })
    void anotherFormatOrVersionIsRefused(String json, String words) {
        assertFalse(keepsTheSchema(json), json);
        assertRefused(json, words);
    }

    /** What schema and reader both refuse, and the words for it. */
    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            quoteCharacter = '`',
            value = {
                "\"capstan\": {\"diametreMm\": 6}|the member \"capstan.diametreMm\" is not known."
                        + " Perhaps \"diameterMm\" is meant. Known here: diameterMm, name.",
                "\"capstan\": {\"diameterMm\": 0}|capstan: \"diameterMm\" is 0; it must lie between"
                        + " 0.5 and 200 mm.",
                "\"capstan\": {\"diameterMm\": \"6\"}|capstan.diameterMm: the value is not of the"
                        + " kind that belongs here (line 1, column 73).",
                "\"mainsHz\": 400|\"mainsHz\" is 400; it must lie between 45 and 65 Hz.",
                "\"motors\": [{\"rpm\": 5}]|motors[0]: \"rpm\" is 5; it must lie between 6 and 12000"
                        + " turns a minute.",
                "\"supplyReel\": {\"packRadiusMm\": 300}|supplyReel: \"packRadiusMm\" is 300; it must"
                        + " lie between 5 and 200 mm.",
                "\"idlers\": [null]|\"idlers\" has an empty entry (null).",
            })
    void whatDoesNotFitIsRefusedInWords(String member, String words) {
        String json = HEAD + ", " + member + "}";
        assertFalse(keepsTheSchema(json), json);
        assertRefused(json, words);
    }

    /** What a schema cannot say. */
    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            quoteCharacter = '`',
            value = {
                "\"supplyReel\": {\"hubRadiusMm\": 30}|supplyReel: \"packRadiusMm\" is missing: with"
                        + " the hub alone the line of the reel could lie anywhere below it. Give the"
                        + " radius of the full pack too.",
                "\"takeUpReel\": {\"hubRadiusMm\": 60, \"packRadiusMm\": 50}|takeUpReel:"
                        + " \"hubRadiusMm\" is larger than \"packRadiusMm\"; the pack lies on the hub.",
                "\"motors\": [{\"rpm\": 1440, \"rotationHz\": 24}]|motors[0]: \"rotationHz\" and"
                        + " \"rpm\" say the same; give one of them.",
                "\"mainsHz\": 50, \"mainsHz\": 60|a member is there twice (line 1, column 71).",
                "\"motors\": [{\"name\": \"a\\nb\"}]|motors[0]: \"name\" must be one line of text.",
            })
    void whatContradictsItselfIsRefusedInWords(String member, String words) {
        assertRefused(HEAD + ", " + member + "}", words);
    }

    private static void assertRefused(String json, String words) {
        String said =
                assertThrows(
                                UnusableInputException.class,
                                () -> TransportDescription.fromJson(json))
                        .getMessage();
        assertEquals("the transport's description: " + words, said);
    }
}
