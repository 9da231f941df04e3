package offtape.report.measure.channel;

import java.util.List;
import offtape.core.programme.ChannelSet;
import offtape.core.programme.Cue;
import offtape.core.text.Sentences;
import offtape.core.unit.Decibels;
import offtape.core.unit.Quantity;
import offtape.report.locate.ProgrammeReturn;
import offtape.report.measure.loopback.KnownInterface;
import offtape.report.measure.noise.NoiseDensities;
import offtape.report.measure.sweep.FollowedSweep;
import offtape.report.measure.tone.ReferenceLevels;
import offtape.report.result.Channels;
import offtape.report.result.CrosstalkCurve;
import offtape.report.result.PairPhaseCurve;
import offtape.report.result.Session;

/** How the channels compare: balance, crosstalk, delay between them. */
public final class ChannelMeasure {

    private static final Sentences SAID = Sentences.near(ChannelMeasure.class);

    /** What order tracking may leave of the balance, dB, k = 2. */
    private static final double OWN_BALANCE_DB = 0.0005;

    private final ProgrammeReturn ret;
    private final ReferenceLevels reference;
    private final CrosstalkMeasure crosstalk;
    private final Session session;

    public ChannelMeasure(
            ProgrammeReturn ret,
            ReferenceLevels reference,
            CrosstalkMeasure crosstalk,
            Session session) {
        this.ret = ret;
        this.reference = reference;
        this.crosstalk = crosstalk;
        this.session = session;
    }

    /**
     * Measures the pair.
     *
     * @param sweep the sweep on both channels to take the delay from, or null
     * @param known the interface to be taken out of delays, or null
     */
    public Channels measure(FollowedSweep sweep, NoiseDensities noise, KnownInterface known) {
        if (ret.channels() < 2) {
            return Channels.unknown(SAID.say("one-channel"));
        }
        if (reference != null && reference.deadChannel() >= 0) {
            return Channels.unknown(
                    SAID.say("dead-channel", ProgrammeReturn.channelName(reference.deadChannel())));
        }
        return sweep == null ? withoutSweep() : withSweep(sweep, noise, known);
    }

    private Channels withoutSweep() {
        InterchannelDelay delay =
                InterchannelDelay.unknown(
                        ret.whyMissing(
                                Cue.Sweep.class,
                                s -> s.channels() == ChannelSet.BOTH,
                                SAID.say("no-sweep")));
        DelayWander wander = DelayWander.of(ret, crosstalk.leakage(), delay);
        return channels(delay, delay.delay(), wander, delay.delay(), 1, List.of(), null);
    }

    private Channels withSweep(FollowedSweep sweep, NoiseDensities noise, KnownInterface known) {
        double speed = ret.speedRatio(sweep.cue().startFrame(), sweep.cue().frames());
        FollowedSweep own = known == null ? sweep : sweep.without(known, ret);
        Quantity interfaces =
                known == null ? Quantity.known(0, "µs", 0) : known.figures().interchannelDelay();
        PhaseBands bands = PhaseBands.of(own, noise, speed, crosstalk.leakage());
        InterchannelDelay delay = InterchannelDelay.of(bands, crosstalk.looked()).less(interfaces);
        DelayWander wander =
                DelayWander.of(ret, crosstalk.leakage(), delay)
                        .earlier(delay.delay().isKnown() ? interfaces : delay.delay());
        return channels(
                delay,
                withWander(delay.delay(), wander.rms()),
                wander,
                MonoLoss.of(own, noise, speed, delay, wander.rms()),
                speed,
                new CrosstalkCurves(ret, sweep, noise, crosstalk.swapped()).measure(),
                bands.difference(speed));
    }

    /** The sweep passes in a moment; where the delay wanders, its mean may lie elsewhere. */
    private static Quantity withWander(Quantity delay, Quantity rms) {
        return delay.isKnown() && rms.isKnown()
                ? Quantity.known(
                        delay.value(), "µs", Math.hypot(delay.uncertainty(), 2 * rms.value()))
                : delay;
    }

    private Channels channels(
            InterchannelDelay fit,
            Quantity delay,
            DelayWander wander,
            Quantity monoLoss,
            double speedRatio,
            List<CrosstalkCurve> curves,
            PairPhaseCurve difference) {
        Azimuth azimuth = new Azimuth(session.tracks(), session.tapeSpeedMmPerS(), speedRatio);
        return new Channels(
                balance(),
                crosstalk.leftToRight(),
                crosstalk.rightToLeft(),
                delay,
                azimuth.of(delay),
                monoLoss,
                wander.rms(),
                wander.peakToPeak(),
                azimuth.of(wander.rms()),
                fit.responseDelay(),
                fit.phaseResidual(),
                curves,
                wander.trace(),
                crosstalk.leftToRightPhase(),
                crosstalk.rightToLeftPhase(),
                difference);
    }

    private Quantity balance() {
        if (reference == null || !reference.heard(0) || !reference.heard(1)) {
            return Quantity.unknown(SAID.say("no-reference"));
        }
        double hz = reference.cue().frequencyHz();
        double db =
                Decibels.ofAmplitude(
                        crosstalk.leakage().unmixedRatio(reference.rightOverLeft(), hz).size());
        double error =
                Math.hypot(reference.relativeUncertainty()[0], reference.relativeUncertainty()[1]);
        return Quantity.known(db, "dB", Math.hypot(2 * 8.686 * error, OWN_BALANCE_DB));
    }
}
