package offtape.cli.command;

import java.util.List;
import java.util.concurrent.Callable;
import offtape.cli.terminal.ExitCodes;
import offtape.cli.terminal.Terminal;
import offtape.core.json.Nearest;
import offtape.core.text.Sentences;
import offtape.reference.FaultFiles;
import offtape.report.fault.FaultCatalogue;
import offtape.report.fault.FaultNote;
import offtape.report.fault.FaultPage;
import offtape.report.fault.LearnedRows;
import offtape.report.result.ResultsJson;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Lists the faults that are known, or tells of one. */
@Command(
        description =
                "Lists the faults of tape machines that Offtape knows, or tells of one: what it does"
                        + " to the figures, what looks like it, what to try first, how to be sure.",
        footer = {"", "Example: offtape faults", "One of them: offtape faults dirty-head"})
final class FaultsCommand implements Callable<Integer> {

    private static final Sentences SAID = Sentences.near(FaultsCommand.class);

    @Spec private CommandSpec spec;

    @Mixin private CommonOptions common;

    @Parameters(
            arity = "0..1",
            paramLabel = "CODE",
            description = "The code of the fault to tell of.")
    private String code;

    @Option(
            names = "--json",
            description = "Print what is known as JSON to standard output in place of words.")
    private boolean json;

    @Override
    public Integer call() {
        Terminal terminal = common.terminal();
        if (code == null) {
            all(terminal, FaultCatalogue.all());
        } else {
            one(terminal, FaultCatalogue.of(known(code)));
        }
        return ExitCodes.DONE;
    }

    private void all(Terminal terminal, List<FaultNote> notes) {
        if (json) {
            terminal.raw(ResultsJson.write(notes));
        } else {
            new FaultPageWords(terminal).list(notes).forEach(terminal::result);
        }
    }

    private void one(Terminal terminal, FaultNote note) {
        if (json) {
            terminal.raw(ResultsJson.write(note));
        } else {
            int columns = spec.usageMessage().width();
            new FaultPageWords(terminal)
                    .page(FaultPage.of(note, LearnedRows.of(note.code())), columns)
                    .forEach(terminal::result);
        }
    }

    private String known(String typed) {
        List<String> codes = FaultFiles.codes();
        if (codes.contains(typed)) {
            return typed;
        }
        throw new ParameterException(
                spec.commandLine(),
                Nearest.to(typed, codes)
                        .map(near -> SAID.say("no-fault-but", typed, near))
                        .orElseGet(() -> SAID.say("no-fault", typed)));
    }
}
