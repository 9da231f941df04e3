package offtape.report.apply.model;

import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Set;
import offtape.core.audio.WavEncoding;
import offtape.core.audio.WavFormat;
import offtape.core.audio.WavWriter;
import offtape.core.output.OutputFolder;
import offtape.report.result.ResultsJson;

/** Writes a model for other tools: impulse responses, tables of the curve, a description. */
public final class ModelFiles {

    /** Each channel's own impulse response. */
    public static final String RESPONSE = "response.wav";

    /** What left hears of right, and right of left. */
    public static final String CROSSTALK = "crosstalk.wav";

    /** The curve at 1 kHz. */
    public static final String CURVE = "curve.csv";

    /** Compression and third harmonic over frequency and level. */
    public static final String OVER_FREQUENCY = "saturation.csv";

    /** The description. */
    public static final String MODEL = "model.json";

    private ModelFiles() {}

    /** Names of all files. */
    public static String[] names() {
        return new String[] {MODEL, RESPONSE, CROSSTALK, CURVE, OVER_FREQUENCY};
    }

    /**
     * Writes all files; the folder's owner commits them.
     *
     * @param rateHz sample rate of the impulse responses, hertz
     */
    public static void write(MachineModel model, int rateHz, OutputFolder folder) {
        ModelFilters filters =
                ModelFilters.of(model, rateHz, Set.of(ModelPart.RESPONSE, ModelPart.CROSSTALK));
        double[][][] taps = filters.taps();
        wav(folder, RESPONSE, rateHz, new double[][] {taps[0][0], taps[1][1]});
        wav(folder, CROSSTALK, rateHz, new double[][] {orNone(taps, 0), orNone(taps, 1)});
        ModelCurves curves = new ModelCurves(model);
        text(folder, CURVE, curves.curveCsv());
        text(folder, OVER_FREQUENCY, curves.overFrequencyCsv());
        ModelDescription description =
                ModelDescription.of(
                        model,
                        rateHz,
                        filters.lead(),
                        List.of(RESPONSE, CROSSTALK, CURVE, OVER_FREQUENCY));
        text(folder, MODEL, ResultsJson.write(description));
    }

    private static double[] orNone(double[][][] taps, int into) {
        double[] leak = taps[into][1 - into];
        return leak == null ? new double[taps[0][0].length] : leak;
    }

    private static void text(OutputFolder folder, String name, String text) {
        folder.write(name, text.getBytes(StandardCharsets.UTF_8));
    }

    private static void wav(OutputFolder folder, String name, int rateHz, double[][] taps) {
        WavFormat format = new WavFormat(rateHz, 2, WavEncoding.FLOAT_32);
        try (WavWriter writer = WavWriter.create(folder.path(name), format)) {
            writer.write(taps);
        }
    }
}
