package offtape.report.measure.channel;

import offtape.core.programme.ChannelSet;
import offtape.core.programme.Cue;
import offtape.core.unit.Decibels;
import offtape.core.unit.Quantity;
import offtape.report.locate.ProgrammeReturn;
import offtape.report.measure.noise.NoiseDensities;
import offtape.report.measure.sweep.FollowedSweep;
import offtape.report.measure.tone.ReferenceLevels;
import offtape.report.result.Channels;

/** How the channels compare: balance, crosstalk, delay between them. */
public final class ChannelMeasure {

    private final ProgrammeReturn ret;
    private final ReferenceLevels reference;

    private final CrosstalkMeasure crosstalk;

    public ChannelMeasure(
            ProgrammeReturn ret, ReferenceLevels reference, CrosstalkMeasure crosstalk) {
        this.ret = ret;
        this.reference = reference;
        this.crosstalk = crosstalk;
    }

    /**
     * Measures the pair.
     *
     * @param sweep the sweep on both channels to take the delay from, or null
     */
    public Channels measure(FollowedSweep sweep, NoiseDensities noise) {
        if (ret.channels() < 2) {
            Quantity one = Quantity.unknown("The recording has one channel only.");
            return new Channels(one, one, one, one, one, one);
        }
        Quantity delay =
                Quantity.unknown(
                        ret.whyMissing(
                                Cue.Sweep.class,
                                s -> s.channels() == ChannelSet.BOTH,
                                "The programme has no sweep on both channels."));
        Quantity loss = delay;
        if (sweep != null) {
            double speed = ret.speedRatio(sweep.cue().startFrame(), sweep.cue().frames());
            delay = InterchannelDelay.of(sweep, noise, speed, crosstalk.leakage()).delay();
            loss = InterchannelDelay.monoLoss(sweep);
        }
        return new Channels(
                balance(),
                crosstalk.leftToRight(),
                crosstalk.rightToLeft(),
                delay,
                Quantity.unknown(
                        "The angle follows from the delay and the distance between the tracks, which"
                                + " was not given."),
                loss);
    }

    private Quantity balance() {
        if (reference == null || !reference.heard(0) || !reference.heard(1)) {
            return Quantity.unknown("The reference tone was not heard on both channels.");
        }
        double hz = reference.cue().frequencyHz();
        double db =
                Decibels.ofAmplitude(
                        crosstalk.leakage().unmixedRatio(reference.rightOverLeft(), hz).size());
        double error =
                Math.hypot(reference.relativeUncertainty()[0], reference.relativeUncertainty()[1]);
        return Quantity.known(db, "dB", Math.hypot(2 * 8.686 * error, 0.01));
    }
}
