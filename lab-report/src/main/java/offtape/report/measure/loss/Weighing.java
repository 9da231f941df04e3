package offtape.report.measure.loss;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * The sets of causes that explain one curve, with how well each does.
 *
 * @param fits every set that was fitted; some with causes that are less than absent
 * @param least χ² of the best possible set
 * @param unexplainedDb standard deviation of what no set explains, dB
 * @param fitter that made them
 * @param witness of azimuth, or null
 */
record Weighing(
        LossCurve curve,
        List<SetFit> fits,
        double least,
        double unexplainedDb,
        SetFitter fitter,
        Witness witness) {

    /**
     * Sets whose χ² is at most this much above the least explain the curve as well: 4 are two
     * standard deviations, and 2 more are what a form chosen to fit (the order of a roll-off, one
     * aperture or two) gains by chance, as a parameter does (H. Akaike, IEEE Trans. Automatic
     * Control 19, 1974, 716-723).
     */
    static final double AS_WELL = 6;

    /** If the usual forms miss a curve by so much more, no other form mends it. */
    private static final double HOPELESS = 40;

    /** A misfit this many standard deviations over what chance makes is no chance. */
    private static final double BEYOND_CHANCE = 3;

    /** χ² by which a layer has to fit better than a space to be shown before it. */
    private static final double UNUSUAL = 2;

    private static final double MOST_UNEXPLAINED_DB = 10;
    private static final int HALVINGS = 20;
    private static final int ROUNDS = 2;

    /** Weighs every set; nothing if none can be fitted. */
    static Optional<Weighing> of(
            LossCurve curve, double speedMmPerS, double rateHz, Witness witness) {
        LossTerm known = witness == null ? null : LossTerm.of(Cause.AZIMUTH, speedMmPerS);
        List<Family> families = Family.all(speedMmPerS, rateHz, known);
        Optional<Weighing> result = weigh(curve, families, 0, witness);
        for (int round = 0; round < ROUNDS && result.isPresent(); round++) {
            SetFit closest = result.get().closest();
            if (closest.misfit() <= byChance(curve, closest, BEYOND_CHANCE)) {
                break;
            }
            double unexplained = unexplained(curve, closest.set(), witness);
            result = weigh(curve, families, unexplained, witness);
        }
        return result;
    }

    private static double byChance(LossCurve curve, SetFit fit, double deviations) {
        double freedom = curve.size() - fit.freedom();
        return freedom + deviations * Math.sqrt(2 * freedom);
    }

    /** So much unevenness that what is left of the best set is what chance makes. */
    private static double unexplained(LossCurve curve, CauseSet set, Witness witness) {
        List<Shelf> shelves = set.shelf() == null ? List.of() : List.of(set.shelf());
        double low = 0;
        double high = MOST_UNEXPLAINED_DB;
        for (int i = 0; i < HALVINGS; i++) {
            double middle = (low + high) / 2;
            List<SetFit> fits =
                    new SetFitter(curve, Covariance.of(curve, middle), shelves, witness)
                            .fit(set, 0, null);
            boolean missed = fits.stream().allMatch(f -> f.misfit() > byChance(curve, f, 0));
            if (missed && !fits.isEmpty()) {
                low = middle;
            } else {
                high = middle;
            }
        }
        return high;
    }

    private static Optional<Weighing> weigh(
            LossCurve curve, List<Family> families, double unexplained, Witness witness) {
        List<Shelf> shelves =
                families.stream().map(Family::shelf).filter(Objects::nonNull).distinct().toList();
        SetFitter fitter =
                new SetFitter(curve, Covariance.of(curve, unexplained), shelves, witness);
        Map<Optional<Shelf>, Double> usual = new HashMap<>();
        families.stream()
                .filter(Family::isUsual)
                .map(f -> new FamilyFits(f, fitter))
                .forEach(f -> usual.merge(f.shelf(), f.bound(), Math::min));
        double lowest = usual.values().stream().mapToDouble(b -> b).min().orElse(0);
        List<FamilyFits> all =
                families.stream()
                        .filter(f -> usual.get(Optional.ofNullable(f.shelf())) < lowest + HOPELESS)
                        .map(f -> new FamilyFits(f, fitter))
                        .sorted(Comparator.comparingDouble(FamilyFits::bound))
                        .toList();
        double least = Double.POSITIVE_INFINITY;
        List<SetFit> fits = new ArrayList<>();
        for (FamilyFits family : all) {
            if (family.bound() <= least + AS_WELL) {
                List<SetFit> own = family.parts(least + AS_WELL);
                for (SetFit fit : own) {
                    least = fit.possible() ? Math.min(least, fit.misfit()) : least;
                }
                fits.addAll(own);
            }
        }
        return Double.isFinite(least)
                ? Optional.of(new Weighing(curve, fits, least, unexplained, fitter, witness))
                : Optional.empty();
    }

    private SetFit closest() {
        return possible().min(Comparator.comparingDouble(SetFit::misfit)).orElseThrow();
    }

    /** The sets that explain the curve as well as the best. */
    Stream<SetFit> possible() {
        return fits.stream().filter(SetFit::possible).filter(f -> f.misfit() <= least + AS_WELL);
    }

    /**
     * The simplest sets that explain the curve, each the best of its causes: none holds all causes
     * of another. The one with the fewest causes comes first, and of those the one that fits best;
     * where a space fits about as well as a layer, the space, which is more usual (common practice,
     * no source).
     */
    List<SetFit> simplest() {
        List<SetFit> sorted =
                possible()
                        .sorted(
                                Comparator.comparingInt((SetFit f) -> f.set().causes().size())
                                        .thenComparingDouble(Weighing::unusual))
                        .toList();
        List<SetFit> simplest = new ArrayList<>();
        for (SetFit fit : sorted) {
            List<Cause> causes = fit.set().causes();
            if (simplest.stream().noneMatch(s -> causes.containsAll(s.set().causes()))) {
                simplest.add(fit.alone());
            }
        }
        return simplest;
    }

    private static double unusual(SetFit fit) {
        return fit.misfit() + (fit.set().index(Cause.THICKNESS) < 0 ? 0 : UNUSUAL);
    }

    /** What the curve leaves open of a cause that has a parameter; null if no set has it. */
    CauseRange range(Cause cause) {
        return CauseRange.of(cause, fits, least + AS_WELL);
    }
}
