package offtape.cli.command;

import java.nio.file.Path;
import offtape.cli.terminal.ExitCodes;
import offtape.core.text.Sentences;
import offtape.report.cost.Economics;
import offtape.report.judge.Judge;
import offtape.report.judge.LimitSet;
import offtape.report.result.Results;
import picocli.CommandLine;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** Which limits figures are held against, and what is said of money. */
final class LimitOptions {

    private static final Sentences SAID = Sentences.near(LimitOptions.class);

    @Spec(Spec.Target.MIXEE)
    private CommandSpec spec;

    @Option(
            names = "--limits",
            paramLabel = "SET",
            description =
                    "Hold the figures against limits: din45500-4, studio-practice, cassette-practice, or"
                            + " a file of your own; \"offtape prepare --limits-template FILE\" writes a"
                            + " form for it.")
    private String limits;

    @Option(
            names = "--fail-on-limit",
            description = "End with exit code 1 if a limit is failed beyond doubt.")
    private boolean failOnLimit;

    @Option(
            names = "--economics",
            paramLabel = "FILE",
            description =
                    "Weigh the cost of mending against the value of a good machine, by a file of your"
                            + " own; \"offtape prepare --economics-template FILE\" writes a form for"
                            + " it.")
    private Path economics;

    /** What is said of money, read before anything is measured; null if nothing is. */
    Economics economics() {
        return economics == null ? null : Economics.of(economics);
    }

    /** The limits, read before anything is measured; null if none were given. */
    LimitSet set() {
        if (failOnLimit && limits == null) {
            throw new CommandLine.ParameterException(spec.commandLine(), SAID.say("needs-limits"));
        }
        return limits == null ? null : LimitSet.of(limits);
    }

    /** The exit code of a measurement. */
    int code(Results results) {
        return code(Judge.isFailed(results));
    }

    /** The exit code of measurements of which one fails a limit, or none. */
    int code(boolean failed) {
        return failOnLimit && failed ? ExitCodes.LIMIT_FAILED : ExitCodes.DONE;
    }
}
