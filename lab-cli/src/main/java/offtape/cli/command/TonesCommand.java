package offtape.cli.command;

import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.concurrent.Callable;
import offtape.cli.terminal.ExitCodes;
import offtape.cli.terminal.Terminal;
import offtape.core.audio.AudioFile;
import offtape.core.audio.AudioFiles;
import offtape.core.output.OutputFile;
import offtape.core.output.OutputFolder;
import offtape.core.tape.ToneList;
import offtape.core.text.Sentences;
import offtape.report.measure.tape.CalibrationTape;
import offtape.report.measure.tape.TapeQuestion;
import offtape.report.render.TapeFiles;
import offtape.report.result.ResultsJson;
import offtape.report.result.TapeReading;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Levels, response and channel match from a calibration tape. */
@Command(
        description =
                "Levels, response, channel match and speed from a recording of a calibration tape. The"
                        + " steady tones in it are found by themselves; spoken words and gaps are"
                        + " passed over.",
        footer = {
            "",
            "Example: offtape tones tape.wav --equalisation none,70 --out reading",
            "A form for the tones of your own tape:",
            "  offtape tones --list-template my-tape.json",
            "With it: offtape tones tape.wav --tones my-tape.json --track-format two-track",
            "",
            "Clean and demagnetise the machine and lock record out before the tape is put on.",
            "Turn loudspeakers down or off: the tones are loud and go up to 20 kHz.",
        })
final class TonesCommand implements Callable<Integer> {

    private static final Sentences SAID = Sentences.near(TonesCommand.class);

    @Spec private CommandSpec spec;

    @Mixin private CommonOptions common;

    @Mixin private TapeOptions tape;

    @Mixin private ChannelOptions channels;

    @Parameters(
            index = "0",
            arity = "0..1",
            paramLabel = "FILE",
            description = "The recording, a WAV, AIFF or FLAC file of any sample rate.")
    private Path file;

    @Option(
            names = "--list-template",
            paramLabel = "FILE",
            description =
                    "Write a form for the tones of a tape, to be filled in and given with --tones."
                            + " Goes with or without a recording.")
    private Path listTemplate;

    @Option(
            names = "--from",
            paramLabel = "SECONDS",
            description = "Where in the recording to begin (default: its start).")
    private double fromSeconds;

    @Option(
            names = "--to",
            paramLabel = "SECONDS",
            description = "Where in the recording to stop (default: its end).")
    private Double toSeconds;

    @Option(
            names = "--out",
            paramLabel = "DIR",
            description = "Write a report, the figures as JSON and tables as CSV to this folder.")
    private Path out;

    @Option(names = "--json", description = "Print the figures as JSON to standard output.")
    private boolean json;

    @Option(names = "--force", description = "Overwrite files that are in the way.")
    private boolean force;

    @Override
    public Integer call() {
        if (file == null && listTemplate == null) {
            throw new CommandLine.ParameterException(spec.commandLine(), SAID.say("missing-file"));
        }
        double to = toSeconds == null ? Double.POSITIVE_INFINITY : toSeconds;
        if (!(fromSeconds >= 0 && to > fromSeconds)) {
            throw new CommandLine.ParameterException(spec.commandLine(), SAID.say("from-to"));
        }
        if (listTemplate != null) {
            writeTemplate();
        }
        if (file != null) {
            read(to);
        }
        return ExitCodes.DONE;
    }

    private void writeTemplate() {
        try (OutputFile form = OutputFile.open(listTemplate, force)) {
            form.write(ToneList.template().getBytes(StandardCharsets.UTF_8));
            form.commit();
        }
        common.terminal().message(Speech.of(common.terminal()).say("tones.template", listTemplate));
    }

    private void read(double to) {
        Terminal terminal = common.terminal();
        TapeQuestion question = tape.question();
        try (AudioFile sound = AudioFiles.open(file)) {
            FileNotes.tell(sound, terminal);
            if (out == null) {
                print(
                        CalibrationTape.read(
                                channels.of(sound, terminal), question, fromSeconds, to));
                return;
            }
            try (OutputFolder folder = OutputFolder.open(out, force, TapeFiles.names())) {
                TapeReading reading =
                        CalibrationTape.read(
                                channels.of(sound, terminal), question, fromSeconds, to);
                TapeFiles.write(reading, folder, common.language());
                folder.commit();
                print(reading);
                terminal.message(
                        Speech.of(terminal).say("tones.report", out.resolve(TapeFiles.REPORT)));
            }
        }
    }

    private void print(TapeReading reading) {
        Terminal terminal = common.terminal();
        if (json) {
            terminal.raw(ResultsJson.write(reading));
        } else {
            new TonesWords(terminal).lines(reading).forEach(terminal::result);
        }
    }
}
