package offtape.report.apply.correct;

import java.nio.file.Path;
import java.util.List;

/**
 * What is wanted of a correction.
 *
 * @param target file with the response wanted, or null for a flat one
 * @param ratesHz sample rates of the filters, each within what {@link
 *     offtape.core.filter.FirDesign} makes; empty for that of the session's recording
 * @param mostBoostDb largest boost, 0 dB or more
 * @param mostCutDb largest cut, 0 dB or more
 * @param bands bands of the parametric equaliser, at least 1
 * @param sameFilter whether both channels get the filter of their mean
 * @param k3Percent values of K3 to tell the level of, besides the usual ones
 */
public record CorrectionWish(
        Path target,
        List<Integer> ratesHz,
        double mostBoostDb,
        double mostCutDb,
        int bands,
        boolean sameFilter,
        List<Double> k3Percent) {

    /** Boost and cut if nobody says otherwise, dB. */
    public static final double USUAL_LIMIT_DB = 12;

    /** Bands if nobody says otherwise. */
    public static final int USUAL_BANDS = 4;

    /** Copies the lists. */
    public CorrectionWish {
        ratesHz = List.copyOf(ratesHz);
        k3Percent = List.copyOf(k3Percent);
    }

    /** A flat return, all else as usual. */
    public static CorrectionWish usual() {
        return new CorrectionWish(
                null, List.of(), USUAL_LIMIT_DB, USUAL_LIMIT_DB, USUAL_BANDS, false, List.of());
    }
}
