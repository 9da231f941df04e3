package offtape.report.measure.distortion;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.stream.IntStream;
import offtape.core.fault.Background;
import offtape.core.programme.ChannelSet;
import offtape.core.programme.Cue;
import offtape.core.unit.Decibels;
import offtape.report.locate.ProgrammeReturn;
import offtape.report.measure.sweep.Leakage;
import offtape.report.measure.tone.OrderSpectrum;
import offtape.report.measure.tone.ReferenceLevels;
import offtape.report.result.Distortion;
import offtape.report.result.LadderStep;

/** Distortion against level: each step of a ladder by {@link OrderSpectrum}, then the curve. */
public final class LadderMeasure {

    private static final double MARGIN_S = 0.03;
    private static final double MARGIN_SHARE = 0.08;

    /** So much of a step is looked at: all steps are held at once, 4 MB a second at 96 kHz. */
    private static final double LONGEST_STEP_S = 5;

    private final ProgrammeReturn ret;
    private final ReferenceLevels reference;
    private final Leakage leakage;

    /**
     * Makes ready to measure ladders.
     *
     * @param leakage what the channels hear of each other, which is taken out of the harmonics
     */
    public LadderMeasure(ProgrammeReturn ret, ReferenceLevels reference, Leakage leakage) {
        this.ret = ret;
        this.reference = reference;
        this.leakage = leakage;
    }

    /** Measures a ladder on every channel it sounds on and whose reference tone was heard. */
    public List<Distortion> measure(Cue.Ladder ladder) {
        List<Cue.Step> steps = new ArrayList<>(ladder.steps());
        steps.sort(Comparator.comparingDouble(Cue.Step::levelDb));
        List<List<OrderSpectrum>> orders = Background.each(steps, s -> orders(ladder, s));
        List<Integer> channels =
                IntStream.range(0, ret.channels())
                        .filter(c -> sounds(ladder.channels(), c) && reference.heard(c))
                        .boxed()
                        .toList();
        return Background.each(
                channels,
                c -> {
                    List<LadderStep> readings = new ArrayList<>();
                    for (int i = 0; i < steps.size(); i++) {
                        readings.add(reading(steps.get(i), orders.get(i), c, ladder));
                    }
                    return distortion(c, ladder.frequencyHz(), readings);
                });
    }

    private static boolean sounds(ChannelSet channels, int channel) {
        return switch (channels) {
            case BOTH -> true;
            case LEFT -> channel == 0;
            case RIGHT -> channel == 1;
        };
    }

    private List<OrderSpectrum> orders(Cue.Ladder ladder, Cue.Step step) {
        double hz = returnedHz(ladder, step);
        double margin = MARGIN_S + MARGIN_SHARE * ret.sheet().seconds(step.frames());
        return OrderSpectrum.of(
                ret.recording(),
                ret.span(step.startFrame(), step.frames(), margin).beginning(LONGEST_STEP_S),
                hz);
    }

    private double returnedHz(Cue.Ladder ladder, Cue.Step step) {
        return ladder.frequencyHz() * ret.speedRatio(step.startFrame(), step.frames());
    }

    private LadderStep reading(
            Cue.Step step, List<OrderSpectrum> orders, int channel, Cue.Ladder ladder) {
        OrderSpectrum heard = orders.isEmpty() ? null : orders.get(channel);
        return StepReading.of(
                heard,
                orders.size() < 2 ? heard : unmixed(orders, channel, ladder.frequencyHz()),
                returnedHz(ladder, step),
                ret.recording().sampleRateHz(),
                reference.peaks()[channel],
                step.levelDb());
    }

    private OrderSpectrum unmixed(List<OrderSpectrum> orders, int channel, double hz) {
        return orders.get(channel)
                .without(orders.get(1 - channel), order -> leakage.into(channel, order * hz));
    }

    private Distortion distortion(int channel, double hz, List<LadderStep> readings) {
        LadderFit fit = new LadderFit(readings);
        SmallSignalLine line = fit.smallSignal();
        List<LadderStep> steps = readings.stream().map(s -> finished(s, fit, line)).toList();
        LadderCurve curve =
                new LadderCurve(
                        readings,
                        hz,
                        fit,
                        line,
                        Decibels.ofAmplitude(1 + reference.relativeUncertainty()[channel]));
        return new Distortion(
                ProgrammeReturn.channelName(channel),
                hz,
                steps,
                curve.levelAtK3(1),
                curve.levelAtK3(3),
                curve.levelAtCompression(1),
                curve.maximumOutputLevel(3),
                curve.saturationOutputLevel(),
                curve.maximumOutputLevel(1),
                curve.k3Slope(),
                fit.k3Given(),
                fit.replayGiven());
    }

    private static LadderStep finished(LadderStep s, LadderFit fit, SmallSignalLine line) {
        LadderStep step =
                s.replayLevelDb() == null
                        ? s
                        : s.compressedBy(s.recordLevelDb() + line.gainDb() - s.replayLevelDb());
        return fit.standsOff(s) ? step.asLeftOut() : step;
    }
}
