package offtape.report.measure.channel;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import offtape.core.programme.ChannelSet;
import offtape.core.programme.Cue;
import offtape.core.text.Sentences;
import offtape.core.unit.Decibels;
import offtape.core.unit.Quantity;
import offtape.report.locate.ProgrammeReturn;
import offtape.report.measure.sweep.FollowedSweep;
import offtape.report.measure.sweep.Leakage;
import offtape.report.measure.sweep.SweepFollower;
import offtape.report.measure.tone.Complex;
import offtape.report.measure.tone.OrderSpectrum;
import offtape.report.measure.tone.ReferenceLevels;

/** What each channel hears of a tone that sounds on the other alone. */
public final class CrosstalkMeasure {

    private static final Sentences SAID = Sentences.near(CrosstalkMeasure.class);

    /** A leak must stand this far over the noise beside it to be told, as a power ratio. */
    private static final double STANDS_OUT = 6;

    /** A stronger ratio of the channels is no leak. */
    private static final double STRONGEST = 0.5;

    /** Stands for the ratio to a channel that holds digital silence. */
    private static final double SILENT_SOURCE = 1e6;

    /** Bands to either side of 1 kHz that a sweep is read in: a twelfth of an octave. */
    private static final int SWEEP_REACH = SweepFollower.BANDS / 12;

    /** So much of what a sweep shows on the other channel must keep step with it at least. */
    private static final double IN_STEP = 0.5;

    /** More of it where there are few values: noise alone shows as much in one of 200. */
    private static final double BY_CHANCE = 0.005;

    /** What order tracking may leave of a leak, dB, k = 2. */
    private static final double OWN_DB = 0.005;

    /** What a leak that changes over a sixth of an octave leaves, dB, k = 2. */
    private static final double OWN_SWEEP_DB = 0.05;

    private final ProgrammeReturn ret;
    private final ReferenceLevels reference;
    private final boolean swapped;
    private final Alone left;
    private final Alone right;

    /**
     * Measures both ways. Where each side alone is louder on the other channel, the channels of the
     * recording are exchanged, and what sounds on one of them alone is the other side.
     */
    public CrosstalkMeasure(ProgrammeReturn ret, ReferenceLevels reference) {
        this.ret = ret;
        this.reference = reference;
        Alone asNamed = alone(ChannelSet.LEFT, 0, 1);
        Alone asNamedToo = alone(ChannelSet.RIGHT, 1, 0);
        this.swapped = asNamed.leak().ratio().size() > 1 && asNamedToo.leak().ratio().size() > 1;
        this.left = swapped ? alone(ChannelSet.RIGHT, 0, 1) : asNamed;
        this.right = swapped ? alone(ChannelSet.LEFT, 1, 0) : asNamedToo;
    }

    /** Left in right, dB re the right channel's reference; channels of the recording. */
    Quantity leftToRight() {
        return left.crosstalk();
    }

    /** Right in left, dB re the left channel's reference. */
    Quantity rightToLeft() {
        return right.crosstalk();
    }

    /** Phase of left in right re the left channel, degrees; null if no leak is told. */
    Double leftToRightPhase() {
        return left.phaseDegrees();
    }

    /** Phase of right in left re the right channel, degrees; null if no leak is told. */
    Double rightToLeftPhase() {
        return right.phaseDegrees();
    }

    /** Whether something sounds on one channel alone, so that a leak would be known. */
    boolean looked() {
        return ret.cues(Cue.Tone.class).stream().anyMatch(t -> t.channels() != ChannelSet.BOTH)
                || ret.cues(Cue.Sweep.class).stream()
                        .anyMatch(s -> s.channels() != ChannelSet.BOTH);
    }

    /** Whether each side alone is louder on the other channel: the channels are exchanged. */
    public boolean swapped() {
        return swapped;
    }

    /**
     * The leak itself, to be taken out of other figures; none where it is not known, or so strong
     * that it is a matter of wiring.
     */
    public Leakage leakage() {
        return new Leakage(left.known(), right.known());
    }

    /**
     * What a tone on one channel alone tells.
     *
     * @param crosstalk level in the other channel
     * @param leak the other channel over this one, none if it does not stand out of the noise
     */
    private record Alone(Quantity crosstalk, Leakage.Leak leak) {

        static Alone unknown(String reason) {
            return new Alone(Quantity.unknown(reason), Leakage.Leak.NONE);
        }

        Double phaseDegrees() {
            return leak.ratio().size() > 0 ? (Double) Math.toDegrees(leak.ratio().phase()) : null;
        }

        Leakage.Leak known() {
            return leak.ratio().size() < STRONGEST ? leak : Leakage.Leak.NONE;
        }
    }

    private Alone alone(ChannelSet side, int from, int to) {
        if (ret.channels() < 2) {
            return Alone.unknown(SAID.say("one-channel"));
        }
        Optional<Cue.Tone> tone =
                ret.cues(Cue.Tone.class).stream()
                        .filter(t -> t.channels() == side)
                        .filter(t -> t.frequencyHz() > 500 && t.frequencyHz() < 2000)
                        .min(Comparator.comparingDouble(CrosstalkMeasure::fromOneKilohertz));
        if (reference == null || !reference.heard(from) || !reference.heard(to)) {
            return Alone.unknown(SAID.say("no-reference"));
        }
        if (tone.isEmpty()) {
            return aloneInSweep(side, from, to);
        }
        Cue.Tone t = tone.get();
        List<OrderSpectrum> orders = OrderSpectrum.of(ret, t);
        return orders.isEmpty()
                ? Alone.unknown(SAID.say("no-tone-on-channel", side.key()))
                : leak(orders.get(from), orders.get(to), t, to);
    }

    /** Where no tone sounds on one channel alone a sweep may, read around 1 kHz. */
    private Alone aloneInSweep(ChannelSet side, int from, int to) {
        Optional<FollowedSweep> sweep =
                ret.cues(Cue.Sweep.class).stream()
                        .filter(s -> s.channels() == side)
                        .filter(s -> s.startHz() < 800 && s.endHz() > 1250)
                        .findFirst()
                        .map(s -> new SweepFollower(s, ret.sheet().sampleRateHz()).follow(ret));
        if (sweep.isEmpty()) {
            return Alone.unknown(
                    ret.whyMissing(
                            Cue.Tone.class,
                            t -> t.channels() == side,
                            SAID.say("nothing-alone", side.key())));
        }
        FollowedSweep s = sweep.get();
        int middle = s.index(1000);
        Complex together = Complex.ZERO;
        double source = 0;
        double heard = 0;
        int bands = 0;
        double values = 0;
        for (int i = middle - SWEEP_REACH; i <= middle + SWEEP_REACH; i++) {
            Complex cross = new Complex(s.crossRe(i), s.crossIm(i));
            together = together.plus(from == 0 ? cross.conjugate() : cross);
            source += s.power(from, i);
            heard += s.power(to, i);
            bands++;
            values += s.values(i);
        }
        Complex leak = together.times(1 / source);
        double coherent = leak.size() * leak.size() * source;
        // one value is the leak's own
        double spare = values - 1;
        double least = Math.max(IN_STEP, 1 - Math.pow(BY_CHANCE, 1 / spare));
        if (!(spare > 0 && coherent > least * heard)) {
            return Alone.unknown(SAID.say("leak-in-noise"));
        }
        double peak = 2 * Math.sqrt(coherent / bands);
        double zero = Decibels.ofAmplitude(reference.peaks()[to]) + s.cue().levelDb();
        double noise = Math.max(0, heard - coherent) / spare;
        double uncertainty = Math.hypot(8.686 * Math.sqrt(2 * noise / coherent), OWN_SWEEP_DB);
        return new Alone(
                Quantity.known(Decibels.ofAmplitude(peak) - zero, "dB", uncertainty),
                new Leakage.Leak(leak, 1000));
    }

    private static double fromOneKilohertz(Cue.Tone t) {
        return Math.abs(Math.log(t.frequencyHz() / 1000));
    }

    private Alone leak(OrderSpectrum source, OrderSpectrum heard, Cue.Tone tone, int to) {
        double noise = heard.noise(1);
        double power = heard.power(1);
        double zero = Decibels.ofAmplitude(reference.peaks()[to]) + tone.levelDb();
        if (!(power > STANDS_OUT * noise)) {
            double limit = STANDS_OUT * Math.max(noise, 1e-16);
            return Alone.unknown(SAID.say("leak-below", Decibels.ofPower(limit) - zero));
        }
        double db = Decibels.ofPower(power - noise) - zero;
        double uncertainty = Math.hypot(8.686 * Math.sqrt(2 * noise / power), OWN_DB);
        Complex ratio =
                source.power(1) > 0
                        ? heard.fundamental().over(source.fundamental())
                        : Complex.polar(SILENT_SOURCE, 0);
        return new Alone(
                Quantity.known(db, "dB", uncertainty), new Leakage.Leak(ratio, tone.frequencyHz()));
    }
}
