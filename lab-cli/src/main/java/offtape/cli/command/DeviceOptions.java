package offtape.cli.command;

import java.util.Objects;
import offtape.cli.settings.SettingsFile;
import offtape.cli.settings.SoundSettings;
import offtape.cli.sound.ChannelPair;
import offtape.cli.sound.JavaSoundLayer;
import offtape.cli.sound.SoundLayer;
import offtape.cli.sound.SoundStream;
import offtape.cli.sound.StreamRequest;
import picocli.CommandLine.Option;

/** Which sound devices are used: those named, else those used last, else the system's own. */
final class DeviceOptions {

    @Option(
            names = "--output",
            paramLabel = "DEVICE",
            description =
                    "Device that plays, by its name in \"offtape devices\" (default: the one used last,"
                            + " else the system's).")
    private String output;

    @Option(
            names = "--output-channels",
            paramLabel = "NUMBERS",
            converter = ChannelPairConverter.class,
            description = "Its channels, counted from 1, left first, such as 5,6 (default: 1,2).")
    private ChannelPair outputChannels;

    @Option(
            names = "--input",
            paramLabel = "DEVICE",
            description = "Device that records (default: the one used last, else the system's).")
    private String input;

    @Option(
            names = "--input-channels",
            paramLabel = "NUMBERS",
            converter = ChannelPairConverter.class,
            description = "Its channels (default: 1,2).")
    private ChannelPair inputChannels;

    @Option(
            names = "--buffer",
            paramLabel = "MILLISECONDS",
            description =
                    "How much sound the system holds each way, 20 to 2000 (default: 300). More helps"
                            + " on a busy computer.")
    private int bufferMs = (int) Math.round(1000 * StreamRequest.USUAL_BUFFER_S);

    @Option(
            names = "--no-settings",
            description = "Neither use nor remember the devices of earlier runs.")
    private boolean noSettings;

    /** Opens devices at a rate; what was named is remembered once they are open. */
    SoundStream open(int sampleRateHz, boolean plays, boolean records) {
        SoundLayer layer = new JavaSoundLayer();
        SoundSettings used = chosen(layer);
        StreamRequest request =
                new StreamRequest(
                        plays ? end(used.output(), used.outputChannels()) : null,
                        records ? end(used.input(), used.inputChannels()) : null,
                        sampleRateHz,
                        Math.max(20, Math.min(2000, bufferMs)) / 1000.0);
        SoundStream stream = layer.open(request);
        if (!noSettings && !used.equals(remembered())) {
            SettingsFile.ofUser().write(used);
        }
        return stream;
    }

    /** How many channels are played. */
    int outputs() {
        return channels(chosen(new JavaSoundLayer()).outputChannels());
    }

    /** How many channels are recorded. */
    int inputs() {
        return channels(chosen(new JavaSoundLayer()).inputChannels());
    }

    private static int channels(String text) {
        return pair(text).numbers().size();
    }

    private SoundSettings remembered() {
        return noSettings ? SoundSettings.NONE : SettingsFile.ofUser().read();
    }

    // channels belong to a device: those of another one are not taken over
    private SoundSettings chosen(SoundLayer layer) {
        SoundSettings before = remembered();
        boolean sameOutput = output == null || output.equals(before.output());
        boolean sameInput = input == null || input.equals(before.input());
        return new SoundSettings(
                layer.name(),
                output == null ? before.output() : output,
                outputChannels != null
                        ? outputChannels.toString()
                        : sameOutput ? before.outputChannels() : null,
                input == null ? before.input() : input,
                inputChannels != null
                        ? inputChannels.toString()
                        : sameInput ? before.inputChannels() : null);
    }

    private static StreamRequest.End end(String device, String channels) {
        return new StreamRequest.End(device, pair(channels));
    }

    private static ChannelPair pair(String channels) {
        return ChannelPair.parse(
                Objects.requireNonNullElse(channels, ChannelPair.FIRST.toString()));
    }
}
