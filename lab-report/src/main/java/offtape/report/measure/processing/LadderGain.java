package offtape.report.measure.processing;

import java.util.List;
import java.util.OptionalDouble;
import offtape.report.result.Distortion;
import offtape.report.result.LadderStep;

/**
 * How the gain of a path changes from step to step of a ladder, of the steps that were heard.
 *
 * @param steps those steps, of rising level
 */
record LadderGain(List<LadderStep> steps) {

    /** Two levels are one within this, dB. */
    private static final double SAME_DB = 0.01;

    static LadderGain of(Distortion ladder) {
        return new LadderGain(
                ladder.steps().stream().filter(s -> s.replayLevelDb() != null).toList());
    }

    int size() {
        return steps.size();
    }

    /** Replay less record level of a step, dB. */
    double db(int step) {
        return steps.get(step).replayLevelDb() - steps.get(step).recordLevelDb();
    }

    /** Expanded uncertainty of that from noise, k = 2, dB. */
    double uncertaintyDb(int step) {
        Double known = steps.get(step).noise().replayUncertaintyDb();
        return known == null ? 0 : known;
    }

    /** Gain at a record level of the ladder, dB. */
    OptionalDouble atLevel(double recordLevelDb) {
        for (int i = 0; i < size(); i++) {
            if (Math.abs(steps.get(i).recordLevelDb() - recordLevelDb) < SAME_DB) {
                return OptionalDouble.of(db(i));
            }
        }
        return OptionalDouble.empty();
    }
}
