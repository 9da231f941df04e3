package offtape.cli.command;

import java.nio.file.Path;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import java.util.concurrent.Callable;
import offtape.cli.terminal.ExitCodes;
import offtape.cli.terminal.Terminal;
import offtape.core.audio.AudioFile;
import offtape.core.audio.AudioFiles;
import offtape.core.audio.AudioSource;
import offtape.core.audio.BroadcastNote;
import offtape.core.fault.UnusableInputException;
import offtape.core.machine.spec.MachineSpec;
import offtape.core.output.OutputFolder;
import offtape.core.text.Sentences;
import offtape.report.apply.model.MachineModel;
import offtape.report.apply.model.ModelFiles;
import offtape.report.apply.model.ModelFit;
import offtape.report.apply.model.ModelPart;
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

/** Passes a file through a model of the measured machine. */
@Command(
        description =
                "Passes a sound file through a model of the measured machine, fitted to the figures"
                        + " of its session: response, crosstalk, saturation, noise, wow and flutter."
                        + " The result is as long as the file and in time with it.",
        footer = {
            "",
            "Example: offtape preview --session session drums.wav --out drums-tape.wav",
            "Hotter, without hiss: offtape preview --session session drums.wav --level 6 \\",
            "           --without noise --out drums-hot.wav",
            "The model for other tools: offtape preview --session session --model model",
        })
final class PreviewCommand implements Callable<Integer> {

    private static final Sentences SAID = Sentences.near(PreviewCommand.class);

    private static final double MOST_LEVEL_DB = 40;
    private static final int LOWEST_RATE_HZ = 8000;
    private static final int HIGHEST_RATE_HZ = 384_000;
    private static final int USUAL_RATE_HZ = 48_000;

    @Spec private CommandSpec spec;

    @Mixin private CommonOptions common;

    @Option(
            names = "--session",
            required = true,
            paramLabel = "SESSION",
            description = "Folder of the session in which the machine was measured.")
    private Path session;

    @Parameters(
            index = "0",
            arity = "0..1",
            paramLabel = "FILE",
            description = "The sound: WAV, AIFF or FLAC, mono or stereo, of any sample rate.")
    private Path file;

    @Option(names = "--out", paramLabel = "FILE.wav", description = "The sound to write.")
    private Path out;

    @Option(
            names = "--without",
            split = ",",
            paramLabel = "PART",
            description =
                    "Leave parts out, with commas between: response, crosstalk, saturation, noise,"
                            + " motion.")
    private List<ModelPart> without = List.of();

    @Option(
            names = "--level",
            paramLabel = "DB",
            description =
                    "Send the file so much hotter, -40 to 40 dB, and take it back after the machine"
                            + " (default: 0). The file's full scale is that of the programme.")
    private double levelDb;

    @Option(names = "--keep-level", description = "Do not take the level back.")
    private boolean keepLevel;

    @Option(
            names = "--motion",
            paramLabel = "WHICH",
            description =
                    "heard: wow and flutter as in the session's return (default). transport: as of a"
                            + " tape recorded elsewhere and replayed here; of sessions off tape.")
    private Motion motion = Motion.HEARD;

    @Option(
            names = "--seed",
            paramLabel = "N",
            description = "Which noise and which motion (default: 1).")
    private long seed = 1;

    @Option(
            names = "--mono-from",
            paramLabel = "CHANNEL",
            description =
                    "A mono file is sent to both channels and taken back from this one: left, right,"
                            + " or both for a stereo file (default: left).")
    private MonoFrom monoFrom = MonoFrom.LEFT;

    @Option(
            names = "--float",
            description =
                    "Write 32-bit float in place of 24 bits. Sound that 24 bits cannot hold is"
                            + " written so in any case.")
    private boolean isFloat;

    @Option(
            names = "--model",
            paramLabel = "DIR",
            description =
                    "Write the model itself to this folder: impulse responses, tables of the"
                            + " saturation, model.json. Goes with or without a file.")
    private Path modelFolder;

    @Option(
            names = "--rate",
            paramLabel = "HZ",
            description =
                    "Sample rate of the impulse responses (default: the file's, or 48000 without"
                            + " one).")
    private Integer rateHz;

    @Option(
            names = "--verify",
            paramLabel = "MACHINE.json",
            description =
                    "Send the file's first minute through this simulated machine too, without its"
                            + " motion and noise, and print how far the model cancels it, part by"
                            + " part.")
    private Path machine;

    @Option(names = "--json", description = "Print the figures as JSON to standard output.")
    private boolean json;

    @Option(names = "--force", description = "Overwrite files that are in the way.")
    private boolean force;

    /** Which motion is meant. */
    private enum Motion {
        HEARD,
        TRANSPORT
    }

    @Override
    public Integer call() {
        checkUsage();
        Terminal terminal = common.terminal();
        Results results = ResultsReader.read(session);
        MachineSpec truth = machine == null ? null : MachineSpec.fromJson(machine);
        terminal.progress(0, 1, Speech.of(terminal).say("preview.fitting"));
        MachineModel model = model(results);
        model.notes().forEach(n -> terminal.message(terminal.told(n)));
        if (file == null) {
            writeModel(model, USUAL_RATE_HZ);
            return ExitCodes.DONE;
        }
        try (AudioFile sound = AudioFiles.open(file)) {
            FileNotes.tell(sound, terminal);
            checkSound(sound);
            PreviewRun run =
                    new PreviewRun(model, sound, note(model, sound), settings(model), terminal);
            if (truth != null) {
                run.verify(truth);
            }
            if (out != null) {
                run.write(out, force);
            }
            writeModel(model, sound.sampleRateHz());
            print(run);
        }
        return ExitCodes.DONE;
    }

    private static BroadcastNote note(MachineModel model, AudioFile sound) {
        String name = model.session().machineName();
        return sound.describing(
                sound.name() + " as through " + (name == null ? "the measured machine" : name));
    }

    private void checkUsage() {
        if (file == null && (out != null || machine != null || modelFolder == null)) {
            throw usage(SAID.say("preview-file"));
        }
        if (file != null && out == null && machine == null && modelFolder == null) {
            throw usage(SAID.say("preview-out"));
        }
        if (!(Math.abs(levelDb) <= MOST_LEVEL_DB)) {
            throw usage(SAID.say("preview-level"));
        }
        if (rateHz != null && (rateHz < LOWEST_RATE_HZ || rateHz > HIGHEST_RATE_HZ)) {
            throw usage(SAID.say("preview-rate"));
        }
        if (rateHz != null && modelFolder == null) {
            throw usage(SAID.say("preview-rate-alone"));
        }
    }

    private ParameterException usage(String words) {
        return new ParameterException(spec.commandLine(), words);
    }

    private MachineModel model(Results results) {
        MachineModel model = ModelFit.of(results);
        if (motion == Motion.HEARD || without.contains(ModelPart.MOTION)) {
            return model;
        }
        MachineModel own = model.withMotionOfTransport(results.speed());
        if (own == null) {
            throw new UnusableInputException(SAID.say("preview-no-transport", session));
        }
        return own;
    }

    private void checkSound(AudioSource sound) {
        if (sound.channels() > 2) {
            throw new UnusableInputException(SAID.say("preview-channels", file, sound.channels()));
        }
        if (sound.frames() == 0) {
            throw new UnusableInputException(SAID.say("no-sound", file));
        }
        if (sound.sampleRateHz() < LOWEST_RATE_HZ || sound.sampleRateHz() > HIGHEST_RATE_HZ) {
            throw new UnusableInputException(
                    SAID.say("preview-file-rate", file, sound.sampleRateHz()));
        }
    }

    private PreviewSettings settings(MachineModel model) {
        Set<ModelPart> parts = EnumSet.allOf(ModelPart.class);
        parts.removeAll(without);
        parts.retainAll(model.known());
        return new PreviewSettings(parts, levelDb, keepLevel, seed, monoFrom, isFloat);
    }

    private void writeModel(MachineModel model, int usualRateHz) {
        if (modelFolder == null) {
            return;
        }
        int rate = rateHz == null ? usualRateHz : rateHz;
        try (OutputFolder folder = OutputFolder.open(modelFolder, force, ModelFiles.names())) {
            ModelFiles.write(model, rate, folder);
            folder.commit();
        }
        common.terminal()
                .message(
                        Speech.of(common.terminal())
                                .say("preview.model", modelFolder.resolve(ModelFiles.MODEL), rate));
    }

    private void print(PreviewRun run) {
        Terminal terminal = common.terminal();
        PreviewWords words = new PreviewWords(terminal);
        if (json) {
            terminal.raw(ResultsJson.write(run.figures()));
        } else {
            words.lines(run.figures()).forEach(terminal::result);
        }
        words.next(run.figures()).forEach(terminal::message);
    }
}
