package offtape.cli.command;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import offtape.cli.sound.DeviceSide;
import offtape.cli.sound.SoundDevice;

/** Sound devices in words. */
final class DeviceWords {

    private static final Path LINUX_DEVICES = Path.of("/dev/snd");

    private DeviceWords() {}

    /** What to do if no device was found. */
    static String none() {
        if (Files.isDirectory(LINUX_DEVICES) && !readable()) {
            return "No sound device can be used: this user may not open those in "
                    + LINUX_DEVICES
                    + ". Be in the group audio, and log in again.";
        }
        return "No sound device was found. Connect the interface and switch it on; on a computer"
                + " without sound hardware a sound server must run.";
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
    static List<String> table(List<SoundDevice> devices, boolean byLayer) {
        List<String> lines = new ArrayList<>();
        String layer = null;
        for (SoundDevice d : devices) {
            if (byLayer && !d.layer().equals(layer)) {
                layer = d.layer();
                lines.add("With --layer " + layer + ":");
            }
            lines.add(d.name());
            if (d.description() != null && !d.description().isBlank()) {
                lines.add("    " + d.description());
            }
            side(lines, "plays", d.playback());
            side(lines, "records", d.capture());
        }
        return lines;
    }

    private static void side(List<String> lines, String what, DeviceSide side) {
        if (side == null) {
            return;
        }
        lines.add(
                String.format(
                        Locale.ROOT,
                        "    %-8s %s",
                        what,
                        side.opens()
                                ? channels(side)
                                        + "; "
                                        + join(side.sampleRatesHz())
                                        + " Hz; "
                                        + join(side.bits())
                                        + " bits"
                                : side.hint()));
    }

    private static String channels(DeviceSide side) {
        return side.channels() == 1 ? "1 channel" : side.channels() + " channels";
    }

    private static String join(List<Integer> numbers) {
        return numbers.stream().map(String::valueOf).collect(Collectors.joining(", "));
    }
}
