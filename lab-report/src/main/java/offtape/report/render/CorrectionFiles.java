package offtape.report.render;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import offtape.core.audio.WavEncoding;
import offtape.core.audio.WavFormat;
import offtape.core.audio.WavWriter;
import offtape.core.output.OutputFolder;
import offtape.core.text.Language;
import offtape.report.apply.correct.Correction;
import offtape.report.apply.correct.FilterFile;
import offtape.report.result.ResultsJson;

/** The files of a correction: figures, page, settings, tables and filters. */
public final class CorrectionFiles {

    /** Name of the file with the figures. */
    public static final String FIGURES = "correction.json";

    /** Name of the page. */
    public static final String PAGE = "correction.html";

    /** Name of the file with what a person dials in. */
    public static final String SETTINGS = "settings.txt";

    private static final String CURVES = "correction.csv";
    private static final String NOISE = "correction-noise.csv";
    private static final String HEADROOM = "correction-headroom.csv";
    private static final String LEVELS = "correction-levels.csv";

    private CorrectionFiles() {}

    /** The names of all files, to be announced to the output folder. */
    public static String[] names(Correction correction) {
        List<String> names =
                new ArrayList<>(List.of(FIGURES, PAGE, SETTINGS, CURVES, NOISE, HEADROOM, LEVELS));
        for (FilterFile f : correction.filters()) {
            names.add(f.beforeTape());
            names.add(f.afterTape());
        }
        return names.toArray(String[]::new);
    }

    /**
     * Writes all files; the folder's owner commits them.
     *
     * @param language of what people read: the page and the settings
     */
    public static void write(Correction correction, OutputFolder folder, Language language) {
        Wording words = Wording.in(language);
        put(folder, FIGURES, ResultsJson.write(correction));
        put(folder, PAGE, new CorrectionPage(words).of(correction));
        put(folder, SETTINGS, SettingsText.of(words, correction));
        put(folder, CURVES, CorrectionCsv.curves(correction));
        put(folder, NOISE, CorrectionCsv.noise(correction));
        put(folder, HEADROOM, CorrectionCsv.headroom(correction));
        put(folder, LEVELS, CorrectionCsv.levels(correction));
        for (FilterFile f : correction.filters()) {
            wav(folder, f.beforeTape(), f);
            wav(folder, f.afterTape(), f);
        }
    }

    private static void wav(OutputFolder folder, String name, FilterFile filter) {
        double[][] response = filter.response();
        WavFormat format =
                new WavFormat(filter.sampleRateHz(), response.length, WavEncoding.FLOAT_32);
        try (WavWriter writer = WavWriter.create(folder.path(name), format)) {
            writer.write(response);
        }
    }

    private static void put(OutputFolder folder, String name, String text) {
        folder.write(name, text.getBytes(StandardCharsets.UTF_8));
    }
}
