package offtape.core.transport;

import offtape.core.json.Range;

/**
 * A motor.
 *
 * @param name for people; default "motor"
 * @param rotationHz turns a second, 0.1 to 200, or null
 * @param rpm turns a minute instead, 6 to 12 000, or null
 */
public record Motor(String name, Double rotationHz, Double rpm) {

    /** Checks the limits and that the rate is given once. */
    public Motor {
        name = Range.name(name, "motor");
        Range.within("rotationHz", rotationHz, 0.1, 200, "Hz");
        Range.within("rpm", rpm, 6, 12_000, "turns a minute");
        Range.require(
                rotationHz == null || rpm == null,
                "\"rotationHz\" and \"rpm\" say the same; give one of them.");
    }

    /** Turns a second, or null if not known. */
    Double turnsPerSecond() {
        return rpm == null ? rotationHz : (Double) (rpm / 60);
    }
}
