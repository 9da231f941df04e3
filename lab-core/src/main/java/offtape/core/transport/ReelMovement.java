package offtape.core.transport;

/**
 * How fast the rate of a reel changes. With r² growing or shrinking by h·v/π a second, f = v/(2π·r)
 * changes by h·f²/r = 2π·h·f³/v a second.
 */
public final class ReelMovement {

    private ReelMovement() {}

    /**
     * Change of the rate, Hz/s, without its sign.
     *
     * @param rateHz rate of the reel
     * @param speedMmPerS tape speed
     * @param thicknessMicrometres of the tape
     */
    public static double hzPerSecond(
            double rateHz, double speedMmPerS, double thicknessMicrometres) {
        return 2 * Math.PI * thicknessMicrometres / 1000 * Math.pow(rateHz, 3) / speedMmPerS;
    }
}
