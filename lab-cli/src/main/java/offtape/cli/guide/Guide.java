package offtape.cli.guide;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.EnumSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.function.Consumer;
import java.util.function.ToIntFunction;
import offtape.cli.sound.SoundLayers;
import offtape.cli.terminal.ExitCodes;
import offtape.cli.terminal.Terminal;
import offtape.core.output.DiskTrouble;

/**
 * Leads through the steps from the choice of devices to the report. Each step can be done again,
 * and is done by a command that is shown.
 */
public final class Guide {

    private static final String FOLDER = "offtape-sessions";
    private static final String REPORT = "report.html";
    private static final String END = "q";

    private final Terminal terminal;
    private final SoundLayers layers;
    private final ToIntFunction<List<String>> commands;
    private final Consumer<Path> opener;
    private final Set<Step> done = EnumSet.noneOf(Step.class);
    private Answers answers;

    /**
     * Makes ready.
     *
     * @param commands runs a command and gives its exit code
     * @param opener opens a page for somebody to read
     * @param place where the folder of the sessions is made
     */
    public Guide(
            Terminal terminal,
            SoundLayers layers,
            ToIntFunction<List<String>> commands,
            Consumer<Path> opener,
            Path place) {
        this.terminal = terminal;
        this.layers = layers;
        this.commands = commands;
        this.opener = opener;
        this.answers = Answers.in(place.resolve(FOLDER));
    }

    /** Leads until it is ended; returns the exit code. */
    public int run() {
        terminal.message(
                "This leads through measuring a tape machine; everything goes into "
                        + answers.folder()
                        + ".");
        terminal.message(
                "Loud tones up to 20 kHz are played: turn loudspeakers and headphones down or off"
                        + " first. Keep fingers, hair and sleeves away from moving reels.");
        while (true) {
            Step next = next();
            for (Step s : Step.values()) {
                terminal.message(
                        String.format(
                                Locale.ROOT,
                                "  %d  %-9s %s%s",
                                s.number(),
                                s.key(),
                                s.what(),
                                done.contains(s) ? " (done)" : ""));
            }
            Optional<String> answer =
                    terminal.answer("Which step (q ends)", Integer.toString(next.number()));
            if (answer.isEmpty() || answer.get().equalsIgnoreCase(END)) {
                return ExitCodes.DONE;
            }
            named(answer.get())
                    .ifPresentOrElse(
                            this::take,
                            () -> terminal.message("\"" + answer.get() + "\" is no step."));
        }
    }

    private Step next() {
        return Arrays.stream(Step.values())
                .filter(s -> !done.contains(s))
                .findFirst()
                .orElse(Step.REPORT);
    }

    private static Optional<Step> named(String answer) {
        return Arrays.stream(Step.values())
                .filter(s -> answer.equalsIgnoreCase(s.key()) || answer.equals("" + s.number()))
                .findFirst();
    }

    private void take(Step step) {
        boolean well =
                switch (step) {
                    case MACHINE -> machine();
                    case DEVICES -> devices();
                    case LOOPBACK -> prepared() && loopback();
                    case LINE_UP -> prepared() && command(CommandLines.lineUp(answers));
                    case CAPTURE -> prepared() && capture();
                    case MEASURE -> measure();
                    case REPORT -> report();
                };
        if (well) {
            done.add(step);
        } else {
            terminal.message("The step \"" + step.key() + "\" is not done; it can be repeated.");
        }
    }

    private boolean machine() {
        Optional<Answers> said = new MachineQuestions(terminal).ask(answers);
        said.ifPresent(
                a -> {
                    answers = a;
                    done.removeAll(EnumSet.range(Step.LOOPBACK, Step.REPORT));
                });
        return said.isPresent();
    }

    private boolean devices() {
        Optional<List<String>> options = new DeviceQuestions(terminal, layers).options();
        options.ifPresent(
                o -> {
                    answers = answers.withDevices(o);
                    done.remove(Step.LOOPBACK);
                });
        return options.isPresent();
    }

    private boolean prepared() {
        try {
            Files.createDirectories(answers.folder());
        } catch (IOException e) {
            terminal.message(answers.folder() + " cannot be made: " + DiskTrouble.words(e) + ".");
            return false;
        }
        return Files.isDirectory(CommandLines.programme(answers))
                || command(CommandLines.prepare(answers));
    }

    private boolean loopback() {
        if (!terminal.ready(
                "Connect the outputs of the interface with its inputs by cables, left to left and"
                        + " right to right, without the machine. (This step can be left out.)")) {
            return false;
        }
        Path session = unused("loopback", "");
        boolean well = command(CommandLines.loopback(answers, unused("loopback", ".wav"), session));
        answers = answers.withLoopback(well ? session : answers.loopback());
        return well;
    }

    private boolean capture() {
        if (answers.heads() == Heads.TWO
                && !(terminal.ready("Set the counter to 0 and start recording.")
                        && command(CommandLines.record(answers))
                        && terminal.ready("Rewind to 0, and get ready to start the tape."))) {
            return false;
        }
        if (answers.heads() == Heads.THREE
                && !terminal.ready("Start recording, and switch the machine to listen off tape.")) {
            return false;
        }
        Path wav = unused("return", ".wav");
        boolean well = command(CommandLines.capture(answers, wav));
        answers = answers.withRecording(well ? wav : answers.recording());
        done.removeAll(EnumSet.range(Step.MEASURE, Step.REPORT));
        return well;
    }

    private boolean measure() {
        if (answers.recording() == null) {
            terminal.message("There is no return yet: take the step \"capture\" first.");
            return false;
        }
        Path session = unused("session", "");
        boolean well = command(CommandLines.measure(answers, session));
        answers = answers.withSession(well ? session : answers.session());
        return well;
    }

    private boolean report() {
        if (answers.session() == null) {
            terminal.message("Nothing was measured yet: take the step \"measure\" first.");
            return false;
        }
        Path page = answers.session().resolve(REPORT).toAbsolutePath();
        terminal.message("Report: " + page);
        opener.accept(page);
        return true;
    }

    private boolean command(List<String> words) {
        terminal.message(CommandLines.typed(words));
        return commands.applyAsInt(words) == ExitCodes.DONE;
    }

    /** A name that nothing has yet, so that a step that is repeated replaces nothing. */
    private Path unused(String stem, String end) {
        Path path = answers.folder().resolve(stem + end);
        for (int i = 2; Files.exists(path); i++) {
            path = answers.folder().resolve(stem + "-" + i + end);
        }
        return path;
    }
}
