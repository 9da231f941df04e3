package offtape.report.measure.loss;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * A set of causes fitted to a curve, without regard to whether causes may be less than absent.
 *
 * @param theta parameters of its terms
 * @param covariance of theta
 * @param offsetDb added to the curve
 * @param misfit χ²: sum of squared whitened residuals, and what its family adds
 */
record SetFit(CauseSet set, double[] theta, double[][] covariance, double offsetDb, double misfit) {

    /** Number of free values. */
    int freedom() {
        return theta.length + 1;
    }

    /** Whether no cause is less than absent. */
    boolean possible() {
        return Arrays.stream(alone().theta()).allMatch(t -> t >= 0);
    }

    /**
     * The same with a space and a layer as two causes that each stand for themselves; its
     * covariance is then not told.
     */
    SetFit alone() {
        int layer = set.index(Cause.THICKNESS);
        if (layer < 0 || !set.terms().get(layer).isBeyondSpacing()) {
            return this;
        }
        List<LossTerm> terms = new ArrayList<>(set.terms());
        terms.set(layer, terms.get(layer).alone());
        double[] own = theta.clone();
        own[layer] = theta[layer] < 0 ? theta[layer] : Math.sqrt(theta[layer]);
        own[set.index(Cause.SPACING)] -= Math.max(0, own[layer]) / 2;
        return new SetFit(
                new CauseSet(terms, set.shelf()), own, new double[0][0], offsetDb, misfit);
    }

    /** The whole curve at a frequency, dB. */
    double db(double hz) {
        return offsetDb + set.db(theta, hz);
    }

    /** Root mean square of what is left, dB. */
    double residualDb(LossCurve curve) {
        double sum = 0;
        for (int i = 0; i < curve.size(); i++) {
            double rest = curve.db()[i] - db(curve.hz()[i]);
            sum += rest * rest;
        }
        return Math.sqrt(sum / curve.size());
    }
}
