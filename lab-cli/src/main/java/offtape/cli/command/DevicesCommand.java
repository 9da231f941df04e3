package offtape.cli.command;

import java.util.List;
import java.util.concurrent.Callable;
import offtape.cli.sound.SoundDevice;
import offtape.cli.sound.SoundLayer;
import offtape.cli.terminal.ExitCodes;
import offtape.cli.terminal.Terminal;
import offtape.report.result.ResultsJson;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** Lists the sound devices. */
@Command(
        description =
                "Lists the sound devices of this computer with the channels, sample rates and widths"
                        + " of samples with which they really open.",
        footer = {"", "Example: offtape devices", "For scripts: offtape devices --json"})
final class DevicesCommand implements Callable<Integer> {

    @Mixin private CommonOptions common;

    @Option(names = "--json", description = "Print the list as JSON to standard output.")
    private boolean json;

    /**
     * The answer for scripts.
     *
     * @param devices as found
     * @param hint what to do if there are none, or null
     */
    record Answer(List<SoundDevice> devices, String hint) {}

    @Override
    public Integer call() {
        Terminal terminal = common.terminal();
        List<SoundLayer> layers = common.layers().all();
        List<SoundDevice> devices = layers.stream().flatMap(l -> l.devices().stream()).toList();
        String hint = devices.isEmpty() ? DeviceWords.none() : null;
        if (json) {
            terminal.raw(ResultsJson.write(new Answer(devices, hint)));
        } else if (devices.isEmpty()) {
            terminal.message(terminal.told(hint));
        } else {
            new DeviceWords(terminal).table(devices, layers.size() > 1).forEach(terminal::result);
        }
        return ExitCodes.DONE;
    }
}
