package offtape.report.measure.distortion;

import java.util.ArrayList;
import java.util.List;
import java.util.function.DoubleUnaryOperator;
import offtape.core.unit.Decibels;
import offtape.report.result.FittedCurve;
import offtape.report.result.LadderStep;

/**
 * The smooth curves of one ladder on one channel: K3 in decibels re 1 % and gain in decibels, both
 * over record level.
 */
final class LadderFit {

    /** Less is not tape's but rounding's, and tells nothing. */
    static final double LOWEST_PERCENT = 0.005;

    /** K3 up to here is fitted, percent: all that figures need, below where a curve may break. */
    private static final double HIGHEST_PERCENT = 10;

    /** … and the first step above this in any case. */
    private static final double NEEDED_PERCENT = 3;

    /** What order tracking may miss beside noise, standard deviation, dB: for K3 and for gain. */
    private static final double K3_DEVIATION_DB = 0.006;

    private static final double GAIN_DEVIATION_DB = 0.0015;

    /** Distance of the points of a curve as given out, dB. */
    private static final double GRID_DB = 0.5;

    private final List<LadderStep> heard;
    private final List<LadderStep> clear;

    /** Of these the ones whose level is no stray: what takes level takes more of the harmonics. */
    private final List<LadderStep> steady;

    private final RobustFit k3;
    private final RobustFit gain;

    /** Fits the steps, which are in order of record level. */
    LadderFit(List<LadderStep> steps) {
        heard = steps.stream().filter(s -> s.replayLevelDb() != null).toList();
        clear =
                lower(
                        heard.stream()
                                .filter(LadderStep::k3StandsOut)
                                .filter(s -> s.k3Percent() >= LOWEST_PERCENT)
                                .toList());
        gain =
                RobustFit.of(
                        heard,
                        LadderStep::recordLevelDb,
                        LadderFit::gainDb,
                        LadderFit::gainDeviationDb,
                        SmoothCurve.STIFFNESS);
        steady = clear.stream().filter(s -> !isStray(gain, heard, s)).toList();
        k3 =
                RobustFit.of(
                        steady,
                        LadderStep::recordLevelDb,
                        s -> Decibels.ofAmplitude(s.k3Percent()),
                        LadderFit::k3DeviationDb,
                        SmoothCurve.HARMONIC_STIFFNESS);
    }

    private static List<LadderStep> lower(List<LadderStep> clear) {
        List<LadderStep> lower = new ArrayList<>();
        for (LadderStep s : clear) {
            boolean needed =
                    lower.isEmpty() || lower.get(lower.size() - 1).k3Percent() <= NEEDED_PERCENT;
            if (s.k3Percent() <= HIGHEST_PERCENT || needed) {
                lower.add(s);
            }
        }
        return lower;
    }

    static double k3DeviationDb(LadderStep s) {
        double share = s.noise().k3UncertaintyPercent() / 2 / s.k3Percent();
        return Math.hypot(Decibels.ofAmplitude(1 + share), K3_DEVIATION_DB);
    }

    private static double gainDb(LadderStep s) {
        return s.replayLevelDb() - s.recordLevelDb();
    }

    private static double gainDeviationDb(LadderStep s) {
        return Math.hypot(s.noise().replayUncertaintyDb() / 2, GAIN_DEVIATION_DB);
    }

    /** Steps whose K3 is clear of noise and needed, in order of level, strays included. */
    List<LadderStep> clear() {
        return clear;
    }

    /** The curve of K3, dB re 1 %, or null if it has fewer than two steps. */
    SmoothCurve k3() {
        return k3 == null ? null : k3.curve();
    }

    /** The curve of gain, dB, or null likewise. */
    SmoothCurve gain() {
        return gain == null ? null : gain.curve();
    }

    /** The small-signal gain from the steps that do not stand off, or null if none was heard. */
    SmallSignalLine smallSignal() {
        List<LadderStep> kept = heard.stream().filter(s -> !standsOff(s)).toList();
        double scatter = gain == null ? 1 : Math.max(1, gain.curve().misfit());
        return kept.isEmpty()
                ? null
                : SmallSignalLine.fit(
                        kept.stream().mapToDouble(LadderStep::recordLevelDb).toArray(),
                        kept.stream().mapToDouble(LadderFit::gainDb).toArray(),
                        kept.stream().mapToDouble(s -> scatter * gainDeviationDb(s)).toArray());
    }

    /** Whether a step stands off either curve. */
    boolean standsOff(LadderStep s) {
        return isStray(k3, steady, s) || isStray(gain, heard, s);
    }

    private static boolean isStray(RobustFit fit, List<LadderStep> fitted, LadderStep s) {
        return fit != null && fit.strays().contains(fitted.indexOf(s));
    }

    /** K3 in percent as it is given out. */
    FittedCurve k3Given() {
        return given(
                k3(),
                x -> Math.pow(10, k3().at(x) / 20),
                x -> 2 * k3().deviation(x) * Math.log(10) / 20 * Math.pow(10, k3().at(x) / 20));
    }

    /** The replay level in dB as it is given out. */
    FittedCurve replayGiven() {
        return given(gain(), x -> x + gain().at(x), x -> 2 * gain().deviation(x));
    }

    private static FittedCurve given(
            SmoothCurve curve, DoubleUnaryOperator value, DoubleUnaryOperator uncertainty) {
        if (curve == null) {
            return null;
        }
        int points = 1 + (int) Math.ceil((curve.last() - curve.first()) / GRID_DB);
        double[] x = new double[points];
        double[] y = new double[points];
        double[] u = new double[points];
        for (int i = 0; i < points; i++) {
            x[i] = Math.min(curve.last(), curve.first() + i * GRID_DB);
            y[i] = value.applyAsDouble(x[i]);
            u[i] = uncertainty.applyAsDouble(x[i]);
        }
        return new FittedCurve(x, y, u, curve.misfit());
    }
}
