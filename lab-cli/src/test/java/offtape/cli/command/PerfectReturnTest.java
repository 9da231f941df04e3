package offtape.cli.command;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import java.nio.file.Path;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The programme measured as its own return: a machine that changes nothing. */
class PerfectReturnTest {

    @TempDir private static Path folder;

    private static JsonNode results;

    @BeforeAll
    static void measureTheProgrammeItself() {
        Path brief = folder.resolve("brief");
        assertEquals(0, Tool.run("prepare", "--short", "--out", brief).code());
        results = new Lab(folder).results(brief.resolve("programme.wav"), brief);
    }

    private static double value(String place) {
        JsonNode value = results.at(place).path("value");
        assertTrue(value.isNumber(), place + " " + results.at(place));
        return value.asDouble();
    }

    @Test
    void runsAtItsSpeedWithoutWowAndFlutter() {
        assertEquals(0, value("/speed/deviation"), 0.0005);
        assertEquals(0, value("/speed/weightedPeak"), 0.002);
        assertEquals(0, value("/speed/weightedRms"), 0.002);
        assertEquals(0, value("/speed/wowRms"), 0.002);
        assertEquals(0, results.at("/speed/components").size());
    }

    @Test
    void beginsAtOnceAndUpright() {
        assertEquals(0, value("/timing/delay"), 0.005);
        assertEquals("normal", results.at("/timing/polarity").asText());
    }

    @Test
    void isFlat() {
        assertEquals(4, results.get("response").size());
        for (JsonNode response : results.get("response")) {
            int within = 0;
            for (int i = 0; i < response.get("frequencyHz").size(); i++) {
                double hz = response.get("frequencyHz").get(i).asDouble();
                if (hz >= 40 && hz <= 16_000) {
                    assertEquals(
                            0, response.get("magnitudeDb").get(i).asDouble(), 0.01, hz + " Hz");
                    within++;
                }
            }
            // twelfths of an octave over lb(16000/40) = 8.6 octaves
            assertTrue(within > 100, within + " points");
            assertUnknown(response.get("upperEdge"));
        }
    }

    @Test
    void doesNotDistort() {
        assertEquals(4, results.get("distortion").size());
        for (JsonNode ladder : results.get("distortion")) {
            for (JsonNode step : ladder.get("steps")) {
                assertEquals(
                        step.get("recordLevelDb").asDouble(),
                        step.get("replayLevelDb").asDouble(),
                        0.001);
                assertTrue(
                        step.get("limitedByNoise").asBoolean()
                                || step.get("k3Percent").asDouble() < 0.001,
                        step.toString());
            }
            assertUnknown(ladder.get("levelAtK3ThreePercent"));
        }
    }

    @Test
    void hasNoNoiseThatCouldBeStated() {
        for (JsonNode noise : results.get("noise")) {
            assertUnknown(noise.get("aWeighted"));
            assertEquals(0, noise.get("hum").size());
        }
    }

    @Test
    void hasTwoEqualChannels() {
        assertEquals(0, value("/channels/balance"), 1e-6);
        assertEquals(0, value("/channels/interchannelDelay"), 0.05);
        assertUnknown(results.at("/channels/crosstalkLeftToRight"));
        assertUnknown(results.at("/channels/crosstalkRightToLeft"));
        assertEquals(0, results.get("dropouts").size());
    }

    @Test
    void givesNoReasonToWarn() {
        for (JsonNode note : results.get("health")) {
            assertEquals("note", note.get("severity").asText(), note.toString());
        }
    }

    private static void assertUnknown(JsonNode headline) {
        assertTrue(headline.get("value").isNull(), headline.toString());
        assertTrue(headline.get("reason").asText().endsWith("."), headline.toString());
    }
}
