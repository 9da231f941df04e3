package offtape.report.measure.loss;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Fits of a family's sets. One cause is added after another until the whole set is fitted; then
 * causes are left out again. A set that misses the curve need not be thinned further, since no part
 * of it fits better.
 */
final class FamilyFits {

    /** A space, an amplifier, a gap, a layer. */
    private static final int[] ORDER = {0, 3, 1, 2};

    /** Room for fits that end in another valley. */
    private static final double ROOM = 3;

    private final Family family;
    private final SetFitter fitter;
    private final Map<Integer, List<SetFit>> fits = new HashMap<>();
    private final double bound;

    /** Fits the whole set, and what lies on the way to it. */
    FamilyFits(Family family, SetFitter fitter) {
        this.family = family;
        this.fitter = fitter;
        SetFit near = null;
        int choice = 0;
        double least = Double.POSITIVE_INFINITY;
        for (int added : ORDER) {
            choice |= 1 << added;
            List<SetFit> found = fitter.fit(family.set(choice), family.penalty(), near);
            fits.put(choice, found);
            near = found.stream().min(Comparator.comparingDouble(SetFit::misfit)).orElse(near);
            least = near == null ? least : Math.min(least, near.misfit());
        }
        bound = least - ROOM;
    }

    /** The equalisation of the family, if it is wrong. */
    Optional<Shelf> shelf() {
        return Optional.ofNullable(family.shelf());
    }

    /** χ² that no set of the family comes below. */
    double bound() {
        return bound;
    }

    /**
     * The fits of all sets that come near enough.
     *
     * @param known a χ² above which nothing is of interest, or infinity; it falls as possible sets
     *     are found
     */
    List<SetFit> parts(double known) {
        List<SetFit> all = new ArrayList<>();
        double[] bounds = new double[family.size()];
        double limit = known;
        for (int choice = family.size() - 1; choice >= 0; choice--) {
            double least = bound;
            for (int i = 0; i < family.free().size(); i++) {
                if ((choice >> i & 1) == 0) {
                    least = Math.max(least, bounds[choice | 1 << i]);
                }
            }
            bounds[choice] = least;
            if (least <= limit) {
                List<SetFit> own = fits(choice);
                double closest = own.stream().mapToDouble(SetFit::misfit).min().orElse(least);
                bounds[choice] = Math.max(least, closest - ROOM);
                for (SetFit fit : own) {
                    limit =
                            fit.possible()
                                    ? Math.min(limit, fit.misfit() + Weighing.AS_WELL)
                                    : limit;
                }
                all.addAll(own);
            }
        }
        return all;
    }

    private List<SetFit> fits(int choice) {
        return fits.containsKey(choice)
                ? fits.get(choice)
                : fitter.fit(family.set(choice), family.penalty(), null);
    }
}
