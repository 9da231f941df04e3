package offtape.cli.realign;

import com.fasterxml.jackson.annotation.JsonInclude;

/**
 * What was found against what a session knows.
 *
 * @param mode capture mode of the session, or null
 * @param delayMs of the session, or null
 * @param differenceMs what was found less that, or null
 * @param driftPpm by how much the track should have come back fast after the session, or null
 * @param driftDifferencePpm what was found less that, or null
 * @param driftDifferenceUncertaintyPpm expanded, k = 2, or null
 * @param clockErrorPpm by how much the session's recording clock was fast, or null
 */
@JsonInclude(JsonInclude.Include.NON_NULL)
public record AgainstSession(
        String mode,
        Double delayMs,
        Double differenceMs,
        Double driftPpm,
        Double driftDifferencePpm,
        Double driftDifferenceUncertaintyPpm,
        Double clockErrorPpm) {

    /** Sets the two against each other; uncertainties are expanded, k = 2. */
    static AgainstSession of(
            SessionTiming session, double delayMs, double ppm, double uncertaintyPpm) {
        Double expected = session.expectedPpm();
        return new AgainstSession(
                session.mode(),
                session.delayMs(),
                session.delayMs() == null ? null : delayMs - session.delayMs(),
                expected,
                expected == null ? null : ppm - expected,
                expected == null
                        ? null
                        : Math.hypot(uncertaintyPpm, session.expectedUncertaintyPpm()),
                session.clockPpm());
    }

    /** Whether recording and replay were one pass, in which a machine's mean speed cancels. */
    boolean isOnePass() {
        return "off-tape".equals(mode) || "loopback".equals(mode);
    }
}
