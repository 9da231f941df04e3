package offtape.report.judge;

import org.apache.commons.math3.distribution.NormalDistribution;

/**
 * What a figure with its uncertainty says of a limit, and how likely that is wrong.
 *
 * @param kind the zone in which it lies
 * @param room how far within the limit it lies, negative if beyond, in the unit of the figure
 * @param wrongPercent chance that the truth lies on the other side of the limit: beyond it of what
 *     passes, within it of what fails, and the smaller of both of what is marginal
 */
record Outcome(Kind kind, double room, double wrongPercent) {

    /**
     * Zones about a limit (ISO 14253-1): it is met or not met beyond doubt only by more than the
     * expanded uncertainty.
     */
    enum Kind {
        PASS("pass"),
        MARGINAL("marginal"),
        FAIL("fail");

        private final String word;

        Kind(String word) {
            this.word = word;
        }

        /** As in the results. */
        String word() {
            return word;
        }
    }

    private static final double COVERAGE = 2;

    private static final NormalDistribution NORMAL = new NormalDistribution(null, 0, 1);

    /**
     * Of a figure's distance from the limit.
     *
     * @param room how far within the limit it lies, negative if beyond
     * @param uncertainty of that, expanded, k = 2; the truth is taken as normally distributed about
     *     the figure (JCGM 106, clause 7)
     */
    static Outcome of(double room, double uncertainty) {
        Kind kind =
                room > uncertainty ? Kind.PASS : room < -uncertainty ? Kind.FAIL : Kind.MARGINAL;
        double other =
                uncertainty > 0
                        ? NORMAL.cumulativeProbability(-COVERAGE * Math.abs(room) / uncertainty)
                        : 0;
        return new Outcome(kind, room, 100 * other);
    }

    /** The worse of two: what is less sure to be met, or lies farther out. */
    Outcome worse(Outcome other) {
        if (kind != other.kind) {
            return kind.compareTo(other.kind) > 0 ? this : other;
        }
        return room <= other.room ? this : other;
    }
}
