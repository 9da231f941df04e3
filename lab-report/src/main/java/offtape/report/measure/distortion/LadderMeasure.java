package offtape.report.measure.distortion;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import offtape.core.programme.Cue;
import offtape.core.unit.Decibels;
import offtape.report.locate.ProgrammeReturn;
import offtape.report.measure.tone.OrderSpectrum;
import offtape.report.measure.tone.ReferenceLevels;
import offtape.report.result.Distortion;
import offtape.report.result.LadderStep;

/** Distortion against level: each step of a ladder by {@link OrderSpectrum}, then the curve. */
public final class LadderMeasure {

    private static final double MARGIN_S = 0.03;
    private static final double MARGIN_SHARE = 0.08;
    private static final double HIGHEST_HARMONIC_HZ = 20_000;
    private static final int HIGHEST_ORDER = 10;

    /**
     * K3 over its floor from which noise moves it by less than 1 % (k = 2): noise of mean power N
     * beside a line of amplitude A moves the amplitude by √(N/2)/A, one standard deviation.
     */
    private static final double CLEAR = 141;

    /** A tone less than this over the noise beside it is not heard, as a power ratio. */
    private static final double HEARD = 10;

    private final ProgrammeReturn ret;
    private final ReferenceLevels reference;

    public LadderMeasure(ProgrammeReturn ret, ReferenceLevels reference) {
        this.ret = ret;
        this.reference = reference;
    }

    /** Measures a ladder on every channel it sounds on and whose reference tone was heard. */
    public List<Distortion> measure(Cue.Ladder ladder) {
        List<Cue.Step> steps = new ArrayList<>(ladder.steps());
        steps.sort(Comparator.comparingDouble(Cue.Step::levelDb));
        List<List<OrderSpectrum>> orders =
                steps.parallelStream().map(s -> orders(ladder, s)).toList();
        List<Distortion> result = new ArrayList<>();
        for (int c = 0; c < ret.channels(); c++) {
            boolean sounds =
                    switch (ladder.channels()) {
                        case BOTH -> true;
                        case LEFT -> c == 0;
                        case RIGHT -> c == 1;
                    };
            if (sounds && reference.heard(c)) {
                List<Tone> tones = new ArrayList<>();
                for (int i = 0; i < steps.size(); i++) {
                    tones.add(tone(steps.get(i).levelDb(), orders.get(i), c, ladder));
                }
                result.add(distortion(c, ladder.frequencyHz(), tones));
            }
        }
        return result;
    }

    private List<OrderSpectrum> orders(Cue.Ladder ladder, Cue.Step step) {
        double hz = ladder.frequencyHz() * ret.speedRatio(step.startFrame(), step.frames());
        double margin = MARGIN_S + MARGIN_SHARE * ret.sheet().seconds(step.frames());
        return OrderSpectrum.of(
                ret.recording(), ret.span(step.startFrame(), step.frames(), margin), hz);
    }

    /**
     * One step of one channel before compression is known; ratios are to the fundamental, null if
     * not known.
     */
    private record Tone(
            double recordLevelDb,
            Double replayLevelDb,
            Double k2,
            Double k3,
            Double thd,
            Double k3Floor) {}

    private Tone tone(double levelDb, List<OrderSpectrum> orders, int channel, Cue.Ladder ladder) {
        if (orders.isEmpty()) {
            return new Tone(levelDb, null, null, null, null, null);
        }
        OrderSpectrum o = orders.get(channel);
        double fundamental = o.power(1) - o.noise(1);
        if (fundamental < HEARD * o.noise(1)) {
            return new Tone(levelDb, null, null, null, null, null);
        }
        double replay =
                Decibels.ofPower(fundamental) - Decibels.ofAmplitude(reference.peaks()[channel]);
        double limit = Math.min(HIGHEST_HARMONIC_HZ, 0.45 * ret.recording().sampleRateHz());
        int highest =
                Math.min(HIGHEST_ORDER, OrderSpectrum.highestOrder(ladder.frequencyHz(), limit));
        double sum = 0;
        for (int order = 2; order <= highest; order++) {
            sum += Math.max(0, o.power(order) - o.noise(order));
        }
        return new Tone(
                levelDb,
                replay,
                highest >= 2 ? ratio(o, 2, fundamental) : null,
                highest >= 3 ? ratio(o, 3, fundamental) : null,
                highest >= 3 ? Math.sqrt(sum / fundamental) : null,
                highest >= 3 ? Math.sqrt(o.noise(3) / fundamental) : null);
    }

    private static Double ratio(OrderSpectrum o, int order, double fundamental) {
        return Math.sqrt(Math.max(0, o.power(order) - o.noise(order)) / fundamental);
    }

    private Distortion distortion(int channel, double hz, List<Tone> tones) {
        SmallSignalLine line =
                SmallSignalLine.fit(
                        tones.stream().filter(t -> t.replayLevelDb() != null).toList(),
                        Tone::recordLevelDb,
                        Tone::replayLevelDb);
        List<LadderStep> steps = tones.stream().map(t -> step(t, line)).toList();
        LadderCurve curve = new LadderCurve(steps, hz);
        return new Distortion(
                ProgrammeReturn.channelName(channel),
                hz,
                steps,
                curve.levelAtK3(1),
                curve.levelAtK3(3),
                curve.levelAtCompression(1),
                curve.maximumOutputLevel(),
                curve.saturationOutputLevel());
    }

    private static LadderStep step(Tone t, SmallSignalLine line) {
        Double compression =
                t.replayLevelDb() == null || line == null
                        ? null
                        : t.recordLevelDb() + line.gainDb() - t.replayLevelDb();
        boolean limited = t.k3() == null || t.k3() < CLEAR * t.k3Floor();
        return new LadderStep(
                t.recordLevelDb(),
                t.replayLevelDb(),
                percent(t.k2()),
                percent(t.k3()),
                percent(t.thd()),
                compression,
                percent(t.k3Floor()),
                limited);
    }

    private static Double percent(Double ratio) {
        return ratio == null ? null : 100 * ratio;
    }
}
