package offtape.report.apply.model;

import java.util.Locale;

/** The curve of a model as tables. */
final class ModelCurves {

    private static final int LOWEST_DB = -40;
    private static final int HIGHEST_DB = 20;
    private static final double[] OVER_HZ = {
        63, 125, 250, 500, 1000, 2000, 4000, 6300, 8000, 10_000, 12_500, 16_000
    };

    private final MachineModel model;

    ModelCurves(MachineModel model) {
        this.model = model;
    }

    /** The curve of each channel at 1 kHz, for inputs on both sides of zero. */
    String curveCsv() {
        StringBuilder csv =
                new StringBuilder(
                        "levelDb,input,leftOutput,rightOutput,leftK3Percent,rightK3Percent\n");
        for (int sign = -1; sign <= 1; sign += 2) {
            for (int step = LOWEST_DB; step <= HIGHEST_DB; step++) {
                int db = sign < 0 ? LOWEST_DB + HIGHEST_DB - step : step;
                double input = sign * Math.pow(10, db / 20.0);
                csv.append(
                        String.format(
                                Locale.ROOT,
                                "%d,%.8g,%.8g,%.8g,%.6g,%.6g\n",
                                db,
                                input,
                                output(0, input),
                                output(1, input),
                                k3(0, 1000, db),
                                k3(1, 1000, db)));
            }
        }
        return csv.toString();
    }

    private double output(int channel, double input) {
        BentModel bent = model.channels()[channel].bent();
        double raised = bent.emphasis().gain(1000);
        return bent.curve().of(raised * input) / raised;
    }

    private double k3(int channel, double hz, double levelDb) {
        ChannelModel c = model.channels()[channel];
        return 100 * c.bent().third(hz, levelDb, f -> LogGrid.at(c.levelDb(), f));
    }

    /** Compression and third harmonic of tones over frequency and level. */
    String overFrequencyCsv() {
        StringBuilder csv =
                new StringBuilder(
                        "frequencyHz,levelDb,leftCompressionDb,rightCompressionDb,"
                                + "leftK3Percent,rightK3Percent\n");
        for (double hz : OVER_HZ) {
            for (int db = LOWEST_DB; db <= HIGHEST_DB; db += 2) {
                csv.append(
                        String.format(
                                Locale.ROOT,
                                "%.0f,%d,%.6g,%.6g,%.6g,%.6g\n",
                                hz,
                                db,
                                Math.max(0, -model.channels()[0].bent().gainDb(hz, db)),
                                Math.max(0, -model.channels()[1].bent().gainDb(hz, db)),
                                k3(0, hz, db),
                                k3(1, hz, db)));
            }
        }
        return csv.toString();
    }
}
