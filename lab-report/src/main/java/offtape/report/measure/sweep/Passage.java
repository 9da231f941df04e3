package offtape.report.measure.sweep;

import java.util.List;
import java.util.function.DoubleUnaryOperator;
import offtape.core.audio.AudioSource;
import offtape.core.dsp.Baseband;
import offtape.core.dsp.Downconverter;
import offtape.core.dsp.PhaseLaw;
import offtape.core.programme.Cue;
import offtape.core.programme.ExponentialSweep;
import offtape.report.locate.ProgrammeReturn;
import org.apache.commons.math3.stat.regression.SimpleRegression;

/**
 * A sweep in a recording, and where its times lie there.
 *
 * @param toRecording from seconds since the start of the sweep to recording seconds
 * @param toSweep from recording seconds to seconds since the start of the sweep
 */
record Passage(
        AudioSource source,
        ExponentialSweep sweep,
        DoubleUnaryOperator toRecording,
        DoubleUnaryOperator toSweep) {

    private static final double PLACE_FROM_HZ = 150;
    private static final double PLACE_TO_HZ = 4000;
    private static final double PLACE_PASS_HZ = 45;
    private static final double PLACE_RATE_HZ = 250;
    private static final double FARTHEST_S = 0.05;

    /** A sweep in the programme itself. */
    static Passage there(ProgrammeReturn ret, Cue.Sweep cue) {
        double start = ret.sheet().seconds(cue.startFrame());
        return new Passage(
                ret.programme().audio(),
                ExponentialSweep.of(cue, ret.sheet().sampleRateHz()),
                s -> s + start,
                t -> t - start);
    }

    /**
     * A sweep in the return, the map of time set right for this sweep: the phase of the mixed
     * signal is the frequency times the error of time, so its slope over frequency is the mean
     * error.
     */
    static Passage back(ProgrammeReturn ret, Cue.Sweep cue) {
        double start = ret.sheet().seconds(cue.startFrame());
        Passage rough =
                new Passage(
                        ret.recording(),
                        ExponentialSweep.of(cue, ret.sheet().sampleRateHz()),
                        s -> ret.map().recordingSeconds(s + start),
                        t -> ret.map().programmeSeconds(t) - start);
        double late = rough.meanLateSeconds();
        return Math.abs(late) < FARTHEST_S ? rough.later(late) : rough;
    }

    private double meanLateSeconds() {
        double to = Math.min(PLACE_TO_HZ, sweep.endHz() / 2);
        double from = Math.max(PLACE_FROM_HZ, sweep.startHz());
        if (to < 2 * from) {
            return 0;
        }
        Downconverter converter =
                Downconverter.of(
                        PLACE_PASS_HZ, 2 * PLACE_PASS_HZ, source.sampleRateHz(), PLACE_RATE_HZ);
        Baseband loudest = Baseband.loudest(mixed(converter, from, to, 1).get(0));
        double[] phase = loudest.unwrappedPhase();
        SimpleRegression slope = new SimpleRegression();
        for (int k = 0; k < phase.length; k++) {
            slope.addData(frequencyHz(loudest, k), phase[k] / (2 * Math.PI));
        }
        return slope.getN() > 2 ? slope.getSlope() : 0;
    }

    private Passage later(double seconds) {
        return new Passage(
                source,
                sweep,
                s -> toRecording.applyAsDouble(s - seconds),
                t -> toSweep.applyAsDouble(t) + seconds);
    }

    /**
     * The recording mixed with the phase of the sweep while that passes two frequencies.
     *
     * @param orders how many multiples of the phase, from 1
     * @return one entry an order, each with one entry a channel
     */
    List<List<Baseband>> mixed(Downconverter converter, double fromHz, double toHz, int orders) {
        return converter.convert(
                source,
                toRecording.applyAsDouble(sweep.timeSeconds(fromHz)),
                toRecording.applyAsDouble(sweep.timeSeconds(toHz)),
                PhaseLaw.smooth(t -> sweep.phaseRadians(toSweep.applyAsDouble(t))),
                orders);
    }

    /** Frequency in the programme at a sample of the mixed signal, hertz. */
    double frequencyHz(Baseband base, int k) {
        return sweep.frequencyHz(toSweep.applyAsDouble(base.seconds(k)));
    }
}
