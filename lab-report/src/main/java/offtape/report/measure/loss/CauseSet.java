package offtape.report.measure.loss;

import java.util.ArrayList;
import java.util.List;

/**
 * Causes that together may explain a response.
 *
 * @param terms causes with a parameter each
 * @param shelf a wrong equalisation, or null
 */
record CauseSet(List<LossTerm> terms, Shelf shelf) {

    CauseSet {
        terms = List.copyOf(terms);
    }

    /** The causes. */
    List<Cause> causes() {
        List<Cause> causes = new ArrayList<>(terms.stream().map(LossTerm::cause).toList());
        if (shelf != null) {
            causes.add(Cause.EQUALISATION);
        }
        return causes;
    }

    /** Place of a cause among the terms, or −1. */
    int index(Cause cause) {
        for (int i = 0; i < terms.size(); i++) {
            if (terms.get(i).cause() == cause) {
                return i;
            }
        }
        return -1;
    }

    /** The curve without an offset, dB. */
    double db(double[] theta, double hz) {
        double sum = shelf == null ? 0 : shelf.db(hz);
        for (int i = 0; i < terms.size(); i++) {
            sum += terms.get(i).db(theta[i], hz);
        }
        return sum;
    }
}
