package offtape.core.transport;

import offtape.core.json.Range;
import offtape.core.text.Sentences;

/**
 * A motor.
 *
 * @param name for people; default "motor"
 * @param rotationHz turns a second, 0.1 to 200, or null
 * @param rpm turns a minute instead, 6 to 12 000, or null
 */
public record Motor(String name, Double rotationHz, Double rpm) {

    private static final Sentences SAID = Sentences.near(Motor.class);

    /** Checks the limits and that the rate is given once. */
    public Motor {
        name = Range.name(name, SAID.say("part.motor"));
        Range.within("rotationHz", rotationHz, 0.1, 200, "Hz");
        Range.within("rpm", rpm, 6, 12_000, SAID.say("unit.turns-a-minute"));
        Range.require(rotationHz == null || rpm == null, SAID.say("rate-twice"));
    }

    /** Turns a second, or null if not known. */
    Double turnsPerSecond() {
        return rpm == null ? rotationHz : (Double) (rpm / 60);
    }
}
