package offtape.report.result;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import offtape.core.fault.UnusableInputException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The level at which K3 reaches a value, from ladders written by hand. */
class LadderSessionTest {

    @TempDir private Path folder;

    private LadderSession session(String head, String... ladders) {
        return LadderSession.read(
                file(
                        "{\"format\":\"offtape-results\",\"version\":1,\"session\":{"
                                + head
                                + "},\"speed\":{},\"distortion\":["
                                + String.join(",", ladders)
                                + "]}"));
    }

    private Path file(String text) {
        try {
            Files.writeString(folder.resolve("results.json"), text);
            return folder;
        } catch (IOException e) {
            throw new IllegalStateException(e);
        }
    }

    private static String ladder(String channel, int hz, String... steps) {
        return "{\"channel\":\"%s\",\"frequencyHz\":%d,\"k3Slope\":{},\"steps\":[%s]}"
                .formatted(channel, hz, String.join(",", steps));
    }

    private static String step(int db, String k3) {
        return step(db, k3, false);
    }

    private static String step(int db, String k3, boolean leftOut) {
        return "{\"recordLevelDb\":%d,\"k3Percent\":%s,\"leftOut\":%s,\"limitedByNoise\":false}"
                .formatted(db, k3, leftOut);
    }

    /** From 0.5 % at 4 dB to 2 % at 8 dB: 1 % lies half way, at 6 dB, since 0.5·2 = 1² . */
    @Test
    void betweenTwoStepsK3RisesEvenlyInDecibels() {
        LadderSession s =
                session(
                        "\"referenceDbfs\":-18,\"machineName\":\"Bench\"",
                        ladder("left", 1000, step(0, "null"), step(4, "0.5"), step(8, "2")));
        assertEquals(6, s.levelAtK3(1), 1e-12);
        assertEquals(8, s.levelAtK3(2), 1e-12);
        assertEquals(-18, s.referenceDbfs());
        assertEquals("Bench", s.machineName());
    }

    @Test
    void theChannelThatReachesItFirstCountsAndDisturbedStepsDoNot() {
        String left = ladder("left", 1000, step(0, "0.1"), step(4, "1"), step(8, "3"));
        String right = ladder("right", 1000, step(0, "0.25"), step(2, "9", true), step(4, "4"));
        String high = ladder("left", 10_000, step(-20, "0.1"), step(0, "5"));
        // right: 0.25 to 4 over 4 dB, 1 % half way
        assertEquals(2, session("", high, left, right).levelAtK3(1), 1e-12);
        assertNull(session("", left).referenceDbfs());
    }

    @Test
    void whatTheLadderDoesNotHoldIsRefused() {
        LadderSession s = session("", ladder("left", 315, step(0, "0.5"), step(4, "2")));
        String words =
                assertThrows(UnusableInputException.class, () -> s.levelAtK3(3)).getMessage();
        assertTrue(words.contains("at 315 Hz") && words.contains("from 0.500 to 2.00 %"), words);
        assertThrows(UnusableInputException.class, () -> s.levelAtK3(0.2));
        LadderSession none = session("", ladder("left", 1000, step(0, "null")));
        words = assertThrows(UnusableInputException.class, () -> none.levelAtK3(1)).getMessage();
        assertTrue(words.contains("tells no K3"), words);
    }

    @Test
    void whatIsNoSessionIsRefused() {
        for (String text :
                new String[] {
                    "{\"format\":\"offtape-results\",\"version\":2,\"session\":{}}", "{}"
                }) {
            Path place = file(text);
            assertThrows(UnusableInputException.class, () -> LadderSession.read(place));
        }
        assertThrows(
                UnusableInputException.class, () -> LadderSession.read(folder.resolve("none")));
    }
}
