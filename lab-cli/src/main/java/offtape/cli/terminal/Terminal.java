package offtape.cli.terminal;

import java.io.BufferedReader;
import java.io.FileDescriptor;
import java.io.FileOutputStream;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.PrintStream;
import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.util.Collections;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import offtape.core.text.InertText;
import offtape.core.text.Language;
import offtape.core.text.Phrases;
import offtape.core.text.Translation;

/**
 * Where words go: figures to standard output, messages and progress to standard error. Everything
 * is UTF-8. Progress is redrawn in place on a terminal and written as plain lines elsewhere.
 *
 * <p>Texts may hold names that anybody gave. Each is one line, and what would steer a terminal is
 * taken out of it: no name can move the cursor, recolour, retitle, answer for the user or pass for
 * a further line.
 */
public final class Terminal {

    private final PrintStream out;
    private final PrintStream err;
    private final boolean interactive;
    private final BufferedReader answers;
    private final boolean ownStreams;
    private boolean quiet;
    private boolean verbose;
    private boolean progressShown;
    private Language language = Language.ENGLISH;
    private Translation translation;

    private Terminal(
            PrintStream out,
            PrintStream err,
            boolean interactive,
            BufferedReader answers,
            boolean ownStreams) {
        this.out = out;
        this.err = err;
        this.interactive = interactive;
        this.answers = answers;
        this.ownStreams = ownStreams;
    }

    /** The process's own streams. */
    public static Terminal system() {
        return new Terminal(
                new PrintStream(
                        new FileOutputStream(FileDescriptor.out), true, StandardCharsets.UTF_8),
                new PrintStream(
                        new FileOutputStream(FileDescriptor.err), true, StandardCharsets.UTF_8),
                Interactive.standardError(),
                Interactive.questions()
                        ? new BufferedReader(
                                new InputStreamReader(System.in, StandardCharsets.UTF_8))
                        : null,
                true);
    }

    /**
     * Given streams.
     *
     * @param interactive whether {@code err} may receive control characters
     */
    public static Terminal of(PrintStream out, PrintStream err, boolean interactive) {
        return new Terminal(out, err, interactive, null, false);
    }

    /** Given streams, and somebody who answers questions. */
    public static Terminal of(PrintStream out, PrintStream err, BufferedReader answers) {
        return new Terminal(out, err, false, answers, false);
    }

    /** From now on prints results and errors only, or everything again. */
    public synchronized void setQuiet(boolean quiet) {
        this.quiet = quiet;
    }

    /** From now on prints details too, or no longer. */
    public synchronized void setVerbose(boolean verbose) {
        this.verbose = verbose;
    }

    /** From now on speaks a language. */
    public synchronized void setLanguage(Language language) {
        if (this.language != language) {
            this.language = language;
            translation = null;
        }
    }

    /** The language that the reader is spoken to in; English unless another was chosen. */
    public synchronized Language language() {
        return language;
    }

    /**
     * What is said on this terminal, by key, from bundles beside a class.
     *
     * @param near a class in whose package the bundles lie
     */
    public synchronized Phrases phrases(Class<?> near) {
        return Phrases.of(translation(), near);
    }

    /** An English sentence out of results or an exception, in the reader's language. */
    public synchronized String told(String english) {
        return translation().of(english);
    }

    /** Made when something is said for the first time: in German it reads many bundles. */
    private Translation translation() {
        if (translation == null) {
            translation = Translation.to(language);
        }
        return translation;
    }

    private String own(String key) {
        return phrases(Terminal.class).say(key);
    }

    /** Whether control characters may be used. */
    public boolean isInteractive() {
        return interactive;
    }

    /**
     * A screen to draw on, if the process's own streams lead to a terminal that can be drawn on.
     */
    public Optional<LiveScreen> screen() {
        return ownStreams && Interactive.keys() ? LiveScreen.ofSystem() : Optional.empty();
    }

    /** Standard output for help texts, which are all the program's own. */
    public PrintWriter writer() {
        return new PrintWriter(out, true);
    }

    /** Prints a result to standard output. */
    public synchronized void result(String text) {
        endProgress();
        out.println(InertText.line(text));
    }

    /** Prints text of several lines to standard output, without a line end of its own. */
    public synchronized void raw(String text) {
        endProgress();
        out.print(InertText.lines(text));
        out.flush();
    }

    /** Prints a message to standard error, unless quiet. */
    public synchronized void message(String text) {
        if (!quiet) {
            endProgress();
            err.println(InertText.line(text));
        }
    }

    /** Prints a detail to standard error, if verbose. */
    public synchronized void detail(String text) {
        if (verbose) {
            endProgress();
            err.println(InertText.line(text));
        }
    }

    /** Prints an error to standard error. */
    public synchronized void error(String text) {
        endProgress();
        err.println("offtape: " + InertText.line(text));
    }

    /** Prints the trace of a fault to standard error, for verbose output. */
    public synchronized void trace(Throwable fault) {
        endProgress();
        trace(fault, "", Collections.newSetFromMap(new IdentityHashMap<>()));
    }

    /** The library's own way would print a message as it is, with all its lines. */
    private void trace(Throwable fault, String begin, Set<Throwable> told) {
        if (!told.add(fault)) {
            return;
        }
        err.println(begin + InertText.line(fault.toString()));
        for (StackTraceElement place : fault.getStackTrace()) {
            err.println("    at " + place);
        }
        for (Throwable beside : fault.getSuppressed()) {
            trace(beside, "Beside it: ", told);
        }
        if (fault.getCause() != null) {
            trace(fault.getCause(), "Caused by: ", told);
        }
    }

    /** Shows what is being done: step {@code done} of {@code all}. */
    public synchronized void progress(int done, int all, String what) {
        status(String.format(Locale.ROOT, "[%d/%d] %s", done, all, what));
    }

    /**
     * Asks which of several it is, if somebody is there to answer.
     *
     * @param choices words, of which one is chosen by its number or by itself
     * @return the word, or empty if nobody is there or the answer is none of them
     */
    public synchronized Optional<String> choice(String question, List<String> choices) {
        if (answers == null) {
            return Optional.empty();
        }
        endProgress();
        err.println(InertText.line(question));
        for (int i = 0; i < choices.size(); i++) {
            err.println("  " + (i + 1) + "  " + InertText.line(choices.get(i)));
        }
        err.print(own("terminal.number-or-name") + " ");
        err.flush();
        try {
            String answer = Objects.requireNonNullElse(answers.readLine(), "").strip();
            for (int i = 0; i < choices.size(); i++) {
                if (answer.equals(Integer.toString(i + 1))
                        || answer.equalsIgnoreCase(choices.get(i))) {
                    return Optional.of(choices.get(i));
                }
            }
        } catch (IOException e) {
            err.println(own("terminal.unreadable-answer"));
        }
        return Optional.empty();
    }

    /**
     * Says what to get ready and waits for the Enter key.
     *
     * @return false if nobody is there
     */
    public synchronized boolean ready(String what) {
        if (answers == null) {
            return false;
        }
        endProgress();
        err.println(InertText.line(what));
        err.print(own("terminal.press-enter") + " ");
        err.flush();
        try {
            return answers.readLine() != null;
        } catch (IOException e) {
            return false;
        }
    }

    /** Whether somebody is there to answer. */
    public boolean hasAnswers() {
        return answers != null;
    }

    /**
     * Asks for a line.
     *
     * @param usual what an empty line stands for
     * @return the line, or empty if nobody is there or there are no more lines
     */
    public synchronized Optional<String> answer(String question, String usual) {
        if (answers == null) {
            return Optional.empty();
        }
        endProgress();
        err.print(InertText.line(question + " [" + usual + "]: "));
        err.flush();
        try {
            return Optional.ofNullable(answers.readLine())
                    .map(String::strip)
                    .map(line -> line.isEmpty() ? usual : line);
        } catch (IOException e) {
            return Optional.empty();
        }
    }

    /** Shows how things stand: redrawn in place on a terminal, a line elsewhere. */
    public synchronized void status(String line) {
        if (quiet) {
            return;
        }
        if (interactive) {
            err.print("\r\u001b[K" + InertText.line(line));
            err.flush();
            progressShown = true;
        } else {
            err.println(InertText.line(line));
        }
    }

    private void endProgress() {
        if (progressShown) {
            err.print("\r\u001b[K");
            err.flush();
            progressShown = false;
        }
    }
}
