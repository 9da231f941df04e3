package offtape.cli.command;

import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.Callable;
import offtape.cli.terminal.Terminal;
import offtape.core.output.OutputFolder;
import offtape.report.render.SessionFiles;
import offtape.report.result.Results;
import offtape.report.result.ResultsJson;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Measures a return. */
@Command(
        description =
                "Measures a return: a recording of what the machine gave back for the test programme,"
                        + " made here or in any workstation. Writes results.json, report.html and"
                        + " tables as CSV.",
        footer = {
            "",
            "Example: offtape measure return.wav --programme programme --out session \\",
            "           --mode reference-tape --machine-name \"Workshop two-track\" \\",
            "           --tape-speed 19.05cm/s",
            "",
            "One recording, rewound and replayed three times:",
            "  offtape measure first.wav second.wav third.wav --programme programme \\",
            "           --out session --mode two-pass",
            "",
            "Keep it, have it serviced, or let it go:",
            "  offtape measure return.wav --programme programme --out session \\",
            "           --limits din45500-4 --economics costs.json",
            "",
            "The machine on inputs 3 and 4 of eight:",
            "  offtape measure eight.flac --channels 3,4 --programme programme \\",
            "           --out session",
            "",
            "The interface alone, and a machine measured through it:",
            "  offtape measure loop.wav --mode loopback --programme programme \\",
            "           --out loop",
            "  offtape measure return.wav --mode off-tape --loopback loop \\",
            "           --programme programme --out session",
        })
final class MeasureCommand implements Callable<Integer> {

    @Mixin private CommonOptions common;

    @Mixin private SessionOptions session;

    @Mixin private ChannelOptions channels;

    @Parameters(
            arity = "1..*",
            paramLabel = "RETURN",
            description =
                    "The recording, a WAV, AIFF or FLAC file of any sample rate. Several are replays of"
                            + " one recording: wow and flutter becomes the mean of them, all else is"
                            + " read from the first.")
    private List<Path> recordings;

    @Option(
            names = "--programme",
            required = true,
            paramLabel = "DIR",
            description = "The folder with the programme that was played.")
    private Path programme;

    @Option(
            names = "--out",
            required = true,
            paramLabel = "SESSION",
            description = "Folder to write to; made if it does not exist.")
    private Path out;

    @Mixin private CaptureOptions capture;

    @Mixin private LimitOptions limits;

    @Option(names = "--json", description = "Print the results to standard output as well.")
    private boolean json;

    @Option(names = "--force", description = "Overwrite files that are in the way.")
    private boolean force;

    @Override
    public Integer call() {
        Terminal terminal = common.terminal();
        SessionRun run =
                new SessionRun(
                        terminal,
                        channels,
                        programme,
                        session,
                        capture.capture(terminal, recordings.size()),
                        limits.set(),
                        limits.economics());
        try (OutputFolder folder = OutputFolder.open(out, force, SessionFiles.names())) {
            Results results = run.measure(recordings, out, folder);
            if (json) {
                terminal.raw(ResultsJson.write(results));
            }
            return limits.code(results);
        }
    }
}
