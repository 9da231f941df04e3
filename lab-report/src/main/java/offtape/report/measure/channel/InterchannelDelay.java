package offtape.report.measure.channel;

import offtape.core.text.Sentences;
import offtape.core.unit.Quantity;

/**
 * How late the right channel is against the left, from the cross-spectrum along a sweep: the phase
 * difference over the whole band is a straight line through zero (or half a turn, if one channel is
 * inverted) whose slope is the delay. One tone alone could not tell the delay from itself plus
 * whole periods. Amplifiers whose responses differ turn the phase too, which is no delay of the
 * tape: where the phase follows the responses that share is told apart.
 *
 * @param delay µs, positive if the right channel is late
 * @param responseDelay what the different responses add to it below their edges, µs
 * @param phaseResidual what is left of the phase about both, degrees, root mean square
 * @param opposite whether the channels are of opposite polarity
 */
record InterchannelDelay(
        Quantity delay, Quantity responseDelay, Quantity phaseResidual, boolean opposite) {

    private static final Sentences SAID = Sentences.near(InterchannelDelay.class);

    /** Room for filters and interpolation on a clean path, µs, k = 2. */
    private static final double OWN_UNCERTAINTY_US = 0.03;

    /** The same as a share of the delay. */
    private static final double OWN_SHARE = 0.0005;

    /** A leak that nobody looked for may be so strong: −46 dB each way. */
    private static final double LEAK_SHARE = 0.01;

    /** Share of what the responses add that is not known: their course beyond the band. */
    private static final double RESPONSE_UNCERTAINTY = 0.5;

    /** The same where the phase does not tell whether the responses turn it. */
    private static final double UNTOLD = 1.5;

    /** One explanation of the phase must leave so many times less than the other. */
    private static final double CLEARLY = 4;

    private static final int FEWEST = 12;

    static InterchannelDelay unknown(String reason) {
        Quantity q = Quantity.unknown(reason);
        return new InterchannelDelay(q, q, q, false);
    }

    /**
     * Fits the phases of a sweep that sounded on both channels.
     *
     * @param leakKnown whether the leak between the channels was looked for and taken out
     */
    static InterchannelDelay of(PhaseBands bands, boolean leakKnown) {
        if (bands.size() < FEWEST) {
            return unknown(SAID.say("sweep-not-heard"));
        }
        double halfTurns = Math.rint(new PhaseLine(bands).startPhase() / Math.PI);
        PhaseBands turned = bands.turnedBy(-Math.PI * halfTurns);
        PhaseLine plain = new PhaseLine(turned);
        PhaseLine without = new PhaseLine(turned.withoutResponses());
        double share = plain.slope() - without.slope();
        boolean follows = isRuledOut(plain, without, bands.size());
        boolean clear = follows || isRuledOut(without, plain, bands.size());
        PhaseLine line = follows ? without : plain;
        double notKnown = Math.abs(share) * (follows ? RESPONSE_UNCERTAINTY : clear ? 0 : UNTOLD);
        double own = (OWN_SHARE + (leakKnown ? 0 : LEAK_SHARE)) * Math.abs(1e6 * line.slope());
        double fit = Math.hypot(2e6 * line.slopeError(), Math.hypot(own, OWN_UNCERTAINTY_US));
        double uncertainty = Math.hypot(fit, 1e6 * notKnown);
        return new InterchannelDelay(
                Quantity.known(1e6 * line.slope(), "µs", uncertainty),
                Quantity.known(follows ? 1e6 * share : 0, "µs", Math.hypot(fit, 1e6 * notKnown)),
                Quantity.known(Math.toDegrees(line.scatter()), "°", 0.2),
                Math.abs(halfTurns) % 2 == 1);
    }

    /** The same with the doubt of an interface's own delay, which is out of it already. */
    InterchannelDelay less(Quantity interfaces) {
        return delay.isKnown() && interfaces.isKnown()
                ? new InterchannelDelay(
                        Quantity.known(
                                delay.value(),
                                delay.unit(),
                                Math.hypot(delay.uncertainty(), interfaces.uncertainty())),
                        responseDelay,
                        phaseResidual,
                        opposite)
                : this;
    }

    /**
     * Whether one explanation leaves more than the phases may err by, and much more than another.
     */
    private static boolean isRuledOut(PhaseLine one, PhaseLine other, int bands) {
        return one.rest() > bands && one.rest() > CLEARLY * other.rest();
    }
}
