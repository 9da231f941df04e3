package offtape.report.apply.model;

import java.util.List;
import java.util.function.DoubleUnaryOperator;
import offtape.core.model.Emphasis;

/**
 * The emphasis ahead of a curve: what makes the curve that the ladders tell agree best with the
 * harmonics of the loud sweep, with what it loses against the quiet one, and with the ladder in the
 * highs. Time constants are tried on a grid that is then made finer around the best.
 */
final class EmphasisFit {

    private static final double MOST_SECONDS = 250e-6;
    private static final double STEP_SECONDS = 12.5e-6;
    private static final double[] SHELVES = {0, 0.1, 0.2, 0.35};
    private static final double FINEST_SECONDS = 0.5e-6;

    /** A sample may be off by so many deviations before it counts less. */
    private static final double FAR = 4;

    private final CurveFit fit;
    private final List<CurveSample> samples;
    private final DoubleUnaryOperator levels;
    private final double quietDb;

    /**
     * @param fit the curve behind any emphasis
     * @param samples what depends on frequency
     * @param levels the machine's response, dB at a frequency
     * @param quietDb level of the sweep that others are held against, dB re reference
     */
    EmphasisFit(
            CurveFit fit, List<CurveSample> samples, DoubleUnaryOperator levels, double quietDb) {
        this.fit = fit;
        this.samples = samples;
        this.levels = levels;
        this.quietDb = quietDb;
    }

    private record Tried(BentModel model, double misfit) {

        Tried orBetter(Tried other) {
            return other.misfit < misfit ? other : this;
        }
    }

    /** The model that agrees best; without emphasis if nothing tells one. */
    BentModel best() {
        Tried best = tried(0, 0);
        if (samples.isEmpty()) {
            return best.model();
        }
        for (double seconds = STEP_SECONDS; seconds <= MOST_SECONDS; seconds += STEP_SECONDS) {
            best = best.orBetter(tried(seconds, 0));
        }
        for (double shelf : SHELVES) {
            best = best.orBetter(tried(best.model().emphasis().seconds(), shelf));
        }
        return finer(best).model();
    }

    private Tried finer(Tried coarse) {
        Tried best = coarse;
        double step = STEP_SECONDS / 2;
        double shelfStep = 0.1;
        while (step > FINEST_SECONDS) {
            Emphasis e = best.model().emphasis();
            double share = e.seconds() == 0 ? 0 : e.shelfSeconds() / e.seconds();
            Tried next = best;
            for (int i = -1; i <= 1; i++) {
                for (int j = -1; j <= 1; j++) {
                    next = next.orBetter(tried(e.seconds() + i * step, share + j * shelfStep));
                }
            }
            boolean stays = next == best;
            best = next;
            step = stays ? step / 2 : step;
            shelfStep = stays ? shelfStep / 2 : shelfStep;
        }
        return best;
    }

    private Tried tried(double seconds, double shelfShare) {
        double least = Math.max(0, seconds);
        double share = Math.max(0, Math.min(0.8, shelfShare));
        BentModel model = fit.behind(new Emphasis(least, share * least));
        double misfit = 0;
        for (CurveSample s : samples) {
            double off = Math.abs(expected(model, s) - s.value()) / s.deviation();
            misfit += off < FAR ? off * off : FAR * (2 * off - FAR);
        }
        return new Tried(model, misfit);
    }

    private double expected(BentModel model, CurveSample s) {
        double hz = s.frequencyHz();
        return switch (s.kind()) {
            case GAIN -> Math.pow(10, model.gainDb(hz, s.levelDb()) / 20);
            case SECOND -> s.value();
            case THIRD -> model.third(hz, s.levelDb(), levels);
            case DEPENDENCE ->
                    model.gainDb(hz, s.levelDb())
                            - model.gainDb(1000, s.levelDb())
                            - model.gainDb(hz, quietDb)
                            + model.gainDb(1000, quietDb);
        };
    }
}
