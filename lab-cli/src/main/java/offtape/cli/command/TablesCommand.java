package offtape.cli.command;

import java.nio.file.Path;
import java.util.concurrent.Callable;
import offtape.cli.terminal.ExitCodes;
import offtape.core.output.OutputFile;
import offtape.report.render.ReportWriter;
import offtape.report.result.Results;
import offtape.report.result.ResultsReader;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Writes the curves of a session as a workbook. */
@Command(
        description =
                "Writes the curves of a session as a workbook with a sheet a table, whose numbers are"
                        + " numbers in a spreadsheet of any language. The CSV files of the session"
                        + " hold the same with decimal points and commas.",
        footer = {"", "Example: offtape tables session --out curves.xlsx"})
final class TablesCommand implements Callable<Integer> {

    @Mixin private CommonOptions common;

    @Parameters(paramLabel = "SESSION", description = "The folder of the session.")
    private Path session;

    @Option(
            names = "--out",
            required = true,
            paramLabel = "FILE",
            description = "The workbook to write, such as curves.xlsx.")
    private Path out;

    @Option(names = "--force", description = "Overwrite files that are in the way.")
    private boolean force;

    @Override
    public Integer call() {
        Results results = ResultsReader.read(session);
        try (OutputFile file = OutputFile.open(out, force)) {
            file.write(ReportWriter.workbook(results));
            file.commit();
        }
        common.terminal().message(Speech.of(common.terminal()).say("session.tables", out));
        return ExitCodes.DONE;
    }
}
