package offtape.report.measure.pass;

import offtape.core.unit.Quantity;

/**
 * A part of the power of a deviation.
 *
 * @param power mean square, %²; an unbiased estimate may fall a little below nothing
 * @param uncertainty of the power, expanded, k = 2
 */
record Share(double power, double uncertainty) {

    /** Both parts, whose errors have nothing to do with each other. */
    Share plus(Share other) {
        return new Share(power + other.power, Math.hypot(uncertainty, other.uncertainty));
    }

    Share times(double factor) {
        return new Share(factor * power, factor * uncertainty);
    }

    /** Whether it is known within half of what both parts have together. */
    boolean isToldBeside(Share other) {
        return uncertainty <= (power + other.power) / 2;
    }

    /** Root mean square in percent; its uncertainty reaches to the farther end of the power's. */
    Quantity rms() {
        double value = Math.sqrt(Math.max(0, power));
        double up = Math.sqrt(Math.max(0, power + uncertainty)) - value;
        double down = value - Math.sqrt(Math.max(0, power - uncertainty));
        return Quantity.known(value, "%", Math.max(up, down));
    }
}
