package offtape.report.measure.distortion;

import java.util.List;
import offtape.core.text.Sentences;
import offtape.core.unit.Decibels;
import offtape.core.unit.Quantity;
import offtape.report.result.LadderStep;

/** The figures read off the curves of a ladder. */
final class LadderCurve {

    private static final Sentences SAID = Sentences.near(LadderCurve.class);

    /** A ladder at or above this frequency tells the saturation output level. */
    private static final double HIGH_HZ = 6000;

    /** Room for what the model of the curve can miss, dB, k = 2. */
    private static final double OWN_UNCERTAINTY_DB = 0.004;

    /** A replay level that rises by less, dB per dB, has levelled off. */
    private static final double LEVEL_SLOPE = 0.15;

    /**
     * What is still to come of a level that follows the law of {@link #toComeDb}, dB for each dB
     * per dB of its slope.
     */
    private static final double TO_COME = 10 / Math.log(10);

    /** Tape may level off sooner than that law says: so much of it is taken to come, … */
    private static final double LIKELY_SHARE = 0.75;

    /** … and so much may be missing or too much, k = 2. */
    private static final double DOUBTFUL_SHARE = 0.5;

    /** Levels that tell the slope of K3. */
    private static final int SLOPE_LEVELS = 3;

    private static final double SLOPE_HIGHEST_PERCENT = 3;

    private final List<LadderStep> steps;
    private final double frequencyHz;
    private final LadderFit fit;
    private final SmallSignalLine line;
    private final double referenceDeviationDb;

    /**
     * The figures of one channel.
     *
     * @param steps those that were fitted, in order of record level
     * @param line the small-signal line, null if no step was heard
     * @param referenceDeviationDb standard deviation of the level of the reference tone
     */
    LadderCurve(
            List<LadderStep> steps,
            double frequencyHz,
            LadderFit fit,
            SmallSignalLine line,
            double referenceDeviationDb) {
        this.steps = steps;
        this.frequencyHz = frequencyHz;
        this.fit = fit;
        this.line = line;
        this.referenceDeviationDb = referenceDeviationDb;
    }

    /** Record level at which K3 reaches a percentage, dB re reference. */
    Quantity levelAtK3(double percent) {
        SmoothCurve k3 = fit.k3();
        if (k3 == null) {
            return Quantity.unknown(k3Unknown());
        }
        double target = Decibels.ofAmplitude(percent);
        double at = Crossing.rising(k3::at, k3.first(), k3.last(), target);
        if (Double.isNaN(at)) {
            boolean below = k3.at(k3.first()) < target;
            double end = below ? k3.last() : k3.first();
            return Quantity.unknown(SAID.say(below ? "k3-under" : "k3-above", percent, end));
        }
        double deviation = k3.deviation(at) / Math.max(0.3, k3.slope(at));
        return Quantity.known(at, "dB", Math.hypot(2 * deviation, OWN_UNCERTAINTY_DB));
    }

    private String k3Unknown() {
        boolean none = steps.stream().allMatch(s -> s.k3FloorPercent() == null);
        return none
                ? SAID.say("third-above-band")
                : fit.clear().isEmpty()
                        ? SAID.say("third-under-noise")
                        : SAID.say("third-on-one-level");
    }

    /** Record level at which compression reaches a value in dB, dB re reference. */
    Quantity levelAtCompression(double db) {
        SmoothCurve gain = fit.gain();
        if (gain == null) {
            return Quantity.unknown(SAID.say("too-few-steps"));
        }
        double at = Crossing.rising(x -> line.gainDb() - gain.at(x), gain.first(), gain.last(), db);
        if (Double.isNaN(at)) {
            boolean below = line.gainDb() - gain.at(gain.first()) < db;
            double end = below ? gain.last() : gain.first();
            return Quantity.unknown(
                    SAID.say(below ? "compression-under" : "compression-above", db, end));
        }
        double deviation = Math.hypot(gain.deviation(at), line.deviationDb());
        double slope = Math.max(0.02, -gain.slope(at));
        return Quantity.known(at, "dB", Math.hypot(2 * deviation / slope, OWN_UNCERTAINTY_DB));
    }

    /** Replay level at which K3 reaches a percentage, dB. */
    Quantity maximumOutputLevel(double percent) {
        Quantity record = levelAtK3(percent);
        if (!record.isKnown()) {
            return record;
        }
        SmoothCurve gain = fit.gain();
        double at = record.value();
        double along = record.uncertainty() * Math.max(0, 1 + gain.slope(at));
        return Quantity.known(
                at + gain.at(at),
                "dB",
                Math.hypot(along, 2 * Math.hypot(gain.deviation(at), referenceDeviationDb)));
    }

    /** Highest replay level that a tone of high frequency can be driven to, dB. */
    Quantity saturationOutputLevel() {
        if (frequencyHz < HIGH_HZ) {
            return Quantity.unknown(SAID.say("saturation-of-highs"));
        }
        SmoothCurve gain = fit.gain();
        if (gain == null) {
            return Quantity.unknown(SAID.say("too-few-steps-of-highs"));
        }
        double top = Crossing.highest(x -> x + gain.at(x), gain.first(), gain.last());
        double level = top + gain.at(top);
        double toCome = toComeDb();
        if (toCome > LEVEL_SLOPE * TO_COME) {
            return Quantity.unknown(SAID.say("saturation-not-reached", gain.last(), level));
        }
        double noise = 2 * Math.hypot(gain.deviation(top), referenceDeviationDb);
        return Quantity.known(
                level + LIKELY_SHARE * toCome, "dB", Math.hypot(noise, DOUBTFUL_SHARE * toCome));
    }

    /**
     * What a level that still rises has before it. A characteristic that ends in a square wave
     * comes near its highest level as the inverse square of the amplitude, so that over the last D
     * dB of drive it rose by 10^(D/10) − 1 times what is left.
     */
    private double toComeDb() {
        List<LadderStep> heard =
                steps.stream().filter(s -> s.replayLevelDb() != null && !fit.standsOff(s)).toList();
        LadderStep last = heard.get(heard.size() - 1);
        LadderStep before = heard.get(0);
        for (LadderStep s : heard) {
            before = s.recordLevelDb() < last.recordLevelDb() ? s : before;
        }
        double rise = last.replayLevelDb() - before.replayLevelDb();
        double drive = last.recordLevelDb() - before.recordLevelDb();
        return Math.max(0, rise) / (Decibels.toPower(drive) - 1);
    }

    /** How steeply K3 rises where it is small, dB per dB: a weighted straight line. */
    Quantity k3Slope() {
        List<LadderStep> small =
                fit.clear().stream()
                        .filter(s -> s.k3Percent() <= SLOPE_HIGHEST_PERCENT)
                        .filter(s -> !fit.standsOff(s))
                        .toList();
        if (fit.clear().isEmpty()) {
            return Quantity.unknown(k3Unknown());
        }
        if (small.stream().map(LadderStep::recordLevelDb).distinct().count() < SLOPE_LEVELS) {
            return Quantity.unknown(SAID.say("too-few-small"));
        }
        double w = 0;
        double wx = 0;
        double wy = 0;
        for (LadderStep s : small) {
            double weight = Math.pow(LadderFit.k3DeviationDb(s), -2);
            w += weight;
            wx += weight * s.recordLevelDb();
            wy += weight * Decibels.ofAmplitude(s.k3Percent());
        }
        double wxx = 0;
        double wxy = 0;
        for (LadderStep s : small) {
            double weight = Math.pow(LadderFit.k3DeviationDb(s), -2);
            double x = s.recordLevelDb() - wx / w;
            wxx += weight * x * x;
            wxy += weight * x * (Decibels.ofAmplitude(s.k3Percent()) - wy / w);
        }
        return Quantity.known(wxy / wxx, "dB/dB", 2 * Math.hypot(1 / Math.sqrt(wxx), 0.02));
    }
}
