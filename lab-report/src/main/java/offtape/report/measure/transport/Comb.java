package offtape.report.measure.transport;

/**
 * What two heads on one moving tape do to its deviation: r(t) = δ(t) − δ(t − τ), so that a change
 * at the rate f is heard 1 − exp(−2πi·f·τ) times.
 *
 * @param seconds time from record to replay head, τ, above 0
 * @param sigmaSeconds its standard uncertainty
 */
record Comb(double seconds, double sigmaSeconds) {

    /** Power gain at a rate, 4·sin²(π·f·τ): 0 at every multiple of 1/τ. */
    double power(double hz) {
        double sine = Math.sin(Math.PI * hz * seconds);
        return 4 * sine * sine;
    }

    /** Variance of the complex gain at a rate that comes from the uncertainty of τ: (2π·f·σ)². */
    double variance(double hz) {
        double turn = 2 * Math.PI * hz * sigmaSeconds;
        return turn * turn;
    }

    /**
     * Change of the logarithm of an undone power with τ at a rate, 1/s: −d ln(4·sin²)/dτ.
     *
     * @param least power gain below which nothing is undone
     */
    double slope(double hz, double least) {
        double turn = Math.PI * hz * seconds;
        return -4 * Math.PI * hz * 2 * Math.sin(turn) * Math.cos(turn) / (power(hz) + least);
    }
}
