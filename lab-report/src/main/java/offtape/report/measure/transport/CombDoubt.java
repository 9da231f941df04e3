package offtape.report.measure.transport;

import java.util.function.DoubleUnaryOperator;

/**
 * How far a comb can be undone at a rate. Near each zero three things spoil it: the stretch is
 * finite, so that the first moments before it are not known; the delay is not known exactly; and
 * noise is enlarged. All three are told as a power gain, e, that stands beside the comb's own: of
 * random motion the share |D|²/(|D|² + e) comes through.
 *
 * @param comb what is undone
 * @param seconds length of the stretch
 * @param ridge what the solution was held back by, as a power gain
 * @param density smooth density of random motion, squared percent a hertz
 * @param noise density of the noise of the recording, squared percent a hertz
 */
record CombDoubt(
        Comb comb,
        double seconds,
        double ridge,
        DoubleUnaryOperator density,
        DoubleUnaryOperator noise) {

    /**
     * What a finite stretch and the ridge do. A stretch of K delays does not show 1/K of white
     * motion; |D|²/(|D|² + e) leaves out √e/2 on average over the comb's period, so √e = 2/K.
     */
    double finite() {
        double ends = 2 * comb.seconds() / seconds;
        return ends * ends + ridge;
    }

    /** All that spoils, as a power gain. */
    double all(double hz) {
        return finite() + spoilt(hz);
    }

    /** What the delay's uncertainty and noise spoil, as a power gain. */
    double spoilt(double hz) {
        return comb.variance(hz) + noise.applyAsDouble(hz) / density.applyAsDouble(hz);
    }

    /** Share of the power of random motion at a rate that comes through. */
    double gain(double hz) {
        double power = comb.power(hz);
        return power / (power + all(hz));
    }

    /** What a filter leaves that follows a solution held back by {@link #finite} alone. */
    double later(double hz) {
        double power = comb.power(hz);
        return (power + finite()) / (power + all(hz));
    }
}
