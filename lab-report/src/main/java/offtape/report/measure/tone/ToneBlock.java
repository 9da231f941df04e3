package offtape.report.measure.tone;

/**
 * The strongest lines of a short block of sound, all channels together.
 *
 * @param hz frequency of the strongest line in the range that is searched
 * @param share its share of the power around it
 * @param power mean square of the block
 * @param secondHz frequency of the strongest line beside it that is no flutter of it
 * @param secondShare share of that one
 */
record ToneBlock(double hz, double share, double power, double secondHz, double secondShare) {

    /** Share that two tones must have between them. */
    private static final double PURE_PAIR = 0.8;

    /** A block in which nothing sounds. */
    static final ToneBlock EMPTY = new ToneBlock(1, 0, 0, 1, 0);

    boolean isTone(ToneRange range) {
        return share > range.pureShare() && power > range.silentPower();
    }

    /** Whether two tones sound at once, neither of which rules. */
    boolean isPair(ToneRange range) {
        return !isTone(range) && share + secondShare > PURE_PAIR && power > range.silentPower();
    }
}
