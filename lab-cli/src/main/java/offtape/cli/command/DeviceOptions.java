package offtape.cli.command;

import java.util.Objects;
import offtape.cli.settings.SettingsFile;
import offtape.cli.settings.SoundSettings;
import offtape.cli.sound.ChannelPair;
import offtape.cli.sound.LevelCeiling;
import offtape.cli.sound.SoundLayers;
import offtape.cli.sound.SoundStream;
import offtape.cli.sound.StreamRequest;
import picocli.CommandLine;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** Which sound devices are used: those named, else those used last, else the system's own. */
final class DeviceOptions {

    @Spec(Spec.Target.MIXEE)
    private CommandSpec command;

    @Option(
            names = "--layer",
            paramLabel = "NAME",
            description =
                    "The way to the devices, by its name in \"offtape devices\" (default: the one used"
                            + " last, else java).")
    private String layer;

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

    @Option(
            names = "--max-level",
            paramLabel = "DBFS",
            description =
                    "Never play anything whose peak is above this level, -100 to 0 (default: 0).")
    private double maxLevelDbfs;

    /** Opens devices for both ways at a rate; what was named is remembered once they are open. */
    SoundStream open(SoundLayers layers, int sampleRateHz) {
        return open(layers, sampleRateHz, true, true);
    }

    /** Opens devices for one way or both. */
    SoundStream open(SoundLayers layers, int sampleRateHz, boolean plays, boolean records) {
        SoundSettings used = chosen();
        StreamRequest request =
                new StreamRequest(
                        plays ? end(used.output(), used.outputChannels()) : null,
                        records ? end(used.input(), used.inputChannels()) : null,
                        sampleRateHz,
                        Math.max(20, Math.min(2000, bufferMs)) / 1000.0);
        SoundStream stream = layers.named(used.layer()).open(request);
        if (!noSettings && !used.equals(remembered())) {
            SettingsFile.ofUser().write(used);
        }
        return stream;
    }

    /** What may be played at most. */
    LevelCeiling ceiling() {
        try {
            return new LevelCeiling(maxLevelDbfs);
        } catch (IllegalArgumentException e) {
            throw new CommandLine.ParameterException(command.commandLine(), e.getMessage(), e);
        }
    }

    private SoundSettings remembered() {
        return noSettings ? SoundSettings.NONE : SettingsFile.ofUser().read();
    }

    // channels belong to a device: those of another one are not taken over
    private SoundSettings chosen() {
        SoundSettings before = remembered();
        boolean sameLayer = layer == null || layer.equals(before.layer());
        boolean sameOutput = sameLayer && (output == null || output.equals(before.output()));
        boolean sameInput = sameLayer && (input == null || input.equals(before.input()));
        return new SoundSettings(
                layer == null ? before.layer() : layer,
                output == null && sameLayer ? before.output() : output,
                outputChannels != null
                        ? outputChannels.toString()
                        : sameOutput ? before.outputChannels() : null,
                input == null && sameLayer ? before.input() : input,
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
