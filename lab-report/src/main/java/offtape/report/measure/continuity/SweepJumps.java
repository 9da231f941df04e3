package offtape.report.measure.continuity;

import java.util.List;
import offtape.core.dsp.Baseband;
import offtape.core.dsp.Downconverter;
import offtape.core.dsp.PhaseLaw;
import offtape.core.programme.Cue;
import offtape.core.programme.ExponentialSweep;
import offtape.report.locate.ProgrammeReturn;

/** Moments at which the phase of a sweep jumps, mixed with the phase it was sent with. */
final class SweepJumps {

    private static final double FROM_HZ = 300;
    private static final double TO_HZ = 10_000;
    private static final double PASS_HZ = 400;
    private static final double RATE_HZ = 2000;

    private SweepJumps() {}

    /** Of all sweeps of a return, seconds of the recording. */
    static List<Double> in(ProgrammeReturn ret) {
        return ret.cues(Cue.Sweep.class).stream().flatMap(s -> in(ret, s).stream()).toList();
    }

    private static List<Double> in(ProgrammeReturn ret, Cue.Sweep cue) {
        double from = Math.max(FROM_HZ, cue.startHz());
        double to = Math.min(TO_HZ, Math.min(0.7 * cue.endHz(), 0.3 * ret.sheet().sampleRateHz()));
        if (to < 2 * from) {
            return List.of();
        }
        double start = ret.sheet().seconds(cue.startFrame());
        ExponentialSweep sweep = ExponentialSweep.of(cue, ret.sheet().sampleRateHz());
        int rate = ret.recording().sampleRateHz();
        return PhaseJumps.in(
                Baseband.loudest(
                        Downconverter.of(PASS_HZ, 2 * PASS_HZ, rate, RATE_HZ)
                                .convert(
                                        ret.recording(),
                                        ret.map().recordingSeconds(start + sweep.timeSeconds(from)),
                                        ret.map().recordingSeconds(start + sweep.timeSeconds(to)),
                                        PhaseLaw.smooth(
                                                t ->
                                                        sweep.phaseRadians(
                                                                ret.map().programmeSeconds(t)
                                                                        - start)))));
    }
}
