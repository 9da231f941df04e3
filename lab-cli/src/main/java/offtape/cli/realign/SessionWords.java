package offtape.cli.realign;

import java.util.ArrayList;
import java.util.List;
import offtape.core.text.Phrases;

/**
 * What was found against a session, in words.
 *
 * @param phrases those of the package
 */
record SessionWords(Phrases phrases) {

    private static final double SAME_MS = 0.5;

    /** Clocks warm up and speeds creep by less from day to day; common practice, no source. */
    private static final double SAME_CLOCK_PPM = 5;

    private static final double SAME_SPEED_PPM = 300;

    List<String> lines(AgainstSession s) {
        List<String> all = new ArrayList<>();
        if (s.delayMs() != null) {
            all.add(delay(s));
        }
        if (s.driftPpm() != null) {
            all.add(speed(s));
        }
        return all;
    }

    private String delay(AgainstSession s) {
        return Math.abs(s.differenceMs()) < SAME_MS
                ? phrases.say("realign.delay-agrees", s.delayMs())
                : phrases.say("realign.delay-differs", s.differenceMs());
    }

    private String speed(AgainstSession s) {
        double same = s.isOnePass() ? SAME_CLOCK_PPM : SAME_SPEED_PPM;
        double most = same + s.driftDifferenceUncertaintyPpm();
        String told = RealignWords.fast(phrases, s.driftPpm());
        if (Math.abs(s.driftDifferencePpm()) < most) {
            return phrases.say(
                    s.isOnePass() ? "realign.clocks-agree" : "realign.speed-agrees", told);
        }
        return phrases.say(
                s.isOnePass() ? "realign.clocks-differ" : "realign.speed-differs",
                told,
                s.driftDifferencePpm());
    }
}
