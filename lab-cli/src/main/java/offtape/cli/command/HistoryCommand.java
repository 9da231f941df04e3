package offtape.cli.command;

import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.time.format.DateTimeParseException;
import java.util.List;
import java.util.concurrent.Callable;
import offtape.cli.terminal.ExitCodes;
import offtape.cli.terminal.Terminal;
import offtape.core.output.OutputFolder;
import offtape.core.text.Sentences;
import offtape.report.compare.History;
import offtape.report.render.ReportWriter;
import offtape.report.result.ResultsJson;
import offtape.report.result.ResultsReader;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** One machine over time. */
@Command(
        description =
                "Puts many sessions of one machine in order of time: how each headline figure moves,"
                        + " a chart a figure, and whether the trend is real.",
        footer = {
            "",
            "Example: offtape history spring summer autumn --out history",
            "Trends since a service:",
            "  offtape history spring summer autumn --serviced 2026-03-20 --out history",
        })
final class HistoryCommand implements Callable<Integer> {

    private static final Sentences SAID = Sentences.near(HistoryCommand.class);

    private static final String PAGE = "history.html";
    private static final String JSON = "history.json";

    @Spec private CommandSpec spec;

    @Mixin private CommonOptions common;

    @Parameters(
            arity = "2..*",
            paramLabel = "SESSION",
            description = "The folders of the sessions, in any order.")
    private List<Path> sessions;

    @Option(
            names = "--serviced",
            paramLabel = "DATE",
            description =
                    "Day of the last service, such as 2026-03-20: trends are told from there on.")
    private String serviced;

    @Option(
            names = "--out",
            paramLabel = "DIR",
            description =
                    "Write the page, history.html, and the figures, history.json, to this folder.")
    private Path out;

    @Option(
            names = "--json",
            description = "Print the figures as JSON to standard output in place of lines.")
    private boolean json;

    @Option(names = "--force", description = "Overwrite files that are in the way.")
    private boolean force;

    @Override
    public Integer call() {
        Terminal terminal = common.terminal();
        Instant service = service();
        History history = History.of(sessions.stream().map(ResultsReader::read).toList(), service);
        String figures = ResultsJson.write(history);
        if (out != null) {
            try (OutputFolder folder = OutputFolder.open(out, force, PAGE, JSON)) {
                folder.write(
                        PAGE,
                        ReportWriter.html(history, common.language())
                                .getBytes(StandardCharsets.UTF_8));
                folder.write(JSON, figures.getBytes(StandardCharsets.UTF_8));
                folder.commit();
            }
        }
        if (json) {
            terminal.raw(figures);
        } else {
            new HistoryWords(terminal).lines(history).forEach(terminal::result);
        }
        history.leftOut().forEach(s -> terminal.message(terminal.told(s)));
        if (out != null) {
            terminal.message(
                    Speech.of(terminal)
                            .say("history.page", history.sessions().size(), out.resolve(PAGE)));
        }
        return ExitCodes.DONE;
    }

    private Instant service() {
        try {
            return serviced == null
                    ? null
                    : LocalDate.parse(serviced).atStartOfDay(ZoneOffset.UTC).toInstant();
        } catch (DateTimeParseException e) {
            throw new ParameterException(spec.commandLine(), SAID.say("no-day", serviced), e);
        }
    }
}
