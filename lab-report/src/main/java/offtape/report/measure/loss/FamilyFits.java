package offtape.report.measure.loss;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/**
 * Fits of a family's sets, from the whole down: a set that misses the curve need not be thinned
 * further, since no part of it fits better.
 */
final class FamilyFits {

    /** A space, an amplifier, a gap, a layer. */
    private static final int[] ORDER = {0, 3, 1, 2};

    /** Room for fits that end in another valley. */
    private static final double ROOM = 3;

    private final Family family;
    private final SetFitter fitter;
    private final List<SetFit> whole;

    private FamilyFits(Family family, SetFitter fitter, List<SetFit> whole) {
        this.family = family;
        this.fitter = fitter;
        this.whole = whole;
    }

    /** The whole set, reached by adding one cause after another. */
    static FamilyFits whole(Family family, SetFitter fitter) {
        List<SetFit> fits = List.of();
        int choice = 0;
        for (int added : ORDER) {
            choice |= 1 << added;
            SetFit near =
                    fits.stream().min(Comparator.comparingDouble(SetFit::misfit)).orElse(null);
            fits = fitter.fit(family.set(choice), family.penalty(), near);
        }
        return new FamilyFits(family, fitter, fits);
    }

    /** The equalisation of the family, if it is wrong. */
    Optional<Shelf> shelf() {
        return Optional.ofNullable(family.shelf());
    }

    /** χ² that no set of the family comes below; nothing is known if the fit failed. */
    double bound() {
        return bound(whole);
    }

    private static double bound(List<SetFit> fits) {
        return fits.stream().mapToDouble(SetFit::misfit).min().orElse(Double.NEGATIVE_INFINITY)
                - ROOM;
    }

    /**
     * The fits of all sets that come near enough.
     *
     * @param known a χ² above which nothing is of interest, or infinity; it falls as possible sets
     *     are found
     */
    List<SetFit> parts(double known) {
        List<SetFit> all = new ArrayList<>(whole);
        double[] bounds = new double[family.size()];
        int top = family.size() - 1;
        bounds[top] = bound();
        double limit = lowered(known, whole);
        for (int choice = top - 1; choice >= 0; choice--) {
            double least = Double.NEGATIVE_INFINITY;
            for (int i = 0; i < family.free().size(); i++) {
                if ((choice >> i & 1) == 0) {
                    least = Math.max(least, bounds[choice | 1 << i]);
                }
            }
            bounds[choice] = least;
            if (least <= limit) {
                List<SetFit> fits = fitter.fit(family.set(choice), family.penalty(), null);
                bounds[choice] = Math.max(least, bound(fits));
                limit = lowered(limit, fits);
                all.addAll(fits);
            }
        }
        return all;
    }

    private static double lowered(double limit, List<SetFit> fits) {
        double lowest = limit;
        for (SetFit fit : fits) {
            lowest = fit.possible() ? Math.min(lowest, fit.misfit() + Weighing.AS_WELL) : lowest;
        }
        return lowest;
    }
}
