package offtape.report.measure.loss;

import java.util.ArrayList;
import java.util.List;

/**
 * Sets of causes that are parts of one whole set: of one order of an amplifier's roll-off, one form
 * of aperture and one equalisation.
 *
 * @param fixed what is in every set
 * @param free what may be in a set, a space first
 * @param shelf a wrong equalisation, or null
 * @param penalty added to every χ² of the family
 */
record Family(List<LossTerm> fixed, List<LossTerm> free, Shelf shelf, double penalty) {

    private static final int[] ORDERS = {1, 2, 4};

    /** Rates at which the highs end within what is fitted. */
    private static final double LEAST_RATE_HZ = 40_000;

    private static final int APERTURE = 1;
    private static final int EDGE = 3;

    /** How often a machine is set to the wrong equalisation: rarely; no source. */
    private static final double WRONG = 0.15;

    /**
     * All families.
     *
     * @param rateHz sample rate of the recording
     * @param known the head's azimuth as the channels' delay tells it, or null; with it what a gap
     *     takes is told from what azimuth takes
     */
    static List<Family> all(double speedMmPerS, double rateHz, LossTerm known) {
        List<LossTerm> edges = new ArrayList<>();
        for (int order : ORDERS) {
            edges.add(LossTerm.rollOff(order, 0));
        }
        if (rateHz > LEAST_RATE_HZ) {
            edges.add(LossTerm.rollOff(2, rateHz));
        }
        List<LossTerm> fixed = known == null ? List.of() : List.of(known);
        LossTerm spacing = LossTerm.of(Cause.SPACING, speedMmPerS);
        LossTerm layer = LossTerm.of(Cause.THICKNESS, speedMmPerS);
        List<LossTerm> apertures =
                known == null
                        ? List.of(
                                LossTerm.apertures(1, speedMmPerS),
                                LossTerm.apertures(2, speedMmPerS))
                        : List.of(LossTerm.of(Cause.GAP, speedMmPerS));
        List<Shelf> shelves = new ArrayList<>();
        shelves.add(null);
        shelves.addAll(Shelf.of(speedMmPerS));
        // One of many pairs fits by chance more easily than none: 2·ln of the odds against each.
        double against = 2 * Math.log((shelves.size() - 1) * (1 - WRONG) / WRONG);
        List<Family> families = new ArrayList<>();
        for (Shelf shelf : shelves) {
            for (LossTerm aperture : apertures) {
                for (LossTerm edge : edges) {
                    List<LossTerm> free = List.of(spacing, aperture, layer, edge);
                    families.add(new Family(fixed, free, shelf, shelf == null ? 0 : against));
                }
            }
        }
        return families;
    }

    /** Whether the amplifier is of second order and there is one aperture. */
    boolean isUsual() {
        return free.get(APERTURE).order() < 2 && free.get(EDGE).order() == ORDERS[1];
    }

    /** Number of sets. */
    int size() {
        return 1 << free.size();
    }

    /**
     * A set.
     *
     * @param choice each bit says whether one of the free causes is in it; the highest has all and
     *     fits at least as well as any other
     */
    CauseSet set(int choice) {
        List<LossTerm> terms = new ArrayList<>(fixed);
        boolean spaced = (choice & 1) == 1;
        for (int i = 0; i < free.size(); i++) {
            if ((choice >> i & 1) == 1) {
                LossTerm term = free.get(i);
                boolean beside = spaced && term.cause() == Cause.THICKNESS;
                terms.add(beside ? term.beyondSpacing() : term);
            }
        }
        return new CauseSet(terms, shelf);
    }
}
