package offtape.cli.command;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.stream.Stream;
import offtape.cli.realign.RealignPair;
import offtape.cli.realign.RealignPairs;
import offtape.cli.realign.RealignReport;
import offtape.cli.realign.RealignRun;
import offtape.cli.realign.RealignWords;
import offtape.cli.realign.SessionTiming;
import offtape.cli.terminal.ExitCodes;
import offtape.cli.terminal.Terminal;
import offtape.core.audio.WavEncoding;
import offtape.core.fault.UnusableInputException;
import offtape.core.output.OutputFile;
import offtape.core.output.OutputFolder;
import offtape.core.text.Phrases;
import offtape.core.text.Sentences;
import offtape.report.result.ResultsJson;
import offtape.report.result.ResultsReader;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Puts returned tracks back in time with their originals. */
@Command(
        description =
                "Puts a returned track back in time with its original, by the sound alone: delay to a"
                        + " fraction of a sample, speed, polarity and level. The file is as long as the"
                        + " original. With two folders every pair of one name is done.",
        footer = {
            "",
            "Example: offtape realign drums.wav drums-tape.wav --out drums-back.wav",
            "All of a folder: offtape realign stems returns --out back",
        })
final class RealignCommand implements Callable<Integer> {

    private static final Sentences SAID = Sentences.near(RealignCommand.class);

    @Spec private CommandSpec spec;

    @Mixin private CommonOptions common;

    @Option(
            names = "--session",
            paramLabel = "SESSION",
            description =
                    "Folder of the session in which the machine was measured. Its delay decides where"
                            + " music repeats itself, and is compared with what is found.")
    private Path session;

    @Parameters(
            index = "0",
            paramLabel = "DRY",
            description = "The original: a WAV, AIFF or FLAC file, or a folder of them.")
    private Path dry;

    @Parameters(
            index = "1",
            paramLabel = "WET",
            description =
                    "Its return, or a folder of returns: named as the originals, or with a suffix such"
                            + " as -tape.")
    private Path wet;

    @Option(
            names = "--out",
            required = true,
            paramLabel = "FILE",
            description = "The file to write, or the folder if DRY and WET are folders.")
    private Path out;

    @Option(
            names = "--unwarp",
            description = "Take out wow and other slow errors of time by following the original.")
    private boolean isUnwarped;

    @Option(
            names = "--keep-level",
            description =
                    "Leave the level as it came back; by default it is set to the original's.")
    private boolean isLevelKept;

    @Option(
            names = "--float",
            description =
                    "Write 32-bit float in place of 24 bits. What 24 bits cannot hold is written so in"
                            + " any case.")
    private boolean isFloat;

    @Option(names = "--json", description = "Print the report as JSON to standard output.")
    private boolean json;

    @Option(names = "--force", description = "Overwrite files that are in the way.")
    private boolean force;

    @Override
    public Integer call() {
        Terminal terminal = common.terminal();
        if (Files.isDirectory(dry) != Files.isDirectory(wet)) {
            throw new ParameterException(spec.commandLine(), SAID.say("dry-wet"));
        }
        RealignRun run =
                new RealignRun(
                        isUnwarped,
                        !isLevelKept,
                        isFloat ? WavEncoding.FLOAT_32 : WavEncoding.PCM_24,
                        session == null ? null : SessionTiming.of(ResultsReader.read(session)));
        return Files.isDirectory(dry) ? folder(terminal, run) : file(terminal, run);
    }

    private int file(Terminal terminal, RealignRun run) {
        refuseInput(dry);
        refuseInput(wet);
        String name = String.valueOf(out.getFileName());
        String report = RealignPair.report(name);
        try (OutputFile file = OutputFile.open(out, force, report)) {
            RealignReport done = run.run(new RealignPair(dry, wet, name), file.path());
            write(file.companion(report), done);
            file.commit();
            tell(terminal, done);
            if (json) {
                terminal.raw(ResultsJson.write(done));
            }
        }
        return ExitCodes.DONE;
    }

    private void refuseInput(Path input) {
        try {
            if (Files.exists(out) && Files.exists(input) && Files.isSameFile(out, input)) {
                throw new ParameterException(spec.commandLine(), SAID.say("out-is-input", out));
            }
        } catch (IOException e) {
            throw new UnusableInputException(input + " cannot be read.", e);
        }
    }

    private static void write(Path place, RealignReport report) {
        try {
            Files.writeString(place, ResultsJson.write(report));
        } catch (IOException e) {
            throw new UnusableInputException(SAID.say("report-not-written", place), e);
        }
    }

    private static void tell(Terminal terminal, RealignReport done) {
        RealignWords.on(terminal).lines(done).forEach(terminal::message);
    }

    private int folder(Terminal terminal, RealignRun run) {
        refuseInput(dry);
        refuseInput(wet);
        RealignPairs pairs = RealignPairs.of(dry, wet);
        String[] names =
                pairs.pairs().stream()
                        .flatMap(p -> Stream.of(p.output(), RealignPair.report(p.output())))
                        .toArray(String[]::new);
        List<RealignReport> done = new ArrayList<>();
        List<String> failed = new ArrayList<>(pairs.alone());
        try (OutputFolder folder = OutputFolder.open(out, force, names)) {
            for (RealignPair pair : pairs.pairs()) {
                try {
                    RealignReport report = run.run(pair, folder.path(pair.output()));
                    write(folder.path(RealignPair.report(pair.output())), report);
                    folder.publish();
                    tell(terminal, report);
                    done.add(report);
                } catch (UnusableInputException e) {
                    failed.add(pair.original().getFileName() + ": " + e.getMessage());
                }
            }
        }
        if (json) {
            terminal.raw(ResultsJson.write(new Batch(done, failed)));
        }
        Phrases words = terminal.phrases(RealignWords.class);
        terminal.message(words.say("realign.done", done.size(), done.size() + failed.size(), out));
        failed.forEach(f -> terminal.error(words.say("realign.not-done", terminal.told(f))));
        return failed.isEmpty() ? ExitCodes.DONE : ExitCodes.UNUSABLE_INPUT;
    }

    /** The answer for scripts where folders were given. */
    record Batch(List<RealignReport> done, List<String> notDone) {}
}
