package offtape.report.measure;

import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import offtape.core.programme.ChannelSet;
import offtape.core.programme.Cue;
import offtape.core.unit.Decibels;
import offtape.core.unit.Quantity;
import offtape.report.result.Channels;

/** How the channels compare: balance, crosstalk, delay between them. */
final class ChannelMeasure {

    private static final double MARGIN_S = 0.06;

    /** A leak must stand this far over the noise beside it to be told, as a power ratio. */
    private static final double STANDS_OUT = 6;

    private final ProgrammeReturn ret;
    private final ReferenceLevels reference;

    ChannelMeasure(ProgrammeReturn ret, ReferenceLevels reference) {
        this.ret = ret;
        this.reference = reference;
    }

    /**
     * Measures the pair.
     *
     * @param sweep the sweep on both channels to take the delay from, or null
     */
    Channels measure(FollowedSweep sweep, NoiseDensities noise) {
        if (ret.channels() < 2) {
            Quantity one = Quantity.unknown("The recording has one channel only.");
            return new Channels(one, one, one, one, one, one);
        }
        Alone left = alone(ChannelSet.LEFT, 0, 1);
        Alone right = alone(ChannelSet.RIGHT, 1, 0);
        Quantity delay = Quantity.unknown("The programme has no sweep on both channels.");
        Quantity loss = delay;
        if (sweep != null) {
            double speed = ret.speedRatio(sweep.cue().startFrame(), sweep.cue().frames());
            Leakage leakage = new Leakage(left.leak(), right.leak(), 1000 * speed);
            delay = InterchannelDelay.of(sweep, noise, speed, leakage).delay();
            loss = InterchannelDelay.monoLoss(sweep);
        }
        return new Channels(
                balance(),
                left.crosstalk(),
                right.crosstalk(),
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
        double db = Decibels.ofAmplitude(reference.peaks()[1] / reference.peaks()[0]);
        double error =
                Math.hypot(reference.relativeUncertainty()[0], reference.relativeUncertainty()[1]);
        return Quantity.known(db, "dB", Math.hypot(2 * 8.686 * error, 0.01));
    }

    /**
     * What a tone on one channel alone tells.
     *
     * @param crosstalk level in the other channel
     * @param leak the other channel over this one, zero if it does not stand out of the noise
     */
    private record Alone(Quantity crosstalk, Complex leak) {

        static Alone unknown(String reason) {
            return new Alone(Quantity.unknown(reason), Complex.ZERO);
        }
    }

    private Alone alone(ChannelSet side, int from, int to) {
        Optional<Cue.Tone> tone =
                ret.cues(Cue.Tone.class).stream()
                        .filter(t -> t.channels() == side)
                        .filter(t -> t.frequencyHz() > 500 && t.frequencyHz() < 2000)
                        .min(Comparator.comparingDouble(ChannelMeasure::fromOneKilohertz));
        if (tone.isEmpty()) {
            return Alone.unknown(
                    "The recording holds no tone near 1 kHz on the "
                            + side.key()
                            + " channel alone.");
        }
        if (reference == null || !reference.heard(from) || !reference.heard(to)) {
            return Alone.unknown("The reference tone was not heard on both channels.");
        }
        Cue.Tone t = tone.get();
        double hz = t.frequencyHz() * ret.speedRatio(t.startFrame(), t.frames());
        List<OrderSpectrum> orders =
                OrderSpectrum.of(
                        ret.recording(), ret.span(t.startFrame(), t.frames(), MARGIN_S), hz);
        return orders.isEmpty()
                ? Alone.unknown("The tone on the " + side.key() + " channel was not heard.")
                : leak(orders.get(from), orders.get(to), t.levelDb(), to);
    }

    private static double fromOneKilohertz(Cue.Tone t) {
        return Math.abs(Math.log(t.frequencyHz() / 1000));
    }

    private Alone leak(OrderSpectrum source, OrderSpectrum heard, double levelDb, int to) {
        double noise = heard.noise(1);
        double power = heard.power(1);
        double zero = Decibels.ofAmplitude(reference.peaks()[to]) + levelDb;
        if (!(power > STANDS_OUT * noise)) {
            double limit = STANDS_OUT * Math.max(noise, 1e-16);
            return Alone.unknown(
                    String.format(
                            Locale.ROOT,
                            "The leak stays under the noise: less than %.0f dB.",
                            Decibels.ofPower(limit) - zero));
        }
        double db = Decibels.ofPower(power - noise) - zero;
        double uncertainty = 0.05 + 8.686 * Math.sqrt(2 * noise / power);
        return new Alone(
                Quantity.known(db, "dB", uncertainty),
                heard.fundamental().over(source.fundamental()));
    }
}
