package offtape.cli.realign;

import static offtape.cli.realign.RealignWords.text;

import java.util.ArrayList;
import java.util.List;

/** What was found against a session, in words. */
final class SessionWords {

    private static final double SAME_MS = 0.5;

    /** Clocks warm up and speeds creep by less from day to day; common practice, no source. */
    private static final double SAME_CLOCK_PPM = 5;

    private static final double SAME_SPEED_PPM = 300;

    private SessionWords() {}

    static List<String> lines(AgainstSession s) {
        List<String> all = new ArrayList<>();
        if (s.delayMs() != null) {
            all.add("  " + delay(s));
        }
        if (s.driftPpm() != null) {
            all.add("  " + speed(s));
        }
        return all;
    }

    private static String delay(AgainstSession s) {
        return Math.abs(s.differenceMs()) < SAME_MS
                ? text("the delay agrees with the session's (%.3f ms)", s.delayMs())
                : text(
                        "the delay differs from the session's by %.3f ms: another buffer size, or"
                                + " recorded from another moment?",
                        s.differenceMs());
    }

    private static String speed(AgainstSession s) {
        String what = s.isOnePass() ? "the clocks" : "the speed";
        double same = s.isOnePass() ? SAME_CLOCK_PPM : SAME_SPEED_PPM;
        double most = same + s.driftDifferenceUncertaintyPpm();
        if (Math.abs(s.driftDifferencePpm()) < most) {
            return text(
                    "%s agree%s with the session's (%s by %.2f ppm)",
                    what, s.isOnePass() ? "" : "s", fast(s.driftPpm()), Math.abs(s.driftPpm()));
        }
        return text(
                "%s differ%s from the session's (%s by %.2f ppm) by %.2f ppm: %s",
                what,
                s.isOnePass() ? "" : "s",
                fast(s.driftPpm()),
                Math.abs(s.driftPpm()),
                s.driftDifferencePpm(),
                s.isOnePass()
                        ? "another interface, or not one pass?"
                        : "speed changed between recording and replay, or another machine?");
    }

    private static String fast(double ppm) {
        return ppm < 0 ? "slow" : "fast";
    }
}
