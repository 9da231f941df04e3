package offtape.cli.command;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import offtape.cli.sound.DeviceSide;
import offtape.cli.sound.SoundDevice;
import offtape.cli.terminal.Terminal;
import offtape.core.text.Sentences;

/** Sound devices in words. */
final class DeviceWords {

    private static final Sentences SAID = Sentences.near(DeviceWords.class);
    private static final String INDENT = "    ";
    private static final Path LINUX_DEVICES = Path.of("/dev/snd");

    private final Speech speech;

    /** The words spoken on a terminal. */
    DeviceWords(Terminal terminal) {
        this.speech = Speech.of(terminal);
    }

    /** What to do if no device was found. */
    static String none() {
        if (Files.isDirectory(LINUX_DEVICES) && !readable()) {
            return SAID.say("devices-forbidden", LINUX_DEVICES);
        }
        return SAID.say("no-devices");
    }

    private static boolean readable() {
        try (Stream<Path> files = Files.list(LINUX_DEVICES)) {
            return files.filter(f -> !Files.isDirectory(f)).anyMatch(Files::isWritable);
        } catch (IOException e) {
            return false;
        }
    }

    /**
     * One block of lines a device.
     *
     * @param byLayer whether there are several layers, whose names have to be told then
     */
    List<String> table(List<SoundDevice> devices, boolean byLayer) {
        List<String> lines = new ArrayList<>();
        String layer = null;
        for (SoundDevice d : devices) {
            if (byLayer && !d.layer().equals(layer)) {
                layer = d.layer();
                lines.add(speech.say("devices.layer", layer));
            }
            lines.add(d.name());
            if (d.description() != null && !d.description().isBlank()) {
                lines.add(INDENT + d.description());
            }
            side(lines, "devices.plays", d.playback());
            side(lines, "devices.records", d.capture());
        }
        return lines;
    }

    private void side(List<String> lines, String what, DeviceSide side) {
        if (side == null) {
            return;
        }
        String way =
                side.opens()
                        ? speech.say(
                                side.channels() == 1 ? "devices.mono" : "devices.channels",
                                side.channels(),
                                join(side.sampleRatesHz()),
                                join(side.bits()))
                        : speech.told(side.hint());
        lines.add(INDENT + speech.say(what, way));
    }

    private static String join(List<Integer> numbers) {
        return numbers.stream().map(String::valueOf).collect(Collectors.joining(", "));
    }
}
