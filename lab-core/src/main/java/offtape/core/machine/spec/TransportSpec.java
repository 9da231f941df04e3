package offtape.core.machine.spec;

import static offtape.core.machine.spec.Limits.copy;
import static offtape.core.machine.spec.Limits.require;
import static offtape.core.machine.spec.Limits.within;

import java.util.List;

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
 */
public record TransportSpec(
        double speedDeviationPercent,
        double driftPercentPerMinute,
        List<ComponentSpec> components,
        ReelsSpec reels,
        RandomBandSpec randomFlutter,
        RandomBandSpec scrapeFlutter,
        MotionFileSpec motion) {

    /** A perfect transport. */
    public static final TransportSpec PERFECT =
            new TransportSpec(0, 0, List.of(), null, null, null, null);

    /** Checks the limits. */
    public TransportSpec {
        within("speedDeviationPercent", speedDeviationPercent, -20, 20, "%");
        within("driftPercentPerMinute", driftPercentPerMinute, -2, 2, "% a minute");
        components = copy("components", components, 64);
        require(
                randomFlutter == null || randomFlutter.highHz() <= 500,
                "\"randomFlutter\" must end at 500 Hz; what is faster belongs into"
                        + " \"scrapeFlutter\".");
    }
}
