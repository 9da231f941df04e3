package offtape.report.render;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.CompletableFuture;
import offtape.core.fault.Background;
import offtape.core.output.OutputFolder;
import offtape.core.text.Language;
import offtape.report.judge.LimitSet;
import offtape.report.result.Results;
import offtape.report.result.ResultsJson;

/** The files of a session folder: results, report and tables. */
public final class SessionFiles {

    /** Name of the results file. */
    public static final String RESULTS = Results.FILE;

    /** Name of the report. */
    public static final String REPORT = "report.html";

    private static final List<String> TABLES =
            List.of(
                    "response.csv",
                    "response-bands.csv",
                    "response-contour.csv",
                    "response-level.csv",
                    "sweep-harmonics.csv",
                    "ladder.csv",
                    "noise.csv",
                    "speed.csv",
                    "speed-readings.csv",
                    "speed-spectrum.csv",
                    "speed-components.csv",
                    "speed-passes.csv",
                    "transport-speed.csv",
                    "transport-spectrum.csv",
                    "transport-components.csv",
                    "crosstalk.csv",
                    "interchannel-delay.csv",
                    "dropouts.csv");

    private SessionFiles() {}

    /** The names of all files of a session, to be announced to the output folder. */
    public static String[] names() {
        List<String> names = new ArrayList<>(List.of(RESULTS, REPORT));
        names.addAll(TABLES);
        return names.toArray(String[]::new);
    }

    /**
     * Name and text of all files of a session.
     *
     * @param limits what its figures were held against, or null
     * @param language of the report; results and tables are the same in all
     */
    public static Map<String, String> texts(Results results, LimitSet limits, Language language) {
        CompletableFuture<String> report =
                Background.start(() -> ReportWriter.html(results, limits, language));
        Map<String, String> texts = new LinkedHashMap<>();
        texts.put(RESULTS, ResultsJson.write(results));
        texts.putAll(ReportWriter.csv(results));
        texts.put(REPORT, Background.result(report));
        return texts;
    }

    /** Writes all files of a session; the folder's owner commits them. */
    public static void write(Map<String, String> texts, OutputFolder folder) {
        texts.forEach((name, text) -> folder.write(name, text.getBytes(StandardCharsets.UTF_8)));
    }
}
