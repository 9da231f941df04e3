package offtape.report.apply.correct;

/**
 * How much of a wanted gain is given. Up to 1 dB under the limit of boost it is given whole; there
 * the curve bends, reaches the limit where the limit and 1 dB are wanted, and falls by a decibel
 * for each further one that is wanted, down to nothing: where the machine returns that little, a
 * boost would cost headroom and bring back noise. Cuts bend likewise and stay at their limit.
 *
 * @param boostDb the largest gain, 0 dB or more
 * @param cutDb the largest cut, 0 dB or more
 */
record BoostLimit(double boostDb, double cutDb) {

    /** Half the width of the bend in terms of the wanted gain, dB. */
    private static final double KNEE_DB = 2;

    /** The gain in dB that is given for a wanted one. */
    double given(double wantedDb) {
        if (wantedDb < 0) {
            return -bentFlat(-wantedDb, cutDb);
        }
        double knee = Math.min(KNEE_DB, boostDb);
        double past = wantedDb - (boostDb - knee / 2);
        if (past <= 0) {
            return wantedDb;
        }
        return past < 2 * knee
                ? wantedDb - past * past / (2 * knee)
                : Math.max(0, 2 * boostDb + knee - wantedDb);
    }

    private static double bentFlat(double wanted, double limit) {
        double knee = Math.min(KNEE_DB, limit);
        double past = wanted - (limit - knee / 2);
        if (past <= 0) {
            return wanted;
        }
        return past < knee ? wanted - past * past / (2 * knee) : limit;
    }
}
