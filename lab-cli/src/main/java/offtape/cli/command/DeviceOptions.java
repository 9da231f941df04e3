package offtape.cli.command;

import java.util.Objects;
import offtape.cli.settings.SettingsFile;
import offtape.cli.settings.SoundSettings;
import offtape.cli.sound.ChannelPair;
import offtape.cli.sound.LevelCeiling;
import offtape.cli.sound.SoundLayers;
import offtape.cli.sound.SoundStream;
import offtape.cli.sound.SoundTroubleException;
import offtape.cli.sound.StreamRequest;
import offtape.core.text.Sentences;
import picocli.CommandLine;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** Which sound devices are used: those named, else those used last, else the system's own. */
final class DeviceOptions {

    private static final Sentences SAID = Sentences.near(DeviceOptions.class);

    private static final int LEAST_BUFFER_MS = 20;
    private static final int MOST_BUFFER_MS = 2000;

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
        checkBuffer();
        SoundSettings before = noSettings ? SoundSettings.NONE : settings().read();
        SoundSettings used = before.changedBy(named());
        StreamRequest request =
                new StreamRequest(
                        plays ? end(used.output(), used.outputChannels()) : null,
                        records ? end(used.input(), used.inputChannels()) : null,
                        sampleRateHz,
                        bufferMs / 1000.0);
        SoundStream stream = open(layers, used.layer(), request);
        if (!noSettings && !used.equals(before)) {
            settings().write(used);
        }
        return stream;
    }

    private SoundStream open(SoundLayers layers, String usedLayer, StreamRequest request) {
        try {
            return layers.named(usedLayer).open(request);
        } catch (SoundTroubleException e) {
            boolean named =
                    Objects.equals(layer, usedLayer)
                            && isNamed(output, request.output())
                            && isNamed(input, request.input());
            throw named
                    ? e
                    : new SoundTroubleException(
                            e.getMessage() + " " + SAID.say("chosen-earlier"), e);
        }
    }

    private static boolean isNamed(String device, StreamRequest.End end) {
        return end == null || Objects.equals(device, end.device());
    }

    private void checkBuffer() {
        if (bufferMs < LEAST_BUFFER_MS || bufferMs > MOST_BUFFER_MS) {
            throw new CommandLine.ParameterException(
                    command.commandLine(), SAID.say("buffer-range", bufferMs));
        }
    }

    /** What may be played at most. */
    LevelCeiling ceiling() {
        try {
            return new LevelCeiling(maxLevelDbfs);
        } catch (IllegalArgumentException e) {
            throw new CommandLine.ParameterException(command.commandLine(), e.getMessage(), e);
        }
    }

    private SettingsFile settings() {
        return ((OfftapeCommand) command.root().userObject()).settings();
    }

    private SoundSettings named() {
        return new SoundSettings(
                layer,
                output,
                Objects.toString(outputChannels, null),
                input,
                Objects.toString(inputChannels, null));
    }

    private static StreamRequest.End end(String device, String channels) {
        return new StreamRequest.End(device, pair(channels));
    }

    // settings are a file that anybody may have changed: what names no channels there is as none
    private static ChannelPair pair(String channels) {
        try {
            return channels == null ? ChannelPair.FIRST : ChannelPair.parse(channels);
        } catch (IllegalArgumentException e) {
            return ChannelPair.FIRST;
        }
    }
}
