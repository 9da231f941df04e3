package offtape.cli.command;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import offtape.cli.batch.BatchList;
import offtape.cli.batch.BatchRun;
import offtape.cli.batch.ListedReturns;
import offtape.cli.terminal.Terminal;
import offtape.core.output.OutputFolder;
import offtape.core.text.Sentences;
import offtape.report.batch.BatchSummary;
import offtape.report.render.BatchCsv;
import offtape.report.render.SessionFiles;
import offtape.report.result.Results;
import offtape.report.result.ResultsJson;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

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
            "",
            "Every return that a list names, each into a session of its own:",
            "  offtape measure --batch archive.csv --programme programme --out archive",
            "A return that cannot be measured stops no other; exit code 3 then tells of it.",
        })
final class MeasureCommand implements Callable<Integer> {

    private static final Sentences SAID = Sentences.near(MeasureCommand.class);

    @Spec private CommandSpec spec;

    @Mixin private CommonOptions common;

    @Mixin private SessionOptions session;

    @Mixin private ChannelOptions channels;

    @Parameters(
            arity = "0..*",
            paramLabel = "RETURN",
            description =
                    "The recording, a WAV, AIFF or FLAC file of any sample rate. Several are replays of"
                            + " one recording: wow and flutter becomes the mean of them, all else is"
                            + " read from the first.")
    private List<Path> recordings = List.of();

    @Option(
            names = "--batch",
            paramLabel = "LIST",
            description =
                    "Measure every return of a list, several at once: a text file with one return a"
                            + " line, or a CSV table with the columns file and, as far as they"
                            + " differ, name, programme, mode, machine-name, tape, tape-speed,"
                            + " channels, note. Paths count from the folder of the list. A return that"
                            + " is listed again is measured once. Each return"
                            + " gets a session in a folder of its name below --out, where summary.csv"
                            + " tells of all. Sessions whose return, programme and options are as"
                            + " they were are left alone. With --json the summary is printed.")
    private Path batch;

    @Option(
            names = "--programme",
            paramLabel = "DIR",
            description = "The folder with the programme that was played.")
    private Path programme;

    @Option(
            names = "--out",
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
        checkGiven();
        return batch == null ? single(terminal) : many(terminal);
    }

    private int single(Terminal terminal) {
        SessionRun run =
                new SessionRun(
                        terminal,
                        channels,
                        programme,
                        session,
                        capture.capture(terminal, recordings.size()),
                        limits.set(),
                        limits.economics(),
                        common.language());
        try (OutputFolder folder = OutputFolder.open(out, force, SessionFiles.names())) {
            Results results = run.measure(recordings, out, folder);
            if (json) {
                terminal.raw(ResultsJson.write(results));
            }
            return limits.code(results);
        }
    }

    private int many(Terminal terminal) {
        MeasureBatch job =
                new MeasureBatch(
                        programme,
                        channels.choice(),
                        session.said(),
                        capture.capture(terminal, 1),
                        capture.loopbackSha256(),
                        new Judgement(limits.set(), limits.economics()),
                        common.language(),
                        force);
        ListedReturns listed = BatchList.read(batch, programme);
        listed.notes().forEach(n -> terminal.message(terminal.told(n)));
        try (OutputFolder folder = OutputFolder.open(out, force, BatchCsv.NAME)) {
            BatchRun run =
                    new BatchRun(listed.entries(), job, folder, terminal, common.isVerbose());
            BatchSummary summary = run.run(Runtime.getRuntime().availableProcessors());
            BatchWords words = new BatchWords(terminal);
            if (json) {
                terminal.raw(ResultsJson.write(summary));
            } else {
                words.table(summary).forEach(terminal::result);
            }
            terminal.message(words.counts(summary));
            terminal.message(Speech.of(terminal).say("batch.summary", out.resolve(BatchCsv.NAME)));
            return Math.max(run.code(), limits.code(summary.isLimitFailed()));
        }
    }

    /** What has to be given depends on whether there is a list. */
    private void checkGiven() {
        if (batch != null && !recordings.isEmpty()) {
            throw new ParameterException(
                    spec.commandLine(), SAID.say("batch-or-return", recordings.get(0)));
        }
        List<String> missing = new ArrayList<>();
        if (programme == null && batch == null) {
            missing.add("'--programme=DIR'");
        }
        if (out == null) {
            missing.add("'--out=SESSION'");
        }
        int options = missing.size();
        if (recordings.isEmpty() && batch == null) {
            missing.add("'RETURN'");
        }
        if (!missing.isEmpty()) {
            String what = options == 0 ? "parameter" : "option";
            String several = missing.size() > 1 ? "s" : "";
            String and = options > 0 && missing.size() > options ? " and parameters" : "";
            throw new ParameterException(
                    spec.commandLine(),
                    "Missing required " + what + several + and + ": " + String.join(", ", missing));
        }
    }
}
