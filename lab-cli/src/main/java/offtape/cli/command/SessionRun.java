package offtape.cli.command;

import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import offtape.cli.terminal.Terminal;
import offtape.core.output.OutputFolder;
import offtape.core.text.Language;
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
 * @param language of the report
 */
record SessionRun(
        Terminal terminal,
        ChannelOptions channels,
        Path programme,
        SessionOptions session,
        Capture capture,
        LimitSet limits,
        Economics economics,
        Language language) {

    /**
     * Measures and writes.
     *
     * @param out where the folder lies, for the message
     * @param folder the same folder, opened
     */
    Results measure(List<Path> recordings, Path out, OutputFolder folder) {
        int steps = recordings.size() + 1;
        Speech speech = Speech.of(terminal);
        PartTimes times = new PartTimes();
        times.startUp();
        Results measured =
                Sessions.measure(
                        recordings,
                        channels::of,
                        programme,
                        session.said(),
                        capture,
                        times,
                        i ->
                                terminal.progress(
                                        i + 1,
                                        steps,
                                        speech.say(
                                                "session.measuring",
                                                recordings.get(i).getFileName())));
        Results results = times.of("judge", () -> Decider.decided(measured, limits, economics));
        terminal.progress(steps, steps, speech.say("session.writing"));
        Map<String, String> texts =
                times.of("report and charts", () -> SessionFiles.texts(results, limits, language));
        times.of("write", () -> written(texts, folder));
        times.lines(speech).forEach(terminal::detail);
        new SessionWords(terminal).lines(results).forEach(terminal::message);
        terminal.message(speech.say("session.report", out.resolve(SessionFiles.REPORT)));
        return results;
    }

    private static OutputFolder written(Map<String, String> texts, OutputFolder folder) {
        SessionFiles.write(texts, folder);
        folder.commit();
        return folder;
    }
}
