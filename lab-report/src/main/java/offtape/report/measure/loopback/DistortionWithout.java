package offtape.report.measure.loopback;

import java.util.ArrayList;
import java.util.List;
import java.util.function.DoubleUnaryOperator;
import offtape.core.text.Sentences;
import offtape.core.unit.Decibels;
import offtape.core.unit.Quantity;
import offtape.report.result.Distortion;
import offtape.report.result.FittedCurve;
import offtape.report.result.HarmonicCurve;
import offtape.report.result.InterfaceFigures;
import offtape.report.result.InterfaceShare;
import offtape.report.result.LadderStep;
import offtape.report.result.StepNoise;

/**
 * The distortion of one channel beside that of the interface. A harmonic of the machine and one of
 * the interface add with a phase that is not known, so nothing is taken out; the interface's
 * amplitude is a doubt of each reading.
 */
public final class DistortionWithout {

    private static final Sentences SAID = Sentences.near(DistortionWithout.class);

    /** A step is marked from this share of the interface in a harmonic. */
    private static final double MARKED_SHARE = 0.1;

    private static final double LIMITING_SHARE = 0.3;

    /** A harmonic under this is nobody's concern, whosever it is, percent. */
    private static final double LEAST_PERCENT = 0.01;

    /** How steeply K3 is held to rise where the curve does not tell it, dB per dB, as on tape. */
    private static final double USUAL_SLOPE = 2;

    private static final double LEAST_SLOPE = 0.3;
    private static final double SLOPE_HIGHEST_PERCENT = 3;
    private static final double SAME_DB = 0.01;
    private static final double SAME_HZ = 0.01;

    private final InterfaceFigures.Channel own;
    private final List<InterfaceShare.Entry> entries = new ArrayList<>();

    public DistortionWithout(InterfaceFigures.Channel own) {
        this.own = own;
    }

    /** What the interface has in each ladder, at its step nearest to reference level. */
    public List<InterfaceShare.Entry> entries() {
        return List.copyOf(entries);
    }

    /** A ladder with the interface in its uncertainties. */
    public Distortion of(Distortion heard) {
        return own.ladders().stream()
                .filter(l -> Math.abs(l.frequencyHz() - heard.frequencyHz()) < SAME_HZ)
                .findFirst()
                .map(ladder -> of(heard, ladder))
                .orElse(heard);
    }

    private Distortion of(Distortion heard, InterfaceFigures.Ladder ladder) {
        List<LadderStep> steps = new ArrayList<>();
        for (LadderStep s : heard.steps()) {
            InterfaceFigures.Step step = at(ladder, s.recordLevelDb());
            steps.add(step == null ? s : s.withNoise(doubted(s, step)));
        }
        enter(heard, ladder);
        Quantity one = level(heard, ladder, heard.levelAtK3OnePercent(), 1);
        Quantity three = level(heard, ladder, heard.levelAtK3ThreePercent(), 3);
        return new Distortion(
                heard.channel(),
                heard.frequencyHz(),
                steps,
                one,
                three,
                heard.levelAtCompressionOneDb(),
                replay(heard, heard.maximumOutputLevel(), heard.levelAtK3ThreePercent(), three),
                heard.saturationOutputLevel(),
                replay(
                        heard,
                        heard.maximumOutputLevelOnePercent(),
                        heard.levelAtK3OnePercent(),
                        one),
                slope(heard, ladder),
                curve(heard.k3Curve(), ladder),
                heard.replayCurve());
    }

    /** Harmonics of the sweep with the interface in their uncertainties. */
    public List<HarmonicCurve> of(List<HarmonicCurve> heard) {
        return heard.stream()
                .map(
                        curve ->
                                new HarmonicCurve(
                                        curve.order(),
                                        curve.points().stream()
                                                .map(p -> doubted(p, curve.order()))
                                                .toList()))
                .toList();
    }

    private HarmonicCurve.Point doubted(HarmonicCurve.Point heard, int order) {
        if (!heard.standsOut()) {
            return heard;
        }
        double percent =
                own.harmonics().stream()
                        .filter(h -> h.order() == order)
                        .flatMap(h -> h.points().stream())
                        .filter(p -> p.standsOut())
                        .filter(p -> Math.abs(p.frequencyHz() / heard.frequencyHz() - 1) < 0.01)
                        .mapToDouble(HarmonicCurve.Point::percent)
                        .max()
                        .orElse(0);
        return new HarmonicCurve.Point(
                heard.frequencyHz(),
                heard.percent(),
                Math.hypot(heard.uncertaintyPercent(), percent),
                heard.floorPercent(),
                heard.phaseDegrees(),
                phaseDoubt(heard, percent));
    }

    /** A harmonic of the interface at right angles turns the machine's so far. */
    private static Double phaseDoubt(HarmonicCurve.Point heard, double percent) {
        return heard.phaseUncertaintyDegrees() == null
                ? null
                : (Double)
                        Math.hypot(
                                heard.phaseUncertaintyDegrees(),
                                Math.toDegrees(Math.atan2(percent, heard.percent())));
    }

    private static InterfaceFigures.Step at(InterfaceFigures.Ladder ladder, double levelDb) {
        return ladder.steps().stream()
                .filter(s -> Math.abs(s.recordLevelDb() - levelDb) < SAME_DB)
                .findFirst()
                .orElse(null);
    }

    private static StepNoise doubted(LadderStep heard, InterfaceFigures.Step step) {
        StepNoise n = heard.noise();
        double two = orNone(step.k2AtMostPercent());
        double three = orNone(step.k3AtMostPercent());
        return new StepNoise(
                plus(n.k2BelowPercent(), two),
                plus(n.k3BelowPercent(), three),
                plus(n.thdBelowPercent(), two + three),
                n.k3UncertaintyPercent() == null
                        ? null
                        : (Double) Math.hypot(n.k3UncertaintyPercent(), three),
                n.replayUncertaintyDb(),
                n.leftOut(),
                marked(heard.k2Percent(), two) || marked(heard.k3Percent(), three));
    }

    private static boolean marked(Double heardPercent, double percent) {
        return heardPercent != null && percent > MARKED_SHARE * heardPercent;
    }

    private static Double plus(Double bound, double percent) {
        return bound == null ? null : (Double) (bound + percent);
    }

    private static double orNone(Double percent) {
        return percent == null ? 0 : percent;
    }

    private void enter(Distortion heard, InterfaceFigures.Ladder ladder) {
        heard.steps().stream()
                .filter(s -> s.replayLevelDb() != null)
                .min((a, b) -> Double.compare(fromReference(a), fromReference(b)))
                .ifPresent(
                        s -> {
                            InterfaceFigures.Step step = at(ladder, s.recordLevelDb());
                            if (step != null) {
                                enter(heard, 2, s, s.k2Percent(), step.k2AtMostPercent());
                                enter(heard, 3, s, s.k3Percent(), step.k3AtMostPercent());
                            }
                        });
    }

    private static double fromReference(LadderStep s) {
        return Math.abs(s.recordLevelDb());
    }

    private void enter(Distortion d, int order, LadderStep s, Double heard, Double percent) {
        if (percent == null) {
            return;
        }
        Double share = heard == null ? null : (Double) (100 * Math.min(1, percent / heard));
        entries.add(
                new InterfaceShare.Entry(
                        SAID.say("harmonic", order, d.frequencyHz(), s.recordLevelDb()),
                        d.channel(),
                        "%",
                        percent,
                        heard,
                        share,
                        share != null && share > 100 * LIMITING_SHARE && heard > LEAST_PERCENT,
                        SAID.say("in-uncertainty")));
    }

    /** The interface's K3 at a level between the steps, percent. */
    private static double percentAt(InterfaceFigures.Ladder ladder, double levelDb) {
        double[] above = null;
        double[] below = null;
        for (InterfaceFigures.Step s : ladder.steps()) {
            double[] point = {s.recordLevelDb(), orNone(s.k3AtMostPercent())};
            below = point[0] <= levelDb && (below == null || point[0] > below[0]) ? point : below;
            above = point[0] >= levelDb && (above == null || point[0] < above[0]) ? point : above;
        }
        return Math.max(below == null ? 0 : below[1], above == null ? 0 : above[1]);
    }

    private static Quantity level(
            Distortion d, InterfaceFigures.Ladder ladder, Quantity heard, double percent) {
        if (!heard.isKnown()) {
            return heard;
        }
        double swayDb = Decibels.ofAmplitude(1 + percentAt(ladder, heard.value()) / percent);
        double slope = slopeAt(d.k3Curve(), heard.value(), Decibels::ofAmplitude, USUAL_SLOPE);
        return Quantity.known(
                heard.value(),
                heard.unit(),
                Math.hypot(heard.uncertainty(), swayDb / Math.max(LEAST_SLOPE, slope)));
    }

    /** A replay level that follows from a record level. */
    private static Quantity replay(
            Distortion d, Quantity heard, Quantity record, Quantity doubted) {
        if (!heard.isKnown() || !record.isKnown()) {
            return heard;
        }
        double more =
                Math.sqrt(
                        Math.max(
                                0,
                                Math.pow(doubted.uncertainty(), 2)
                                        - Math.pow(record.uncertainty(), 2)));
        double slope = Math.max(0, slopeAt(d.replayCurve(), record.value(), y -> y, 1));
        return Quantity.known(
                heard.value(), heard.unit(), Math.hypot(heard.uncertainty(), more * slope));
    }

    private static double slopeAt(
            FittedCurve curve, double levelDb, DoubleUnaryOperator scale, double otherwise) {
        if (curve == null || curve.recordLevelDb().length < 2) {
            return otherwise;
        }
        double[] x = curve.recordLevelDb();
        int i = 0;
        while (i + 2 < x.length && x[i + 1] < levelDb) {
            i++;
        }
        double rise =
                scale.applyAsDouble(curve.value()[i + 1]) - scale.applyAsDouble(curve.value()[i]);
        return rise / (x[i + 1] - x[i]);
    }

    /**
     * The slope as it would be if the interface's share were of one sign below, of another above.
     */
    private static Quantity slope(Distortion d, InterfaceFigures.Ladder ladder) {
        List<LadderStep> small =
                d.steps().stream()
                        .filter(LadderStep::k3StandsOut)
                        .filter(s -> s.k3Percent() <= SLOPE_HIGHEST_PERCENT)
                        .toList();
        if (!d.k3Slope().isKnown() || small.size() < 2) {
            return d.k3Slope();
        }
        LadderStep first = small.get(0);
        LadderStep last = small.get(small.size() - 1);
        double sway = swayDb(first, ladder) + swayDb(last, ladder);
        double span = last.recordLevelDb() - first.recordLevelDb();
        return Quantity.known(
                d.k3Slope().value(),
                d.k3Slope().unit(),
                Math.hypot(d.k3Slope().uncertainty(), sway / span));
    }

    private static double swayDb(LadderStep s, InterfaceFigures.Ladder ladder) {
        return Decibels.ofAmplitude(1 + percentAt(ladder, s.recordLevelDb()) / s.k3Percent());
    }

    private static FittedCurve curve(FittedCurve heard, InterfaceFigures.Ladder ladder) {
        if (heard == null) {
            return null;
        }
        double[] uncertainty = heard.uncertainty().clone();
        for (int i = 0; i < uncertainty.length; i++) {
            uncertainty[i] =
                    Math.hypot(uncertainty[i], percentAt(ladder, heard.recordLevelDb()[i]));
        }
        return new FittedCurve(heard.recordLevelDb(), heard.value(), uncertainty, heard.misfit());
    }
}
