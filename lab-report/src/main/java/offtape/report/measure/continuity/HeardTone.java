package offtape.report.measure.continuity;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import offtape.core.dsp.Baseband;
import offtape.core.dsp.Downconverter;
import offtape.core.dsp.PhaseLaw;
import offtape.core.programme.Cue;
import offtape.report.locate.ProgrammeReturn;

/**
 * A steady tone as it was heard.
 *
 * @param fromSeconds its start in the programme
 * @param toSeconds its end there
 * @param stretch time in the recording over time in the programme, on average, from its frequency
 * @param span where it lies in the recording, clear of its ends
 * @param heardHz its frequency there, on average
 */
record HeardTone(
        double fromSeconds,
        double toSeconds,
        double stretch,
        ProgrammeReturn.Span span,
        double heardHz) {

    private static final double MARGIN_S = 0.05;
    private static final double SHORTEST_S = 0.3;

    /** Kept around the carrier for its mean frequency. */
    private static final double PASS_HZ = 45;

    /** And to see its phase jump. */
    private static final double WIDE_HZ = 400;

    private static final double RATE_HZ = 2000;

    /** Of lower tones a period, which a dropout may cost, is too long. */
    private static final double LOWEST_HZ = 900;

    /** All tones of a return that tell time. */
    static List<HeardTone> in(ProgrammeReturn ret) {
        List<HeardTone> tones = new ArrayList<>();
        for (Cue cue : ret.cues(Cue.class)) {
            if (cue instanceof Cue.Tone t) {
                of(ret, t.startFrame(), t.frames(), t.frequencyHz()).ifPresent(tones::add);
            } else if (cue instanceof Cue.Ladder ladder) {
                for (Cue.Step s : ladder.steps()) {
                    of(ret, s.startFrame(), s.frames(), ladder.frequencyHz()).ifPresent(tones::add);
                }
            }
        }
        return tones;
    }

    private static Optional<HeardTone> of(ProgrammeReturn ret, long start, long frames, double hz) {
        ProgrammeReturn.Span span = ret.span(start, frames, MARGIN_S);
        if (hz < LOWEST_HZ || span.seconds() < SHORTEST_S) {
            return Optional.empty();
        }
        double mixedHz = hz * ret.speedRatio(start, frames);
        int rate = ret.recording().sampleRateHz();
        Baseband base = heard(ret, Downconverter.of(PASS_HZ, 2 * PASS_HZ, rate), span, mixedHz);
        double heardHz = mixedHz + meanTurns(base) * base.rateHz();
        return Optional.of(
                new HeardTone(
                        ret.sheet().seconds(start),
                        ret.sheet().seconds(start + frames),
                        hz / heardHz,
                        span,
                        heardHz));
    }

    private static Baseband heard(
            ProgrammeReturn ret, Downconverter converter, ProgrammeReturn.Span span, double hz) {
        return Baseband.loudest(
                converter.convert(ret.recording(), span.from(), span.to(), PhaseLaw.steady(hz)));
    }

    /** Moments of the recording at which its phase jumps. */
    List<Double> jumps(ProgrammeReturn ret) {
        int rate = ret.recording().sampleRateHz();
        return PhaseJumps.in(
                heard(ret, Downconverter.of(WIDE_HZ, 2 * WIDE_HZ, rate, RATE_HZ), span, heardHz));
    }

    /** Turns from one sample to the next, on average over where the tone is heard. */
    private static double meanTurns(Baseband base) {
        double[] phase = base.unwrappedPhase();
        double turns = 0;
        double weights = Double.MIN_NORMAL;
        for (int k = 1; k < phase.length; k++) {
            double weight = Math.min(base.power(k), base.power(k - 1));
            turns += weight * (phase[k] - phase[k - 1]) / (2 * Math.PI);
            weights += weight;
        }
        return turns / weights;
    }

    /** Whether a stretch of the programme lies within it, but for rounding. */
    boolean holds(double from, double to) {
        return from > fromSeconds - 1e-3 && to < toSeconds + 1e-3;
    }
}
