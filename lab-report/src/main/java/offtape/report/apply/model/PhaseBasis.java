package offtape.report.apply.model;

/**
 * What the phase of one channel is made of: the least phase that the slopes of each band of its
 * magnitude give, and turns as 1/f and f³, which slopes below and above what is heard would give
 * beside a delay.
 */
final class PhaseBasis {

    /** Unknowns of a channel: a share of each band, and the turns from below and from above. */
    static final int SIZE = 19;

    private static final int BANDS = SIZE - 2;
    private static final double FIRST_HZ = 12;
    private static final double BANDS_AN_OCTAVE = 1.5;
    private static final double ELECTRONIC_BELOW_HZ = 600;
    private static final double BASS_DEVIATION = 0.3;
    private static final double HIGHS_DEVIATION = 0.4;
    private static final double BELOW_DEVIATION = 0.15;
    private static final double BELOW_HZ = 16;
    private static final double ABOVE_DEVIATION = 0.3;
    private static final double ABOVE_HZ = 20_000;
    private static final double ALIKE_OCTAVES = 1;

    private final double[] db;
    private final double[] electronicDb;
    private final double[][] turns = new double[SIZE][];

    /**
     * @param db magnitude of the channel on the grid
     * @param electronicDb the part of it that amplifiers are known to take in the highs, on the
     *     grid; null if no causes are known
     */
    PhaseBasis(double[] db, double[] electronicDb) {
        this.db = db;
        this.electronicDb = electronicDb;
        for (int k = 0; k < BANDS; k++) {
            double end = k == BANDS - 1 ? Double.POSITIVE_INFINITY : startHz(k + 1);
            turns[k] = LeastPhase.of(db, k == 0 ? 0 : startHz(k), end);
        }
        turns[BANDS] = LogGrid.sampled(hz -> BELOW_HZ / hz);
        turns[BANDS + 1] = LogGrid.sampled(hz -> -Math.pow(Math.min(hz / ABOVE_HZ, 1.2), 3));
    }

    private static double startHz(int band) {
        return FIRST_HZ * Math.pow(2, band / BANDS_AN_OCTAVE);
    }

    /** What one unit of an unknown turns at a frequency, radians. */
    double turn(int unknown, double hz) {
        return LogGrid.at(turns[unknown], hz);
    }

    /** What is expected of an unknown: amplifiers turn all of the least phase, losses none. */
    double mean(int unknown) {
        if (unknown >= BANDS) {
            return 0;
        }
        double low = startHz(unknown);
        double high = startHz(unknown + 1);
        if (high < ELECTRONIC_BELOW_HZ) {
            return 1;
        }
        double all = LogGrid.at(db, high) - LogGrid.at(db, low);
        if (electronicDb == null || Math.abs(all) < 0.02) {
            return 0.5;
        }
        double own = LogGrid.at(electronicDb, high) - LogGrid.at(electronicDb, low);
        return Math.max(0, Math.min(1, own / all));
    }

    /** Whether an unknown is the share of a band in which losses are expected. */
    static boolean isOfHighs(int unknown) {
        return unknown < BANDS && startHz(unknown + 1) >= ELECTRONIC_BELOW_HZ;
    }

    /** How the deviations of two unknowns from what is expected go together. */
    static double covariance(int one, int other) {
        if (one >= BANDS || other >= BANDS) {
            double own = one == BANDS ? BELOW_DEVIATION : ABOVE_DEVIATION;
            return one == other ? own * own : 0;
        }
        double apart = Math.abs(one - other) / BANDS_AN_OCTAVE / ALIKE_OCTAVES;
        double own = one == other ? 1e-4 : 0;
        return deviation(one) * deviation(other) * (Math.exp(-apart) + own);
    }

    private static double deviation(int band) {
        return startHz(band + 1) < ELECTRONIC_BELOW_HZ ? BASS_DEVIATION : HIGHS_DEVIATION;
    }

    /** The phase that unknowns give, radians, on the grid. */
    double[] phase(double[] unknowns) {
        double[] phase = new double[LogGrid.SIZE];
        for (int k = 0; k < SIZE; k++) {
            for (int i = 0; i < phase.length; i++) {
                phase[i] += unknowns[k] * turns[k][i];
            }
        }
        return phase;
    }
}
