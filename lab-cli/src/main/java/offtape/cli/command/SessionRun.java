package offtape.cli.command;

import java.nio.file.Path;
import java.util.List;
import offtape.cli.terminal.Terminal;
import offtape.core.output.OutputFolder;
import offtape.report.cost.Economics;
import offtape.report.judge.Decider;
import offtape.report.judge.LimitSet;
import offtape.report.measure.mode.Capture;
import offtape.report.render.SessionFiles;
import offtape.report.result.Results;

/**
 * Measures returns and writes their session, with progress and the headline figures on the
 * terminal.
 *
 * @param channels which channels of the recordings
 * @param programme folder of the programme that was played
 * @param session what the user says of it
 * @param capture what is said of how it came about
 * @param limits what its figures are held against, or null
 * @param economics what the owner says of money, or null
 */
record SessionRun(
        Terminal terminal,
        ChannelOptions channels,
        Path programme,
        SessionOptions session,
        Capture capture,
        LimitSet limits,
        Economics economics) {

    /**
     * Measures and writes.
     *
     * @param out where the folder lies, for the message
     * @param folder the same folder, opened
     */
    Results measure(List<Path> recordings, Path out, OutputFolder folder) {
        int steps = recordings.size() + 1;
        Results measured =
                Sessions.measure(
                        recordings,
                        channels,
                        programme,
                        session,
                        capture,
                        i ->
                                terminal.progress(
                                        i + 1,
                                        steps,
                                        "Measuring " + recordings.get(i).getFileName()));
        Results results = Decider.decided(measured, limits, economics);
        terminal.progress(steps, steps, "Writing the report");
        SessionFiles.write(results, folder);
        folder.commit();
        SessionWords.lines(results).forEach(terminal::message);
        terminal.message("Report: " + out.resolve(SessionFiles.REPORT));
        return results;
    }
}
