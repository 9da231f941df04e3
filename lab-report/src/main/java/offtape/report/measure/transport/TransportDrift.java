package offtape.report.measure.transport;

import offtape.core.text.Sentences;
import offtape.core.unit.Quantity;

/** The transport's own drift, as far as two sample clocks that differ leave it known. */
final class TransportDrift {

    private static final Sentences SAID = Sentences.near(TransportDrift.class);

    private static final double SHORTEST_S = 15;

    /** Drift that could hide behind the clocks and still leaves the figure of use, percent. */
    private static final double CLEAR = 0.02;

    private TransportDrift() {}

    /**
     * The figure, percent.
     *
     * @param value drift as it was undone, a steady one left out, percent
     * @param delay time from record to replay head
     * @param seconds length of the tone
     * @param heardMeanPercent mean of the return's deviation: two sample clocks, or a steady drift
     */
    static Quantity of(double value, HeadDelay delay, double seconds, double heardMeanPercent) {
        if (seconds < SHORTEST_S) {
            return Quantity.unknown(SAID.say("no-drift"));
        }
        // a constant c of the return is a drift of c/τ a second
        double steady = Math.abs(heardMeanPercent) / delay.seconds() * seconds;
        if (steady > Math.max(CLEAR, value)) {
            return Quantity.unknown(SAID.say("drift-or-clocks"));
        }
        double slow = 2 * delay.sigmaSeconds() / delay.seconds();
        return Quantity.known(value, "%", (0.1 + slow) * value + 0.0005 + steady);
    }
}
