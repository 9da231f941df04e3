package offtape.report.measure.loss;

/**
 * The parameters of a fitted set at which χ² stays below a limit, no cause being less than absent.
 * χ² is taken for a parabola: along one parameter the others move in proportion, and what is left
 * of the limit is room for them.
 */
final class FitRegion {

    private static final int PLACES = 32;

    private final SetFit fit;
    private final double limit;

    /**
     * @param limit largest χ²
     */
    FitRegion(SetFit fit, double limit) {
        this.fit = fit;
        this.limit = limit;
    }

    /** Lowest and highest figure of a term of the set, or null if there is none. */
    double[] figures(int term) {
        if (!(limit >= fit.misfit())) {
            return null;
        }
        LossTerm own = fit.set().terms().get(term);
        int layer = fit.set().index(Cause.THICKNESS);
        if (layer < 0 || !fit.set().terms().get(layer).isBeyondSpacing()) {
            double[] range = range(term);
            return range == null ? null : new double[] {own.figure(range[0]), own.figure(range[1])};
        }
        return besideLayer(own, term, layer, fit.set().index(Cause.SPACING));
    }

    /** {lowest, highest} of a parameter, or null. */
    private double[] range(int term) {
        double[][] c = fit.covariance();
        double[] theta = fit.theta();
        double variance = c[term][term];
        double reach = Math.sqrt((limit - fit.misfit()) * variance);
        double low = Math.max(0, theta[term] - reach);
        double high = theta[term] + reach;
        for (int i = 0; i < theta.length; i++) {
            double along = c[i][term] / variance;
            double zero = theta[term] - theta[i] / along;
            if (i == term) {
                continue;
            }
            if (along > 0) {
                low = Math.max(low, zero);
            } else if (along < 0) {
                high = Math.min(high, zero);
            } else if (theta[i] < 0) {
                return null;
            }
        }
        return low <= high ? new double[] {low, high} : null;
    }

    /**
     * Where a space s and a layer δ are in the set, s + δ/2 and δ² are its parameters. Their values
     * within the limit are gone through; the space is what is left of the sum.
     */
    private double[] besideLayer(LossTerm own, int term, int layer, int space) {
        double[] found = {Double.POSITIVE_INFINITY, Double.NEGATIVE_INFINITY};
        double[][] c = fit.covariance();
        double room = limit - fit.misfit();
        double reach = Math.sqrt(room * c[layer][layer]);
        double top = fit.theta()[layer] + reach;
        double bottom = Math.max(0, fit.theta()[layer] - reach);
        for (int i = 0; i <= PLACES && top >= bottom; i++) {
            double square = bottom + (top - bottom) * i / PLACES;
            double off = square - fit.theta()[layer];
            double left = Math.max(0, room - off * off / c[layer][layer]);
            double middle = fit.theta()[space] + c[space][layer] / c[layer][layer] * off;
            double spread = Math.sqrt(left * conditional(space, layer));
            double half = Math.sqrt(square) / 2;
            for (int j = -PLACES / 2; j <= PLACES / 2; j++) {
                double sum = middle + spread * 2 * j / PLACES;
                double rest = left * (1 - 4.0 * j * j / PLACES / PLACES);
                if (sum >= half) {
                    take(found, own, term, new double[] {sum - half, 2 * half, sum, square}, rest);
                }
            }
        }
        return found[0] <= found[1] ? found : null;
    }

    /**
     * Takes in one place.
     *
     * @param place space, layer, and the two parameters
     * @param rest what is left of the limit
     */
    private void take(double[] found, LossTerm own, int term, double[] place, double rest) {
        int layer = fit.set().index(Cause.THICKNESS);
        int space = fit.set().index(Cause.SPACING);
        double low = 0;
        double high = 0;
        for (int i = 0; i < fit.theta().length; i++) {
            if (i == layer || i == space) {
                continue;
            }
            double[] told = given(i, space, place[2], layer, place[3]);
            double spread = Math.sqrt(rest * told[1]);
            if (told[0] + spread < 0) {
                return;
            }
            if (i == term) {
                low = own.figure(Math.max(0, told[0] - spread));
                high = own.figure(told[0] + spread);
            }
        }
        if (term == space) {
            low = place[0];
            high = place[0];
        } else if (term == layer) {
            low = place[1];
            high = place[1];
        }
        found[0] = Math.min(found[0], low);
        found[1] = Math.max(found[1], high);
    }

    private double conditional(int one, int given) {
        double[][] c = fit.covariance();
        return Math.max(0, c[one][one] - c[one][given] * c[one][given] / c[given][given]);
    }

    /** Mean and variance of a parameter where two others have given values. */
    private double[] given(int i, int a, double atA, int b, double atB) {
        double[][] c = fit.covariance();
        double determinant = c[a][a] * c[b][b] - c[a][b] * c[a][b];
        double toA = (c[i][a] * c[b][b] - c[i][b] * c[a][b]) / determinant;
        double toB = (c[i][b] * c[a][a] - c[i][a] * c[a][b]) / determinant;
        double mean = fit.theta()[i] + toA * (atA - fit.theta()[a]) + toB * (atB - fit.theta()[b]);
        double variance = c[i][i] - toA * c[i][a] - toB * c[i][b];
        return new double[] {mean, Math.max(0, variance)};
    }
}
