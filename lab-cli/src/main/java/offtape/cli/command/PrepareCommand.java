package offtape.cli.command;

import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.concurrent.Callable;
import offtape.cli.terminal.ExitCodes;
import offtape.cli.terminal.Terminal;
import offtape.core.output.OutputFile;
import offtape.core.output.OutputFolder;
import offtape.core.programme.CueSheet;
import offtape.core.programme.ProgrammePlan;
import offtape.core.text.Sentences;
import offtape.core.transport.TransportDescription;
import offtape.core.unit.TapeSpeed;
import offtape.report.cost.Economics;
import offtape.report.judge.LimitSet;
import offtape.report.render.SetUpSheet;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** Writes the test programme. */
@Command(
        description =
                "Writes the test programme: programme.wav and its cue sheet programme.json, and"
                        + " set-up.html, a page to print and have at the machine.",
        footer = {
            "",
            "Example: offtape prepare --tape-speed 19.05cm/s --out programme",
            "",
            "The programme holds loud tones up to 20 kHz. Turn loudspeakers and headphones",
            "down or off before it is played.",
        })
final class PrepareCommand implements Callable<Integer> {

    private static final Sentences SAID = Sentences.near(PrepareCommand.class);

    @Spec private CommandSpec spec;

    @Mixin private CommonOptions common;

    @Option(
            names = "--out",
            paramLabel = "DIR",
            description = "Folder to write to; made if it does not exist.")
    private Path out;

    @Option(
            names = "--transport-template",
            paramLabel = "FILE",
            description =
                    "Write a form for the dimensions of the transport, to be filled in and given to"
                            + " measure and speed with --transport. Goes with or without --out.")
    private Path transportTemplate;

    @Option(
            names = "--limits-template",
            paramLabel = "FILE",
            description =
                    "Write a form for the limits of the maker's sheet, to be filled in and given to"
                            + " measure with --limits. Goes with or without --out.")
    private Path limitsTemplate;

    @Option(
            names = "--economics-template",
            paramLabel = "FILE",
            description =
                    "Write a form for what the machine costs and is worth, to be filled in and given to"
                            + " measure with --economics. Goes with or without --out.")
    private Path economicsTemplate;

    @Option(
            names = "--tape-speed",
            paramLabel = "SPEED",
            converter = TapeSpeedConverter.class,
            description = "Nominal tape speed, such as 19.05cm/s (the default) or 7.5ips.")
    private TapeSpeed tapeSpeed = new TapeSpeed(190.5);

    @Option(
            names = "--sample-rate",
            paramLabel = "HZ",
            description = "Sample rate, 44100 to 192000 (default: ${DEFAULT-VALUE}).")
    private int sampleRate = 48_000;

    @Option(
            names = "--reference-level",
            paramLabel = "DBFS",
            description =
                    "Level of the reference tone in dB under full scale (default: ${DEFAULT-VALUE}).")
    private double referenceDbfs = ProgrammePlan.DEFAULT_REFERENCE_DBFS;

    @Option(names = "--short", description = "A programme of about a minute for quick looks.")
    private boolean brief;

    @Option(names = "--force", description = "Overwrite files that are in the way.")
    private boolean force;

    @Override
    public Integer call() {
        if (out == null
                && transportTemplate == null
                && limitsTemplate == null
                && economicsTemplate == null) {
            throw new CommandLine.ParameterException(spec.commandLine(), SAID.say("missing-out"));
        }
        if (transportTemplate != null) {
            write(
                    transportTemplate,
                    TransportDescription.template(),
                    "programme.form-inside",
                    "--transport");
        }
        if (limitsTemplate != null) {
            write(limitsTemplate, LimitSet.template(), "programme.form", "--limits");
        }
        if (economicsTemplate != null) {
            write(economicsTemplate, Economics.template(), "programme.form", "--economics");
        }
        if (out != null) {
            writeProgramme();
        }
        return ExitCodes.DONE;
    }

    private void write(Path form, String text, String said, String option) {
        try (OutputFile file = OutputFile.open(form, force)) {
            file.write(text.getBytes(StandardCharsets.UTF_8));
            file.commit();
        }
        common.terminal().message(Speech.of(common.terminal()).say(said, form, option));
    }

    private void writeProgramme() {
        CueSheet sheet;
        try {
            sheet = new ProgrammePlan(tapeSpeed, sampleRate, referenceDbfs, brief).sheet();
        } catch (IllegalArgumentException e) {
            throw new CommandLine.ParameterException(spec.commandLine(), e.getMessage());
        }
        Terminal terminal = common.terminal();
        try (OutputFolder folder =
                OutputFolder.open(out, force, ProgrammeFiles.NAMES.toArray(String[]::new))) {
            ProgrammeFiles.write(sheet, folder, common.language());
            folder.commit();
        }
        new ProgrammeWords(terminal).of(sheet, tapeSpeed).forEach(terminal::message);
        terminal.message(Speech.of(terminal).say("programme.written", out, SetUpSheet.NAME));
    }
}
