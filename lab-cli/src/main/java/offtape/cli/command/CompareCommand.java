package offtape.cli.command;

import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.Callable;
import offtape.cli.terminal.ExitCodes;
import offtape.cli.terminal.Terminal;
import offtape.core.output.OutputFolder;
import offtape.report.compare.Comparison;
import offtape.report.compare.Pairing;
import offtape.report.render.ReportWriter;
import offtape.report.result.Results;
import offtape.report.result.ResultsJson;
import offtape.report.result.ResultsReader;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Two sessions side by side. */
@Command(
        description =
                "Sets two sessions against each other, before and after a service or of two machines:"
                        + " what is better, whether the difference is real, and which faults there"
                        + " are.",
        footer = {
            "",
            "Example: offtape compare before after --out comparison",
            "With measurings of the machine between which nothing was done:",
            "  offtape compare before after --repeat before before-again --out comparison",
            "Two machines, where their names do not tell them apart:",
            "  offtape compare one other --as machines --out comparison",
        })
final class CompareCommand implements Callable<Integer> {

    private static final String PAGE = "comparison.html";
    private static final String JSON = "comparison.json";

    @Mixin private CommonOptions common;

    @Parameters(
            index = "0",
            paramLabel = "BEFORE",
            description = "The folder of the first session.")
    private Path before;

    @Parameters(
            index = "1",
            paramLabel = "AFTER",
            description = "The folder of the second session.")
    private Path after;

    @Option(
            names = "--repeat",
            arity = "2..*",
            paramLabel = "SESSION",
            description =
                    "Two or more sessions of one machine with nothing done in between: how much they"
                            + " scatter is what a difference must exceed.")
    private List<Path> repeats = List.of();

    @Option(
            names = "--as",
            paramLabel = "machines|service",
            converter = PairingConverter.class,
            description =
                    "Two machines, or one before and after. Without it, sessions that name different"
                            + " machines are of two and all others of one.")
    private Pairing pairing;

    @Option(
            names = "--out",
            required = true,
            paramLabel = "DIR",
            description = "Folder for the page, comparison.html, and the figures, comparison.json.")
    private Path out;

    @Option(names = "--json", description = "Print the figures as JSON to standard output as well.")
    private boolean json;

    @Option(names = "--force", description = "Overwrite files that are in the way.")
    private boolean force;

    @Override
    public Integer call() {
        Terminal terminal = common.terminal();
        Results first = ResultsReader.read(before);
        Results second = ResultsReader.read(after);
        Comparison comparison =
                Comparison.of(
                        first,
                        second,
                        repeats.stream().map(ResultsReader::read).toList(),
                        pairing == null ? Pairing.of(first.session(), second.session()) : pairing);
        String figures = ResultsJson.write(comparison);
        try (OutputFolder folder = OutputFolder.open(out, force, PAGE, JSON)) {
            folder.write(
                    PAGE,
                    ReportWriter.html(comparison, first, second, common.language())
                            .getBytes(StandardCharsets.UTF_8));
            folder.write(JSON, figures.getBytes(StandardCharsets.UTF_8));
            folder.commit();
        }
        if (json) {
            terminal.raw(figures);
        }
        Speech speech = Speech.of(terminal);
        if (pairing == null && comparison.pairing() == Pairing.MACHINES) {
            terminal.message(speech.say("compare.taken-for-two"));
        }
        new CompareWords(terminal).lines(comparison).forEach(terminal::message);
        terminal.message(speech.say("compare.page", out.resolve(PAGE)));
        return ExitCodes.DONE;
    }
}
