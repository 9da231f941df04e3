package offtape.cli.command;

import java.util.Optional;
import java.util.concurrent.Callable;
import offtape.cli.capture.StopSignal;
import offtape.cli.lineup.Answer;
import offtape.cli.lineup.Cautions;
import offtape.cli.lineup.LiveLineup;
import offtape.cli.lineup.PlainLog;
import offtape.cli.lineup.Readings;
import offtape.cli.lineup.Stage;
import offtape.cli.lineup.Wording;
import offtape.cli.sound.SoundStream;
import offtape.cli.terminal.ExitCodes;
import offtape.cli.terminal.Interrupt;
import offtape.cli.terminal.LiveScreen;
import offtape.cli.terminal.Terminal;
import offtape.core.text.Sentences;
import offtape.report.result.ResultsJson;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/** Plays a tone and shows what returns. */
@Command(
        description =
                "Plays a steady tone and shows live what comes back: levels, balance, distortion,"
                        + " noise and delay, with what to turn in words. Aids for azimuth, bias and"
                        + " the level of a calibration tape are a key away. Without a terminal, and"
                        + " with --plain, it writes a line a second.",
        footer = {
            "",
            "Example: offtape lineup --programme programme",
            "Azimuth by a calibration tape: offtape lineup --aid azimuth --listen",
            "For scripts: offtape lineup --json --seconds 3 --channels left",
            "",
            "Turn loudspeakers down and take headphones off before it starts. Inside an",
            "opened machine there is mains voltage: adjusting it is work for people who know",
            "how, by the rules of the place you live in. Keep clear of moving reels.",
        })
final class LineupCommand implements Callable<Integer> {

    private static final Sentences SAID = Sentences.near(LineupCommand.class);

    @Spec private CommandSpec spec;

    @Mixin private CommonOptions common;

    @Mixin private DeviceOptions devices;

    @Mixin private LineupOptions options;

    @Option(
            names = "--plain",
            description = "No keys and no redrawing: a line a second to standard output.")
    private boolean plain;

    @Option(
            names = "--seconds",
            paramLabel = "SECONDS",
            description =
                    "End by itself after so many seconds of readings; the quiet start before them"
                            + " does not count.")
    private Double seconds;

    @Option(
            names = "--json",
            description = "Print the last readings as JSON to standard output; needs --seconds.")
    private boolean json;

    @Override
    public Integer call() {
        if (seconds != null && !(seconds > 0)) {
            throw new ParameterException(spec.commandLine(), SAID.say("lineup-seconds"));
        }
        if (json && seconds == null) {
            throw new ParameterException(spec.commandLine(), SAID.say("lineup-json"));
        }
        LineupOptions.Start start = options.start(devices.ceiling());
        Terminal terminal = common.terminal();
        terminal.message(new Cautions(Wording.on(terminal)).before(start.desk().sends()));
        StopSignal stop = new StopSignal();
        // opened first and so closed last, when sound and terminal are as they were
        try (Interrupt interrupt = Interrupt.guard();
                SoundStream stream =
                        devices.open(
                                common.layers(), start.sampleRateHz(), !options.listens(), true)) {
            interrupt.first(stop::give);
            Readings last = run(terminal, new LiveLineup(stream, stop, start.desk()));
            if (stop.isGiven()) {
                return ExitCodes.INTERRUPTED;
            }
            if (json) {
                terminal.raw(ResultsJson.write(Answer.of(last)));
            }
            return ExitCodes.DONE;
        }
    }

    private Readings run(Terminal terminal, LiveLineup lineup) {
        LineupEnd end = new LineupEnd(seconds);
        Optional<LiveScreen> screen = plain || json ? Optional.empty() : terminal.screen();
        if (screen.isEmpty()) {
            lineup.run(new LineupLog(terminal, end, json));
        } else {
            try (LiveScreen live = screen.get()) {
                lineup.run(new LineupScreen(live, end, Wording.on(terminal)));
            }
            if (end.last() != null && end.last().stage() == Stage.READING) {
                terminal.result(new PlainLog(Wording.on(terminal)).line(end.last()));
            }
        }
        return end.last();
    }
}
