package offtape.report.measure.processing;

import java.util.ArrayList;
import java.util.List;
import offtape.core.unit.Quantity;
import offtape.report.result.Distortion;
import offtape.report.result.LadderStep;
import offtape.report.result.StepNoise;

/** Ladders put together from numbers: level, gain and harmonics of each step. */
final class Ladders {

    private final List<LadderStep> steps = new ArrayList<>();

    /**
     * Adds a step whose harmonics do not stand out of the noise.
     *
     * @param thdBelow what they are below, percent, or null
     * @param doubtDb uncertainty of its level, k = 2, or null
     */
    Ladders quiet(double recordDb, double gainDb, Double thdBelow, Double doubtDb) {
        StepNoise noise = new StepNoise(null, null, thdBelow, null, doubtDb, false);
        return with(recordDb, recordDb + gainDb, null, null, noise);
    }

    /**
     * Adds a step of which nothing is uncertain.
     *
     * @param k3 percent
     * @param thd percent
     */
    Ladders loud(double recordDb, double gainDb, double k3, double thd) {
        return loud(recordDb, gainDb, k3, thd, 0);
    }

    /**
     * Adds a step with harmonics.
     *
     * @param k3 percent
     * @param thd percent
     * @param doubtDb uncertainty of its level, k = 2
     */
    Ladders loud(double recordDb, double gainDb, double k3, double thd, double doubtDb) {
        StepNoise noise = new StepNoise(null, null, null, null, doubtDb, false);
        return with(recordDb, recordDb + gainDb, k3, thd, noise);
    }

    /** Adds a step that was not heard. */
    Ladders unheard(double recordDb) {
        return with(recordDb, null, null, null, StepNoise.NOT_HEARD);
    }

    private Ladders with(double recordDb, Double replayDb, Double k3, Double thd, StepNoise noise) {
        steps.add(new LadderStep(recordDb, replayDb, null, k3, thd, null, 1e-4, false, noise));
        return this;
    }

    Distortion at(double hz) {
        return at(hz, "left");
    }

    Distortion at(double hz, String channel) {
        Quantity none = Quantity.unknown("Not asked for.");
        return new Distortion(
                channel, hz, steps, none, none, none, none, none, none, none, null, null);
    }
}
