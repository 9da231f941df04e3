package offtape.report.render;

import java.nio.charset.StandardCharsets;
import offtape.core.output.OutputFolder;
import offtape.core.text.Language;
import offtape.report.result.ResultsJson;
import offtape.report.result.TapeReading;

/** The files of a reading of a calibration tape: figures, report and tables. */
public final class TapeFiles {

    /** Name of the file with the figures. */
    public static final String FIGURES = "tones.json";

    /** Name of the report. */
    public static final String REPORT = "tones.html";

    private static final String TONES = "tones.csv";
    private static final String RESPONSE = "tones-response.csv";

    private TapeFiles() {}

    /** The names of all files, to be announced to the output folder. */
    public static String[] names() {
        return new String[] {FIGURES, REPORT, TONES, RESPONSE};
    }

    /**
     * Writes all files; the folder's owner commits them.
     *
     * @param language of the report
     */
    public static void write(TapeReading reading, OutputFolder folder, Language language) {
        put(folder, FIGURES, ResultsJson.write(reading));
        put(folder, REPORT, TapePage.of(Wording.in(language), reading));
        put(folder, TONES, TapeTables.tonesCsv(reading));
        put(folder, RESPONSE, TapeTables.responseCsv(reading));
    }

    private static void put(OutputFolder folder, String name, String text) {
        folder.write(name, text.getBytes(StandardCharsets.UTF_8));
    }
}
