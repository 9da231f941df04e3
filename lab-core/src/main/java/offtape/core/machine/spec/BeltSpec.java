package offtape.core.machine.spec;

import static offtape.core.machine.spec.Limits.within;

import offtape.core.text.Sentences;

/**
 * An aged belt between motor and capstan: it slips, so that the tape runs slow, creeps unevenly,
 * and changes as it warms. It adds to whatever else the transport does, in every pass.
 *
 * @param slipPercent by how much the tape runs slow, 0 to 10 %
 * @param wowPercent root mean square of random deviation between 0.2 and 4 Hz, 0 to 3 % (that band
 *     is common practice, no source)
 * @param driftPercentPerMinute steady change, 0 at the programme's first frame, −2 to 2 % a minute,
 *     + gets faster
 */
public record BeltSpec(double slipPercent, double wowPercent, double driftPercentPerMinute) {

    private static final Sentences SAID = Sentences.near(BeltSpec.class);

    private static final double LOW_HZ = 0.2;
    private static final double HIGH_HZ = 4;

    /** A belt that does as it should. */
    public static final BeltSpec NEW = new BeltSpec(0, 0, 0);

    /** Checks the limits. */
    public BeltSpec {
        within("slipPercent", slipPercent, 0, 10, "%");
        within("wowPercent", wowPercent, 0, 3, "%");
        within(
                "driftPercentPerMinute",
                driftPercentPerMinute,
                -2,
                2,
                SAID.say("unit.percent-a-minute"));
    }

    /** Its random wow. */
    public RandomBandSpec wow() {
        return new RandomBandSpec(wowPercent, LOW_HZ, HIGH_HZ);
    }
}
