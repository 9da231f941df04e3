package offtape.cli.command;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.util.List;
import offtape.cli.sound.DeviceSide;
import offtape.cli.sound.SoundDevice;
import offtape.cli.sound.SoundLayers;
import org.junit.jupiter.api.Test;

/** The list of devices, for people and for scripts. */
class DevicesCommandTest {

    private static final DeviceSide STEREO =
            new DeviceSide(2, List.of(44_100, 48_000), List.of(16, 24), null);

    private static final DeviceSide MONO = new DeviceSide(1, List.of(48_000), List.of(16), null);

    private static final DeviceSide BUSY =
            new DeviceSide(0, List.of(), List.of(), "busy: another program has it");

    private final MadeUpLayer first =
            new MadeUpLayer(
                    "first",
                    new SoundDevice("first", "Desk [1,0]", "Desk, big", STEREO, BUSY),
                    new SoundDevice("first", "Microphone", "", null, MONO));

    private final MadeUpLayer second =
            new MadeUpLayer("second", new SoundDevice("second", "Desk", null, STEREO, null));

    private static Tool.Outcome devices(List<MadeUpLayer> layers, Object... more) {
        return Tool.run(new SoundLayers(List.copyOf(layers)), Lab.line(Lab.line("devices"), more));
    }

    @Test
    void eachDeviceIsABlockOfLines() {
        assertEquals(
                new Tool.Outcome(
                        0,
                        """
                        Desk [1,0]
                            Desk, big
                            plays    2 channels; 44100, 48000 Hz; 16, 24 bits
                            records  busy: another program has it
                        Microphone
                            records  1 channel; 48000 Hz; 16 bits
                        """,
                        ""),
                devices(List.of(first)));
    }

    @Test
    void ofSeveralLayersEachIsNamed() {
        List<String> lines = devices(List.of(first, second)).out().lines().toList();
        assertEquals("With --layer first:", lines.get(0));
        assertEquals(
                List.of("With --layer second:", "Desk"), lines.subList(7, 9), lines.toString());
        assertEquals(2, lines.stream().filter(l -> l.startsWith("With ")).count());
    }

    @Test
    void scriptsReadTheSame() throws IOException {
        JsonNode answer =
                new ObjectMapper().readTree(devices(List.of(first, second), "--json").out());
        assertEquals(3, answer.get("devices").size());
        JsonNode desk = answer.at("/devices/0");
        assertEquals("first", desk.get("layer").textValue());
        assertEquals("Desk [1,0]", desk.get("name").textValue());
        assertEquals(2, desk.at("/playback/channels").intValue());
        assertEquals(44_100, desk.at("/playback/sampleRatesHz/0").intValue());
        assertEquals(24, desk.at("/playback/bits/1").intValue());
        assertEquals("busy: another program has it", desk.at("/capture/hint").textValue());
        assertTrue(answer.at("/devices/1/playback").isNull());
        assertTrue(answer.get("hint").isNull());
    }

    @Test
    void whereThereAreNoneTheUserIsToldWhatToDo() throws IOException {
        Tool.Outcome told = devices(List.of(new MadeUpLayer("empty")));
        assertEquals(0, told.code());
        assertEquals("", told.out());
        assertTrue(told.err().startsWith("No sound device "), told.err());
        Tool.Outcome json = devices(List.of(new MadeUpLayer("empty")), "--json");
        assertEquals("", json.err());
        JsonNode answer = new ObjectMapper().readTree(json.out());
        assertEquals(0, answer.get("devices").size());
        assertEquals(told.err(), answer.get("hint").textValue() + "\n");
    }
}
