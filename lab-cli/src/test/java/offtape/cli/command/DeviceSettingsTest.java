package offtape.cli.command;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import offtape.cli.settings.SoundSettings;
import offtape.cli.sound.ChannelPair;
import offtape.cli.sound.StreamRequest;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Devices that were named are used again, unless something else is said. */
class DeviceSettingsTest {

    private static final String EARLIER =
            " What was not named was chosen in an earlier run: name it, or add --no-settings.";

    @TempDir private Path folder;

    private CaptureBench bench;

    @BeforeEach
    void aBench() {
        bench = new CaptureBench(folder);
        bench.layer.trouble = "It is out.";
    }

    /** Remembers without a whole capture: the device is lost as soon as it is open. */
    private void remember(Object... words) {
        bench.layer.trouble = null;
        bench.layer.faults = s -> s.lostAfter = 0;
        assertEquals(4, bench.remembering(words).code());
        bench.layer.trouble = "It is out.";
    }

    private StreamRequest last() {
        return bench.layer.requests.get(bench.layer.requests.size() - 1);
    }

    @Test
    void whatWasNamedIsUsedAgain() {
        remember("--layer", "loop", "--output", "A", "--output-channels", "5,6", "--input", "B");
        assertEquals(new SoundSettings("loop", "A", "5,6", "B", null), bench.settings().read());
        Tool.Outcome outcome = bench.remembering("--input", "C");
        assertEquals(new Tool.Outcome(4, "", "offtape: It is out." + EARLIER + "\n"), outcome);
        assertEquals(new StreamRequest.End("A", ChannelPair.parse("5,6")), last().output());
        assertEquals(new StreamRequest.End("C", ChannelPair.FIRST), last().input());
        assertEquals("B", bench.settings().read().input(), "what did not open is not remembered");
    }

    @Test
    void settingsCanBeLeftAlone() {
        remember("--output", "A");
        Tool.Outcome outcome = bench.remembering("--no-settings", "--input", "B");
        assertEquals(new Tool.Outcome(4, "", "offtape: It is out.\n"), outcome);
        assertEquals(new StreamRequest.End(null, ChannelPair.FIRST), last().output());
        remember("--no-settings", "--output", "C");
        assertEquals("A", bench.settings().read().output());
    }

    @Test
    void withoutAnyNameNothingIsRemembered() {
        remember();
        assertFalse(Files.exists(bench.settings().path()));
    }

    @Test
    void channelsThatAreNoneAreAsNone() throws IOException {
        Files.createDirectories(bench.settings().path().getParent());
        Files.writeString(
                bench.settings().path(), "{\"output\": \"A\", \"outputChannels\": \"left\"}");
        assertTrue(bench.remembering().err().endsWith("It is out." + EARLIER + "\n"));
        assertEquals(new StreamRequest.End("A", ChannelPair.FIRST), last().output());
    }
}
