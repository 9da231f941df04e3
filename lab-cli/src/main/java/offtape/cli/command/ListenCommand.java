package offtape.cli.command;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.OptionalDouble;
import java.util.concurrent.Callable;
import offtape.cli.terminal.ExitCodes;
import offtape.cli.terminal.Terminal;
import offtape.core.audio.AudioFile;
import offtape.core.audio.AudioFiles;
import offtape.core.fault.RefusedOutputException;
import offtape.core.output.OutputFile;
import offtape.core.text.Sentences;
import offtape.report.apply.listen.ListenChoice;
import offtape.report.apply.listen.ListenFacts;
import offtape.report.apply.listen.ListenPage;
import offtape.report.apply.listen.Listening;
import offtape.report.result.ResultsJson;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** A page on which two sounds are told apart blindly. */
@Command(
        description =
                "Writes a page for blind listening: A, B and X, which is one of the two and drawn in"
                        + " secret for each trial. Both are brought to equal loudness (ITU-R BS.1770)"
                        + " and in time; the page reckons how likely the result is by luck. It needs"
                        + " nothing but a browser.",
        footer = {
            "",
            "Example: offtape listen original.wav returned.wav --out listening.html",
            "",
            "Start to play with the amplifier turned down.",
        })
final class ListenCommand implements Callable<Integer> {

    private static final Sentences SAID = Sentences.near(ListenCommand.class);

    @Spec private CommandSpec spec;

    @Mixin private CommonOptions common;

    @Parameters(
            index = "0",
            paramLabel = "A",
            description = "The original, a WAV, AIFF or FLAC file of one or two channels.")
    private Path first;

    @Parameters(
            index = "1",
            paramLabel = "B",
            description = "What is set against it, at the same sample rate.")
    private Path second;

    @Option(
            names = "--out",
            required = true,
            paramLabel = "PAGE.html",
            description = "The page to write.")
    private Path out;

    @Option(
            names = "--trials",
            paramLabel = "N",
            description = "Trials of a round, 5 to 100 (default: 16).")
    private int trials = ListenChoice.USUAL_TRIALS;

    @Option(
            names = "--training",
            description =
                    "A page to practise with: it tells after each trial whether the answer was right,"
                            + " and nothing counts.")
    private boolean training;

    @Option(
            names = "--from",
            paramLabel = "SECONDS",
            description =
                    "Where in A the part to listen to begins (default: all, or the loudest part).")
    private Double fromSeconds;

    @Option(
            names = "--length",
            paramLabel = "SECONDS",
            description =
                    "Its length, 0.4 to 120 s (default: at most 30). Half a minute of stereo at 48 kHz"
                            + " makes a page of 23 MB.")
    private Double lengthSeconds;

    @Option(
            names = "--turn-polarity",
            description = "Turn B over if its polarity is inverted (default: it stays as it is).")
    private boolean turnPolarity;

    @Option(
            names = "--as-they-are",
            description =
                    "Do not look for a delay: both begin at their first frame. Also for sounds that"
                            + " have nothing in common.")
    private boolean asTheyAre;

    @Option(names = "--json", description = "Print the figures as JSON to standard output.")
    private boolean json;

    @Option(names = "--force", description = "Overwrite a file that is in the way.")
    private boolean force;

    @Override
    public Integer call() {
        requireSense();
        Terminal terminal = common.terminal();
        try (AudioFile a = AudioFiles.open(first);
                AudioFile b = AudioFiles.open(second);
                OutputFile page = OutputFile.open(out, force)) {
            FileNotes.tell(a, terminal);
            FileNotes.tell(b, terminal);
            Listening listening = Listening.of(a, b, choice(), new ListenSearch());
            long bytes = write(listening, page);
            page.commit();
            if (json) {
                ListenFacts facts = listening.facts();
                terminal.raw(
                        ResultsJson.write(new ListenOutput(facts, bytes, ListenNotes.next(facts))));
            }
            new ListenNotes(terminal)
                    .lines(listening.facts(), out, bytes)
                    .forEach(terminal::message);
        }
        return ExitCodes.DONE;
    }

    private long write(Listening listening, OutputFile page) {
        try {
            ListenPage.write(listening, page.path(), common.language());
            return Files.size(page.path());
        } catch (IOException e) {
            throw new RefusedOutputException(SAID.say("page-not-written", page.file()), e);
        }
    }

    private ListenChoice choice() {
        return new ListenChoice(
                optional(fromSeconds),
                optional(lengthSeconds),
                trials,
                training,
                !asTheyAre,
                turnPolarity);
    }

    private static OptionalDouble optional(Double value) {
        return value == null ? OptionalDouble.empty() : OptionalDouble.of(value);
    }

    private void requireSense() {
        require(
                trials >= ListenChoice.FEWEST_TRIALS && trials <= ListenChoice.MOST_TRIALS,
                SAID.say("trials"));
        require(
                fromSeconds == null || fromSeconds >= 0 && fromSeconds < Integer.MAX_VALUE,
                SAID.say("from-negative"));
        require(
                lengthSeconds == null
                        || lengthSeconds >= ListenChoice.SHORTEST_SECONDS
                                && lengthSeconds <= ListenChoice.LONGEST_SECONDS,
                SAID.say("length-range"));
        require(!(asTheyAre && turnPolarity), SAID.say("polarity-search"));
    }

    private void require(boolean holds, String message) {
        if (!holds) {
            throw new ParameterException(spec.commandLine(), message);
        }
    }
}
