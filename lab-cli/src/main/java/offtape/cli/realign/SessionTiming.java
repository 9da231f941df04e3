package offtape.cli.realign;

import offtape.core.unit.Quantity;
import offtape.report.result.Results;
import offtape.report.result.Timing;

/**
 * What a session knows of time on its path.
 *
 * @param mode capture mode, or null if it was not told
 * @param delayMs of the path, or null
 * @param clockPpm by how much the recording clock was fast, parts in a million, or null
 * @param clockUncertaintyPpm expanded, k = 2, or null
 * @param speedPpm by how much its tone came back fast, parts in a million, or null if none of the
 *     mean speed is heard in its mode
 * @param speedUncertaintyPpm expanded, k = 2, or null
 */
public record SessionTiming(
        String mode,
        Double delayMs,
        Double clockPpm,
        Double clockUncertaintyPpm,
        Double speedPpm,
        Double speedUncertaintyPpm) {

    private static final double PPM_A_PERCENT = 1e4;

    /** That of a session's results. */
    public static SessionTiming of(Results results) {
        Timing timing = results.timing();
        Quantity clock = timing == null ? null : timing.recordingClockError();
        boolean isClockKnown = clock != null && clock.isKnown();
        Quantity speed = results.speed() == null ? null : results.speed().deviation();
        boolean isSpeedKnown = speed != null && speed.isKnown();
        return new SessionTiming(
                results.session().mode(),
                timing == null ? null : timing.delay().value(),
                isClockKnown ? clock.value() : null,
                isClockKnown ? clock.uncertainty() : null,
                isSpeedKnown ? PPM_A_PERCENT * speed.value() : null,
                isSpeedKnown ? PPM_A_PERCENT * speed.uncertainty() : null);
    }

    /** Whether recording and replay were one pass, in which a machine's mean speed cancels. */
    boolean isOnePass() {
        return "off-tape".equals(mode) || "loopback".equals(mode);
    }

    /**
     * By how much a track should come back fast on this path, parts in a million; null if the
     * session does not tell. A fast recording clock makes more samples, which is slow.
     */
    Double expectedPpm() {
        return isOnePass() ? negative(clockPpm) : "two-pass".equals(mode) ? speedPpm : null;
    }

    /** Uncertainty of that, expanded, k = 2. */
    double expectedUncertaintyPpm() {
        Double told = isOnePass() ? clockUncertaintyPpm : speedUncertaintyPpm;
        return told == null ? 0 : told;
    }

    private static Double negative(Double value) {
        return value == null ? null : Double.valueOf(0 - value);
    }
}
