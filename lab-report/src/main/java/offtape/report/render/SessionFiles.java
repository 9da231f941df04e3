package offtape.report.render;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import offtape.core.output.OutputFolder;
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

    /** Writes all files of a session; the folder's owner commits them. */
    public static void write(Results results, OutputFolder folder) {
        put(folder, RESULTS, ResultsJson.write(results));
        put(folder, REPORT, ReportWriter.html(results));
        for (Map.Entry<String, String> table : ReportWriter.csv(results).entrySet()) {
            put(folder, table.getKey(), table.getValue());
        }
    }

    private static void put(OutputFolder folder, String name, String text) {
        folder.write(name, text.getBytes(StandardCharsets.UTF_8));
    }
}
