package offtape.core.machine.spec;

import static offtape.core.machine.spec.Limits.copy;
import static offtape.core.machine.spec.Limits.orElse;
import static offtape.core.machine.spec.Limits.require;
import static offtape.core.machine.spec.Limits.within;

import java.util.List;
import offtape.core.text.Sentences;

/**
 * How the tape moves. What is absent is perfect.
 *
 * @param speedDeviationPercent constant deviation from the nominal speed, −20 to 20 %, + is fast
 * @param driftPercentPerMinute steady change, 0 at the programme's first frame, −2 to 2 % a minute
 * @param components steady lines, at most 64
 * @param reels slowly moving lines of the reels, or null
 * @param randomFlutter speed noise up to 500 Hz, or null
 * @param scrapeFlutter speed noise of the tape's own vibration, usually in kilohertz, or null
 * @param motion a measured motion added to the rest, or null
 * @param belt an aged belt; default one that does nothing
 */
public record TransportSpec(
        double speedDeviationPercent,
        double driftPercentPerMinute,
        List<ComponentSpec> components,
        ReelsSpec reels,
        RandomBandSpec randomFlutter,
        RandomBandSpec scrapeFlutter,
        MotionFileSpec motion,
        BeltSpec belt) {

    private static final Sentences SAID = Sentences.near(TransportSpec.class);

    /** A perfect transport. */
    public static final TransportSpec PERFECT =
            new TransportSpec(0, 0, List.of(), null, null, null, null, null);

    /** Checks the limits. */
    public TransportSpec {
        within("speedDeviationPercent", speedDeviationPercent, -20, 20, "%");
        within(
                "driftPercentPerMinute",
                driftPercentPerMinute,
                -2,
                2,
                SAID.say("unit.percent-a-minute"));
        belt = orElse(belt, BeltSpec.NEW);
        components = copy("components", components, 64);
        require(
                randomFlutter == null || randomFlutter.highHz() <= 500,
                SAID.say("flutter-too-fast"));
    }

    /** Constant deviation with the belt's slip, percent. */
    public double constantPercent() {
        return speedDeviationPercent - belt.slipPercent();
    }

    /** Steady change with the belt's, percent a minute. */
    public double changePercentPerMinute() {
        return driftPercentPerMinute + belt.driftPercentPerMinute();
    }

    /** The same transport whose measured motion is another. */
    TransportSpec withMotion(MotionFileSpec other) {
        return new TransportSpec(
                speedDeviationPercent,
                driftPercentPerMinute,
                components,
                reels,
                randomFlutter,
                scrapeFlutter,
                other,
                belt);
    }
}
