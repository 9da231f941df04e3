package offtape.report.measure.loss;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import offtape.core.unit.Quantity;
import offtape.report.result.LossAlternative;
import offtape.report.result.LossCause;
import offtape.report.result.LossCorrelation;
import offtape.report.result.LossFit;
import offtape.report.result.Response;
import offtape.report.result.Session;

/** From weighed sets of causes to what is told of them. */
final class LossReport {

    /** An edge that may lie this many times higher is stated by its lower limit. */
    private static final double WIDEST_EDGE = 2.5;

    private final Weighing weighing;
    private final Response response;
    private final Session session;
    private final List<SetFit> simplest;
    private final SetFit best;
    private final double[] hz;

    LossReport(Weighing weighing, Response response, Session session) {
        this.weighing = weighing;
        this.response = response;
        this.session = session;
        this.simplest = weighing.simplest();
        this.best = simplest.get(0);
        this.hz = weighing.curve().hz();
    }

    LossFit fit() {
        double residual = best.residualDb(weighing.curve());
        double[] fitted = Arrays.stream(hz).map(best::db).toArray();
        List<LossCause> causes = causes();
        return new LossFit(
                response.channel(),
                Quantity.known(residual, "dB", 2 * residual / Math.sqrt(2.0 * hz.length)),
                weighing.unexplainedDb(),
                hz,
                fitted,
                causes,
                simplest.stream().map(this::told).toList(),
                correlations(),
                new LossWords(weighing, simplest, response, session).sentences(causes));
    }

    private LossAlternative told(SetFit fit) {
        return new LossAlternative(
                fit.set().causes().stream().map(Cause::key).toList(),
                fit.misfit() - weighing.least(),
                fit.residualDb(weighing.curve()),
                LossWords.figures(fit, weighing.witness()));
    }

    private List<LossCause> causes() {
        List<LossCause> causes = new ArrayList<>();
        for (Cause cause : Cause.values()) {
            if (cause == Cause.EQUALISATION) {
                equalisation().ifPresent(causes::add);
                continue;
            }
            CauseRange range = weighing.range(cause);
            if (range != null) {
                causes.add(cause(cause, range));
            }
        }
        return causes;
    }

    private LossCause cause(Cause cause, CauseRange range) {
        boolean edge = cause == Cause.UPPER_EDGE;
        Quantity most = quantity(cause, range.high());
        boolean wide = edge && range.high() > WIDEST_EDGE * range.low();
        if (range.low() > 0 && !wide) {
            return new LossCause(
                    cause.key(),
                    told(most, quantity(cause, range.low())),
                    null,
                    null,
                    null,
                    null,
                    share(cause));
        }
        return new LossCause(
                cause.key(),
                Quantity.unknown(LossWords.limit(cause, most)),
                edge ? null : most.value(),
                edge ? most.value() : null,
                most.unit(),
                null,
                share(cause));
    }

    private static Quantity told(Quantity one, Quantity other) {
        double middle = (one.value() + other.value()) / 2;
        return Quantity.known(middle, one.unit(), Math.abs(one.value() - other.value()) / 2);
    }

    /** A figure in the unit in which it is told. */
    private Quantity quantity(Cause cause, double figure) {
        double minutes = weighing.witness() == null ? 0 : weighing.witness().minutesPerUm();
        if (cause == Cause.AZIMUTH && minutes > 0) {
            return Quantity.known(minutes * figure, "arc min", 0);
        }
        return Quantity.known(cause == Cause.UPPER_EDGE ? 1 / figure : figure, cause.unit(), 0);
    }

    /** Told if no set does without it and all that explain the curve have the same constants. */
    private Optional<LossCause> equalisation() {
        List<SetFit> possible = weighing.possible().toList();
        Optional<SetFit> closest =
                possible.stream()
                        .filter(f -> f.set().shelf() != null)
                        .min(Comparator.comparingDouble(SetFit::misfit));
        return closest.map(
                fit -> {
                    Shelf shelf = fit.set().shelf();
                    boolean same = possible.stream().allMatch(f -> shelf.equals(f.set().shelf()));
                    double deviation = weighing.fitter().shelfDeviation(fit);
                    boolean sure = same && 2 * deviation < 1;
                    return new LossCause(
                            Cause.EQUALISATION.key(),
                            sure
                                    ? Quantity.known(
                                            shelf.highDb(),
                                            "dB",
                                            2 * deviation * Math.abs(shelf.highDb()))
                                    : Quantity.unknown(LossWords.unsureShelf()),
                            null,
                            null,
                            null,
                            LossWords.constants(shelf),
                            share(Cause.EQUALISATION));
                });
    }

    /** What the simplest set lets a cause take, dB re 1 kHz. */
    private double[] share(Cause cause) {
        return best.set().causes().contains(cause)
                ? Arrays.stream(hz).map(f -> LossWords.shareDb(best, cause, f)).toArray()
                : new double[0];
    }

    private List<LossCorrelation> correlations() {
        List<LossTerm> terms = new ArrayList<>();
        List<Double> thetas = new ArrayList<>();
        for (int i = 0; i < weighing.fits().size(); i++) {
            SetFit fit = weighing.fits().get(i);
            for (int k = 0; k < fit.theta().length; k++) {
                LossTerm term = fit.set().terms().get(k);
                if (terms.stream().noneMatch(t -> t.cause() == term.cause())) {
                    terms.add(term);
                    thetas.add(fit.theta()[k]);
                }
            }
        }
        List<LossCorrelation> all = new ArrayList<>();
        for (int a = 0; a < terms.size(); a++) {
            for (int b = a + 1; b < terms.size(); b++) {
                double r =
                        weighing.fitter()
                                .correlation(
                                        terms.get(a), thetas.get(a), terms.get(b), thetas.get(b));
                if (Double.isFinite(r)) {
                    all.add(
                            new LossCorrelation(
                                    terms.get(a).cause().key(), terms.get(b).cause().key(), r));
                }
            }
        }
        return all;
    }
}
