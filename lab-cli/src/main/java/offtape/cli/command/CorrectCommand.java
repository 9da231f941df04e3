package offtape.cli.command;

import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.Callable;
import offtape.cli.terminal.ExitCodes;
import offtape.cli.terminal.Terminal;
import offtape.core.audio.AudioFile;
import offtape.core.audio.AudioFiles;
import offtape.core.fault.RefusedOutputException;
import offtape.core.fault.UnusableInputException;
import offtape.core.machine.spec.MachineSpec;
import offtape.core.output.OutputFolder;
import offtape.core.programme.Programme;
import offtape.core.programme.ProgrammeFolder;
import offtape.core.text.Sentences;
import offtape.core.transport.CaptureMode;
import offtape.report.apply.correct.Correction;
import offtape.report.apply.correct.CorrectionWish;
import offtape.report.apply.correct.Corrector;
import offtape.report.render.CorrectionFiles;
import offtape.report.result.Results;
import offtape.report.result.ResultsJson;
import offtape.report.result.ResultsReader;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** What to do before recording on a machine. */
@Command(
        description =
                "From a session to what to do before recording on its machine: a filter and equaliser"
                        + " bands that make the return flat or follow a curve, what the same costs in"
                        + " hiss after the tape, how much of boosted highs the tape takes, and how hot"
                        + " to record.",
        footer = {
            "",
            "Example: offtape correct session --rate 44100,48000 --out correction",
            "The filter then goes to the machine by",
            "  offtape transfer --session session --out taped drums.wav \\",
            "           --pre-emphasis correction/pre-emphasis-48000.wav",
            "",
            "A target curve, and a song held against the tape's headroom:",
            "  offtape correct session --target wanted.csv --music song.wav \\",
            "           --out correction",
            "",
            "How hot to record at another tape speed as well:",
            "  offtape correct session --also slow --k3 2%% --out correction",
        })
final class CorrectCommand implements Callable<Integer> {

    private static final Sentences SAID = Sentences.near(CorrectCommand.class);

    @Spec private CommandSpec spec;

    @Mixin private CommonOptions common;

    @Mixin private FilterOptions filter;

    @Parameters(paramLabel = "SESSION", description = "The folder that measure wrote.")
    private Path session;

    @Option(
            names = "--out",
            required = true,
            paramLabel = "DIR",
            description =
                    "Folder for correction.html, correction.json, settings.txt, the filters and tables.")
    private Path out;

    @Option(
            names = "--k3",
            paramLabel = "PERCENT",
            converter = K3Converter.class,
            description =
                    "Tell the record level for this third harmonic besides 0.5, 1 and 3 %%. Can be"
                            + " given again.")
    private List<Double> k3 = List.of();

    @Option(
            names = "--also",
            paramLabel = "SESSION",
            description =
                    "Another session of the machine, at another tape speed or on another tape, whose"
                            + " record levels are told too. Can be given again.")
    private List<Path> also = List.of();

    @Option(
            names = "--music",
            paramLabel = "FILE",
            description =
                    "A programme to hold against the tape's headroom: which bands the boost drives too"
                            + " far.")
    private Path music;

    @Option(
            names = "--verify",
            paramLabel = "SPEC.json",
            description =
                    "Try the correction on this simulated machine; goes with --programme. The session"
                            + " should be of the same machine.")
    private Path machine;

    @Option(
            names = "--programme",
            paramLabel = "DIR",
            description = "The programme that --verify passes through the machine.")
    private Path programme;

    @Option(names = "--json", description = "Print the figures as JSON to standard output as well.")
    private boolean json;

    @Option(names = "--force", description = "Overwrite files that are in the way.")
    private boolean force;

    @Override
    public Integer call() {
        if ((machine == null) != (programme == null)) {
            throw new ParameterException(spec.commandLine(), SAID.say("verify-programme"));
        }
        Terminal terminal = common.terminal();
        CorrectionWish wish = filter.wish(k3);
        Corrector corrector = new Corrector(ResultsReader.read(session), session.toString(), wish);
        List<Results> others = also.stream().map(CorrectCommand::other).toList();
        terminal.progress(1, steps(), speech(terminal).say("correct.designing"));
        Correction designed = corrector.correction(others);
        String[] names = CorrectionFiles.names(designed);
        requireOwn(names);
        Correction correction;
        try (OutputFolder folder = OutputFolder.open(out, force, names)) {
            correction = checked(terminal, corrector, designed);
            CorrectionFiles.write(correction, folder, common.language());
            folder.commit();
        }
        if (json) {
            terminal.raw(ResultsJson.write(correction));
        }
        CorrectWords words = new CorrectWords(terminal);
        words.lines(correction).forEach(terminal::message);
        words.next(correction, out).forEach(terminal::message);
        return ExitCodes.DONE;
    }

    private static Speech speech(Terminal terminal) {
        return Speech.of(terminal);
    }

    private static Results other(Path folder) {
        Results results = ResultsReader.read(folder);
        if (CaptureMode.LOOPBACK.key().equals(results.session().mode())) {
            throw new UnusableInputException(SAID.say("also-loopback", folder));
        }
        return results;
    }

    private int steps() {
        return 1 + (music == null ? 0 : 1) + (machine == null ? 0 : 1);
    }

    /** Held against a programme and tried on a machine, as far as that is asked for. */
    private Correction checked(Terminal terminal, Corrector corrector, Correction designed) {
        Correction correction = designed;
        if (music != null) {
            terminal.progress(
                    2, steps(), speech(terminal).say("correct.reading", music.getFileName()));
            try (AudioFile sound = AudioFiles.open(music)) {
                correction = correction.withMusic(corrector.music(sound));
            }
        }
        if (machine != null) {
            MachineSpec said = MachineSpec.fromJson(machine);
            String name = machine.getFileName().toString();
            terminal.progress(steps(), steps(), speech(terminal).say("correct.trying", name));
            try (Programme sound = ProgrammeFolder.open(programme)) {
                correction =
                        correction.withVerification(
                                corrector.verification(correction, sound, said, name));
            }
        }
        return correction;
    }

    /** Even with --force, nothing that is read here is written over. */
    private void requireOwn(String... names) {
        for (Path read : new Path[] {filter.target(), music, machine}) {
            for (String name : names) {
                if (read != null
                        && read.toAbsolutePath()
                                .normalize()
                                .equals(out.resolve(name).toAbsolutePath().normalize())) {
                    throw new RefusedOutputException(SAID.say("read-here", read));
                }
            }
        }
    }
}
