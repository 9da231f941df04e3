package offtape.report.measure.distortion;

import java.util.List;
import java.util.function.DoubleUnaryOperator;
import java.util.stream.DoubleStream;
import offtape.report.result.LadderStep;
import offtape.report.result.StepNoise;

/** Steps of a ladder as they would be read. */
final class Steps {

    private Steps() {}

    /** A step whose K3 has a floor of a thousandth of it. */
    static LadderStep step(double recordDb, double replayDb, double k3Percent) {
        return step(recordDb, replayDb, k3Percent, 0, 0);
    }

    /**
     * The same with uncertainties.
     *
     * @param k3Uncertainty in percent of the fundamental, k = 2
     * @param replayUncertaintyDb k = 2
     */
    static LadderStep step(
            double recordDb,
            double replayDb,
            double k3Percent,
            double k3Uncertainty,
            double replayUncertaintyDb) {
        StepNoise noise =
                new StepNoise(null, null, null, k3Uncertainty, replayUncertaintyDb, false);
        return new LadderStep(
                recordDb, replayDb, null, k3Percent, null, null, k3Percent / 1000, false, noise);
    }

    /** A step whose third harmonic is not told: it lies above the band if there is no floor. */
    static LadderStep withoutThird(double recordDb, double replayDb, Double floorPercent) {
        StepNoise noise = new StepNoise(null, null, null, null, 0.0, false);
        return new LadderStep(
                recordDb, replayDb, null, null, null, null, floorPercent, true, noise);
    }

    static LadderStep notHeard(double recordDb) {
        return new LadderStep(
                recordDb, null, null, null, null, null, null, true, StepNoise.NOT_HEARD);
    }

    /** Steps at several levels, from laws of replay level and of K3 in decibels re 1 %. */
    static List<LadderStep> ladder(
            DoubleUnaryOperator replay, DoubleUnaryOperator k3Db, double... recordDb) {
        return DoubleStream.of(recordDb)
                .mapToObj(x -> step(x, replay.applyAsDouble(x), percent(k3Db.applyAsDouble(x))))
                .toList();
    }

    /** A ratio in percent, given in decibels re 1 %. */
    static double percent(double db) {
        return Math.pow(10, db / 20);
    }
}
