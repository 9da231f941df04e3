package offtape.cli.lineup;

/**
 * Follows the return of a high tone while the bias is raised: the level climbs to a maximum and
 * falls beyond it. The level alone does not tell the side, so what was seen before decides.
 *
 * @param side where the bias stands as far as is known
 * @param lowestDb lowest level before the maximum
 * @param highestDb the maximum so far
 * @param nowDb the level now
 */
public record BiasTrack(Side side, double lowestDb, double highestDb, double nowDb) {

    /** Where the bias stands. */
    public enum Side {
        /** Nothing was seen yet, or too little. */
        START,
        /** The level climbs: below the maximum. */
        CLIMBING,
        /** Beyond the maximum that was passed. */
        OVER,
        /** Went back to the maximum from beyond it. */
        BACK,
        /** The level fell before it climbed, or fell again from the maximum: either side. */
        UNKNOWN
    }

    /** A change that noise does not make. */
    private static final double STEP_DB = 0.5;

    private static final double MARGIN_DB = 0.25;

    /** Nothing seen. */
    static BiasTrack begin() {
        return new BiasTrack(Side.START, Double.NaN, Double.NaN, Double.NaN);
    }

    /** How far the level now lies below the maximum, dB; 0 before anything was seen. */
    public double belowDb() {
        return Double.isNaN(nowDb) ? 0 : Math.max(0, highestDb - nowDb);
    }

    /** The same with one more level. */
    BiasTrack with(double levelDb) {
        if (Double.isNaN(nowDb)) {
            return new BiasTrack(Side.START, levelDb, levelDb, levelDb);
        }
        double high = Math.max(highestDb, levelDb);
        return switch (side) {
            case START, CLIMBING -> climbing(levelDb, high);
            case OVER ->
                    levelDb > highestDb - MARGIN_DB / 2
                            ? new BiasTrack(Side.BACK, lowestDb, high, levelDb)
                            : new BiasTrack(Side.OVER, lowestDb, high, levelDb);
            case BACK ->
                    levelDb < high - 2 * MARGIN_DB ? lost(levelDb) : at(Side.BACK, high, levelDb);
            case UNKNOWN -> searching(levelDb);
        };
    }

    private BiasTrack climbing(double levelDb, double high) {
        boolean climbed = high - lowestDb >= STEP_DB;
        if (levelDb < high - MARGIN_DB) {
            return climbed ? at(Side.OVER, high, levelDb) : lost(levelDb);
        }
        double low = climbed ? lowestDb : Math.min(lowestDb, levelDb);
        return new BiasTrack(climbed ? Side.CLIMBING : Side.START, low, high, levelDb);
    }

    /** The old maximum tells nothing any more; a climb from the lowest level begins anew. */
    private BiasTrack searching(double levelDb) {
        double low = Math.min(lowestDb, levelDb);
        return levelDb - low >= STEP_DB
                ? new BiasTrack(Side.CLIMBING, low, levelDb, levelDb)
                : new BiasTrack(Side.UNKNOWN, low, highestDb, levelDb);
    }

    private BiasTrack at(Side next, double high, double levelDb) {
        return new BiasTrack(next, lowestDb, high, levelDb);
    }

    private BiasTrack lost(double levelDb) {
        return new BiasTrack(Side.UNKNOWN, levelDb, highestDb, levelDb);
    }
}
