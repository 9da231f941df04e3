package offtape.cli.guide;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Consumer;
import java.util.function.ToIntFunction;
import offtape.cli.sound.SoundLayers;
import offtape.cli.terminal.ExitCodes;
import offtape.cli.terminal.Terminal;
import offtape.core.output.DiskTrouble;
import offtape.core.text.Language;
import offtape.core.text.Phrases;

/**
 * Leads through the steps from the choice of devices to the report. Each step can be done again,
 * and is done by a command that is shown.
 */
public final class Guide {

    private static final String FOLDER = "offtape-sessions";
    private static final String REPORT = "report.html";
    private static final String END = "q";
    private static final String INDENT = "  ";

    private final Terminal terminal;
    private final Phrases phrases;
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
        this.phrases = terminal.phrases(Guide.class);
        this.layers = layers;
        this.commands = commands;
        this.opener = opener;
        this.answers = Answers.in(place.resolve(FOLDER));
    }

    /** Leads until it is ended; returns the exit code. */
    public int run() {
        terminal.message(phrases.say("guide.begin", answers.folder()));
        terminal.message(phrases.say("guide.caution"));
        while (true) {
            Step next = next();
            for (Step s : Step.values()) {
                terminal.message(
                        INDENT
                                + phrases.say(
                                        done.contains(s) ? "guide.step-done" : "guide.step",
                                        s.number(),
                                        s.key(),
                                        phrases.say("guide.step-" + s.key())));
            }
            Optional<String> answer =
                    terminal.answer(
                            phrases.say("guide.which-step"), Integer.toString(next.number()));
            if (answer.isEmpty() || answer.get().equalsIgnoreCase(END)) {
                return ExitCodes.DONE;
            }
            named(answer.get())
                    .ifPresentOrElse(
                            this::take,
                            () -> terminal.message(phrases.say("guide.no-step", answer.get())));
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
            terminal.message(phrases.say("guide.not-done", step.key()));
        }
    }

    private boolean machine() {
        Optional<Answers> said = new MachineQuestions(terminal, phrases).ask(answers);
        said.ifPresent(
                a -> {
                    answers = a;
                    done.removeAll(EnumSet.range(Step.LOOPBACK, Step.REPORT));
                });
        return said.isPresent();
    }

    private boolean devices() {
        Optional<List<String>> options = new DeviceQuestions(terminal, phrases, layers).options();
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
            terminal.message(
                    phrases.say(
                            "guide.not-made",
                            answers.folder(),
                            phrases.told(DiskTrouble.words(e))));
            return false;
        }
        return Files.isDirectory(CommandLines.programme(answers))
                || command(CommandLines.prepare(answers));
    }

    private boolean loopback() {
        if (!terminal.ready(phrases.say("guide.connect"))) {
            return false;
        }
        Path session = unused("loopback", "");
        boolean well = command(CommandLines.loopback(answers, unused("loopback", ".wav"), session));
        answers = answers.withLoopback(well ? session : answers.loopback());
        return well;
    }

    private boolean capture() {
        if (answers.heads() == Heads.TWO
                && !(terminal.ready(phrases.say("guide.start-recording"))
                        && command(CommandLines.record(answers))
                        && terminal.ready(phrases.say("guide.rewind")))) {
            return false;
        }
        if (answers.heads() == Heads.THREE && !terminal.ready(phrases.say("guide.off-tape"))) {
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
            terminal.message(phrases.say("guide.no-return"));
            return false;
        }
        Path session = unused("session", "");
        boolean well = command(CommandLines.measure(answers, session));
        answers = answers.withSession(well ? session : answers.session());
        return well;
    }

    private boolean report() {
        if (answers.session() == null) {
            terminal.message(phrases.say("guide.not-measured"));
            return false;
        }
        Path page = answers.session().resolve(REPORT).toAbsolutePath();
        terminal.message(phrases.say("guide.report", page));
        opener.accept(page);
        return true;
    }

    private boolean command(List<String> words) {
        List<String> spoken = new ArrayList<>(words);
        if (phrases.language() != Language.ENGLISH) {
            spoken.addAll(List.of("--language", phrases.language().code()));
        }
        terminal.message(CommandLines.typed(spoken));
        return commands.applyAsInt(spoken) == ExitCodes.DONE;
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
