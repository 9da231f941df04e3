package offtape.core.json;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import offtape.core.fault.UnusableInputException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

/** Descriptions that come from anybody: what is refused, and how; and what is written of them. */
class StrictJsonTest {

    /** A description with a member of every kind that is used. */
    record Thing(
            String name,
            double level,
            Double gain,
            double[] curve,
            List<Double> steps,
            Object anything) {}

    private static final StrictJson<Thing> JSON = new StrictJson<>(Thing.class, "a thing", 1);

    private static final String NOT_OF_THE_KIND = "the value is not of the kind that belongs here";
    private static final String BEYOND_BOUNDS =
            "this is nested more deeply, or holds a longer text, name or number, than anything that"
                    + " belongs here";

    private static String nested(int depth) {
        return "{\"anything\":" + "[".repeat(depth) + "]".repeat(depth) + "}";
    }

    static Stream<Arguments> refused() {
        return Stream.of(
                Arguments.of("{\"level\":\"NaN\"}", "level: " + NOT_OF_THE_KIND),
                Arguments.of("{\"gain\":\"Infinity\"}", "gain: " + NOT_OF_THE_KIND),
                Arguments.of("{\"gain\":\"1\"}", "gain: " + NOT_OF_THE_KIND),
                Arguments.of("{\"gain\":1e999}", "gain: " + NOT_OF_THE_KIND),
                Arguments.of("{\"level\":-1e999}", "level: " + NOT_OF_THE_KIND),
                Arguments.of("{\"level\":NaN}", "this is not well-formed JSON"),
                Arguments.of("{\"curve\":[1,\"NaN\"]}", "curve: " + NOT_OF_THE_KIND),
                Arguments.of("{\"curve\":[1,null]}", "curve: " + NOT_OF_THE_KIND),
                Arguments.of("{\"curve\":1}", "curve: " + NOT_OF_THE_KIND),
                Arguments.of("{\"steps\":[1,1e999]}", "steps[1]: " + NOT_OF_THE_KIND),
                Arguments.of("{\"steps\":[1,null]}", "\"steps\" has an empty entry (null)."),
                Arguments.of("{\"name\":\"a\",\"name\":\"b\"}", "a member is there twice"),
                Arguments.of("{\"anything\":{\"a\":1,\"a\":2}}", "a member is there twice"),
                Arguments.of("{} {}", NOT_OF_THE_KIND),
                Arguments.of(nested(40), BEYOND_BOUNDS),
                Arguments.of(nested(100_000), BEYOND_BOUNDS),
                Arguments.of("{\"name\":\"" + "x".repeat(100_001) + "\"}", BEYOND_BOUNDS),
                Arguments.of("{\"" + "x".repeat(1001) + "\":1}", BEYOND_BOUNDS),
                Arguments.of("{\"level\":0." + "1".repeat(101) + "}", BEYOND_BOUNDS),
                Arguments.of("{\"level\":" + "1".repeat(101) + "}", BEYOND_BOUNDS),
                Arguments.of(
                        "{\"\\u001b[2J\\u202e\":1}",
                        "the member \"\uFFFD[2J\uFFFD\" is not known. Known here: "));
    }

    @ParameterizedTest
    @MethodSource("refused")
    void refusesWhatNobodyWouldWrite(String text, String sentence) {
        UnusableInputException refusal =
                assertThrows(UnusableInputException.class, () -> JSON.read(text, "x.json"));
        assertTrue(refusal.getMessage().startsWith("x.json: " + sentence), refusal::getMessage);
        assertTrue(refusal.getMessage().length() < 300, refusal::getMessage);
    }

    @Test
    void refusesALongTextWhereverItComesFrom() {
        String text = "[" + "1,".repeat(1 << 20) + "1]";
        assertThrows(UnusableInputException.class, () -> JSON.read(text, "x.json"));
    }

    @Test
    void takesWhatLiesJustWithinTheBounds() {
        assertEquals("x".repeat(100_000), name("{\"name\":\"" + "x".repeat(100_000) + "\"}"));
        // the object itself is one level of the forty
        JSON.read(nested(39), "x.json");
        Thing thing =
                JSON.read(
                        "{\"level\":0." + "1".repeat(98) + ",\"curve\":[1,-2.5e1],\"gain\":null}",
                        "x.json");
        assertEquals(1.0 / 9, thing.level(), 1e-15);
        assertArrayEquals(new double[] {1, -25}, thing.curve());
        assertEquals(null, thing.gain());
    }

    @Test
    void noTextChoosesAClass() {
        String text =
                "{\"anything\":{\"@class\":\"java.io.File\",\"path\":\"/\",\"@type\":\"x\"},"
                        + "\"name\":\"java.io.File\"}";
        Thing thing = JSON.read(text, "x.json");
        assertEquals("{@class=java.io.File, path=/, @type=x}", thing.anything().toString());
        Object list = JSON.read("{\"anything\":[\"java.io.File\",\"/\"]}", "x.json").anything();
        assertEquals(List.of("java.io.File", "/"), list);
    }

    @Test
    void writesNothingThatSteersAndReadsItBack() {
        String hostile =
                IntStream.rangeClosed(0, 0xFFFF)
                        .filter(c -> !Character.isSurrogate((char) c))
                        .collect(
                                StringBuilder::new,
                                StringBuilder::appendCodePoint,
                                StringBuilder::append)
                        .append("\uD83C\uDF99")
                        .toString();
        String text = JSON.write(new Thing(hostile, 0, null, null, null, null));
        assertTrue(
                text.codePoints()
                        .noneMatch(
                                c ->
                                        c != '\n' && Character.getType(c) == Character.CONTROL
                                                || c >= 0x202A && c <= 0x202E
                                                || c >= 0x2066 && c <= 0x2069
                                                || c == 0x2028
                                                || c == 0x2029));
        assertEquals(hostile, name(text));
        assertTrue(text.contains("\\u001B") && text.contains("\\u009B"), "as numbers");
        assertTrue(text.contains("\uD83C\uDF99"), "what is seen stays");
    }

    private static String name(String text) {
        return JSON.read(text, "x.json").name();
    }
}
