package offtape.cli.command;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Which channels of a recording are measured. */
class ChannelsOptionTest {

    @TempDir private static Path folder;

    private static Lab lab;
    private static JsonNode stereo;
    private static JsonNode mono;
    private static Path eight;

    @BeforeAll
    static void aWorkshop() {
        lab = new Lab(folder);
        double[][] machine = Mini.sound();
        Arrays.setAll(machine[1], i -> 0.5 * machine[1][i]);
        stereo = measured(lab.wav("stereo.wav", machine));
        mono = measured(lab.wav("mono.wav", machine[0]));
        double[] other = Lab.noise(9, 0.1, 22.3);
        eight =
                lab.file(
                        "eight.flac",
                        Flac.of(
                                Mini.RATE,
                                other,
                                other,
                                machine[0],
                                machine[1],
                                other,
                                other,
                                other,
                                other));
    }

    private static JsonNode measured(Path recording, Object... more) {
        Object[] line =
                Lab.line(
                        Lab.line(
                                lab.measure(recording),
                                "--mode",
                                "reference-tape",
                                "--json",
                                "--force",
                                "--quiet"),
                        more);
        Tool.Outcome outcome = Tool.run(line);
        assertEquals(0, outcome.code(), outcome.err());
        try {
            return new ObjectMapper().readTree(outcome.out());
        } catch (IOException e) {
            throw new IllegalStateException(outcome.out(), e);
        }
    }

    private static JsonNode figures(JsonNode results) {
        return ((ObjectNode) results.deepCopy()).without(List.of("session", "health"));
    }

    private static String message(JsonNode results, String code) {
        for (JsonNode note : results.get("health")) {
            if (note.get("code").asText().equals(code)) {
                return note.get("message").asText();
            }
        }
        return "no note " + code + " in " + results.get("health");
    }

    @Test
    void theThirdAndFourthOfEight() {
        JsonNode chosen = measured(eight, "--channels", "3,4");
        assertEquals(figures(stereo), figures(chosen));
        assertEquals(
                "Channels 3 and 4 of 8 were measured, reported as left and right.",
                message(chosen, "chosen-channels"));
        assertFalse(chosen.get("health").toString().contains("more-channels"));
    }

    /**
     * The right channel is 20·lg 2 = 6.0206 dB lower; named first, it is the louder side's left.
     */
    @Test
    void theOrderSaysWhichIsLeft() {
        JsonNode turned = measured(eight, "--channels", "4,3");
        assertEquals(6.0206, turned.at("/channels/balance/value").asDouble(), 0.001);
    }

    @Test
    void oneOfEightIsMono() {
        JsonNode chosen = measured(eight, "--channels", "3");
        assertEquals(figures(mono), figures(chosen));
        assertEquals(
                "Channel 3 of 8 was measured, reported as left.",
                message(chosen, "chosen-channels"));
    }

    @Test
    void speedReadsTheChosenChannel() {
        Path tones =
                lab.wav(
                        "tones.wav",
                        Lab.noise(1, 0.1, 8),
                        Lab.noise(2, 0.1, 8),
                        Lab.tone(3181.5, 0.1, 8));
        Tool.Outcome chosen = Tool.run("speed", tones, "--channels", "3");
        assertTrue(chosen.out().contains("Speed deviation         +1.000 % ± 0.005"), chosen.out());
        assertEquals("", chosen.err());
        Tool.Outcome unsaid = Tool.run("speed", tones);
        assertEquals(3, unsaid.code());
        String first = unsaid.err().lines().findFirst().orElseThrow();
        assertTrue(first.contains("tones.wav has 3 channels; the first two are measured."), first);
    }

    /** Everything that compares two channels is unknown, with the reason. */
    @Test
    void monoHasNoFiguresOfTwoChannels() {
        JsonNode channels = mono.get("channels");
        int figures = 0;
        for (JsonNode figure : channels) {
            if (!figure.isObject()) {
                assertEquals(0, figure.size(), "no curve compares one channel");
                continue;
            }
            figures++;
            assertTrue(figure.get("value").isNull(), channels.toString());
            assertEquals("The recording has one channel only.", figure.get("reason").asText());
        }
        assertTrue(figures >= 6, figures + " figures");
        for (String part : List.of("response", "distortion", "noise")) {
            assertFalse(mono.get(part).isEmpty(), part);
            for (JsonNode figure : mono.get(part)) {
                assertEquals("left", figure.get("channel").asText(), part);
            }
        }
        assertTrue(mono.at("/speed/weightedPeak/value").isNumber());
    }

    @Test
    void aMonoRecordingExportedAsStereoIsRecognised() {
        double[] left = Mini.sound()[0];
        JsonNode same = measured(lab.wav("same.wav", left, left));
        assertTrue(
                message(same, "identical-channels")
                        .startsWith("Both channels hold the same samples"),
                same.get("health").toString());
        double[] almost = left.clone();
        // one step of 24 bits in one sample near the end
        almost[1_000_000] += 0x1p-23;
        JsonNode differs = measured(lab.wav("almost.wav", left, almost));
        assertFalse(differs.get("health").toString().contains("identical-channels"));
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "0 | Invalid value for option '--channels': \"0\" does not name channels; write one"
                        + " or two numbers counted from 1, such as 3,4 or 2.",
                "a | Invalid value for option '--channels': \"a\" does not name channels; write one"
                        + " or two numbers counted from 1, such as 3,4 or 2.",
                "3,3 | Invalid value for option '--channels': channel 3 cannot be left and right at"
                        + " once.",
                "1,9 | eight.flac has 8 channels; there is no channel 9."
            })
    void wrongNumbersAreWrongUsage(String channels, String said) {
        String see = " See \"offtape %s --help\".";
        lab.check(
                new Lab.Case(
                        "measure " + channels,
                        l -> Lab.line(l.measure(eight), "--channels", channels),
                        2,
                        said + String.format(see, "measure")));
        lab.check(
                new Lab.Case(
                        "speed " + channels,
                        l -> Lab.line("speed", eight, "--channels", channels),
                        2,
                        said + String.format(see, "speed")));
    }
}
