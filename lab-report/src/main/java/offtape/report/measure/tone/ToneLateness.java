package offtape.report.measure.tone;

import java.util.ArrayList;
import java.util.List;
import java.util.function.DoubleUnaryOperator;
import java.util.stream.DoubleStream;
import offtape.core.dsp.Baseband;
import offtape.core.dsp.Downconverter;
import offtape.core.dsp.PhaseLaw;
import offtape.core.programme.ChannelSet;
import offtape.core.programme.Cue;
import offtape.report.locate.LateMoment;
import offtape.report.locate.ProgrammeReturn;

/**
 * How late a return is while a steady tone sounds, from its phase against the programme's own. The
 * phase tells lateness but for whole periods, so it must be known roughly beforehand.
 */
public final class ToneLateness {

    private static final double HIGHEST_HZ = 4000;
    private static final double SHORTEST_S = 3;
    private static final double MARGIN_S = 0.1;
    private static final double PASS_HZ = 45;

    /** On average a tone may be off from what is expected by this share of a period. */
    private static final double SURE = 0.25;

    private ToneLateness() {}

    /**
     * One moment a second; none if the tone is short, high, or off by so much that its period is in
     * doubt.
     *
     * @param expected lateness at a programme time, all in seconds, changing slowly
     */
    public static List<LateMoment> of(
            ProgrammeReturn ret, Cue.Tone tone, DoubleUnaryOperator expected) {
        double hz = tone.frequencyHz();
        double from = ret.sheet().seconds(tone.startFrame()) + MARGIN_S;
        double to = ret.sheet().seconds(tone.endFrame()) - MARGIN_S;
        if (tone.channels() != ChannelSet.BOTH || hz > HIGHEST_HZ || to - from < SHORTEST_S) {
            return List.of();
        }
        double at = expected.applyAsDouble(from);
        double rate = (expected.applyAsDouble(to) - at) / (to - from);
        DoubleUnaryOperator programme = t -> from + (t - from - at) / (1 + rate);
        double sent = sentPhase(ret, from, to, hz);
        List<Baseband> bases =
                Downconverter.of(PASS_HZ, 2 * PASS_HZ, ret.recording().sampleRateHz())
                        .convert(
                                ret.recording(),
                                from + at,
                                to + expected.applyAsDouble(to),
                                PhaseLaw.smooth(
                                        t -> 2 * Math.PI * hz * programme.applyAsDouble(t)));
        List<double[]> turns = new ArrayList<>();
        for (int c = 0; c < bases.size(); c++) {
            int sign = ret.location().signs().get(c);
            if (sign != 0) {
                turns.add(turns(bases.get(c), sent + (sign < 0 ? Math.PI : 0)));
            }
        }
        boolean sure =
                !turns.isEmpty()
                        && turns.stream()
                                .allMatch(
                                        t ->
                                                Math.abs(DoubleStream.of(t).average().orElse(1))
                                                        < SURE);
        return sure ? moments(tone, bases.get(0), turns, programme) : List.of();
    }

    /** Phase of the tone in the programme against a sine that begins with it, radians. */
    private static double sentPhase(ProgrammeReturn ret, double from, double to, double hz) {
        List<Baseband> sent =
                Downconverter.of(PASS_HZ, 2 * PASS_HZ, ret.programme().audio().sampleRateHz())
                        .convert(ret.programme().audio(), from, to, PhaseLaw.steady(hz));
        return DoubleStream.of(sent.get(0).unwrappedPhase()).average().orElse(0);
    }

    /** Turns by which the tone is early, near 0 on average. */
    private static double[] turns(Baseband base, double sent) {
        double[] phase = base.unwrappedPhase();
        double mean = DoubleStream.of(phase).average().orElse(0) - sent;
        double whole = Math.rint(mean / (2 * Math.PI));
        return DoubleStream.of(phase).map(p -> (p - sent) / (2 * Math.PI) - whole).toArray();
    }

    private static List<LateMoment> moments(
            Cue.Tone tone, Baseband base, List<double[]> turns, DoubleUnaryOperator programme) {
        List<LateMoment> moments = new ArrayList<>();
        int length = (int) Math.round(base.rateHz());
        for (int k = 0; k + length <= base.size(); k += length) {
            double early = 0;
            for (double[] channel : turns) {
                for (int i = k; i < k + length; i++) {
                    early += channel[i] / (length * turns.size() * tone.frequencyHz());
                }
            }
            double recording = base.seconds(k) + (length - 1) / 2.0 / base.rateHz();
            double moment = programme.applyAsDouble(recording);
            moments.add(new LateMoment(tone.id(), moment, recording - moment - early));
        }
        return moments;
    }
}
