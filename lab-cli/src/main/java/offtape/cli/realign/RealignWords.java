package offtape.cli.realign;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** What was done to a return in words, and what to do in the workstation. */
public final class RealignWords {

    /** Below this a difference of speed can be one of two sample clocks. */
    private static final double CLOCKS_PPM = 200;

    private RealignWords() {}

    static String text(String format, Object... values) {
        return String.format(Locale.ROOT, format, values);
    }

    /** The lines on one return. */
    public static List<String> lines(RealignReport r) {
        List<String> all = new ArrayList<>();
        all.add(r.returned() + " put in time with " + r.original() + ", written as " + r.file());
        all.add("  delay " + delay(r) + ", ± " + text("%.4f samples", r.delayUncertaintySamples()));
        all.add("  path  " + path(r));
        all.add("  speed " + speed(r));
        all.add("  wow   " + warp(r));
        all.add(
                r.levelSet()
                        ? "  level set back to that of the original"
                        : "  level left as it came back");
        if (r.session() != null) {
            all.addAll(SessionWords.lines(r.session()));
        }
        r.warnings().forEach(w -> all.add("Mind: " + w));
        all.add(next(r));
        return all;
    }

    private static String delay(RealignReport r) {
        return text("%.3f samples (%.4f ms)", r.delaySamples(), r.delayMs());
    }

    private static String path(RealignReport r) {
        List<String> channels =
                r.channels().stream()
                        .map(
                                c ->
                                        text("%+.2f dB", c.gainDb())
                                                + (c.polarity().equals("inverted")
                                                        ? " inverted (turned back)"
                                                        : ""))
                        .toList();
        return String.join(", ", channels) + text(", coherence %.4f", r.coherence());
    }

    private static String speed(RealignReport r) {
        if (r.driftPpm() == 0) {
            return r.exact()
                    ? "the same; samples are returned as they are"
                    : text("the same within ± %.2f ppm", r.driftUncertaintyPpm());
        }
        return text(
                "%s by %.2f ppm ± %.2f, taken out (%s)",
                r.driftPpm() > 0 ? "fast" : "slow",
                Math.abs(r.driftPpm()),
                r.driftUncertaintyPpm(),
                cause(r));
    }

    private static String cause(RealignReport r) {
        boolean isClocks = Math.abs(r.driftPpm()) < CLOCKS_PPM;
        if (r.session() != null && r.session().isOnePass()) {
            return isClocks
                    ? "two sample clocks: on the session's path the tape's mean speed cancels"
                    : "the tape's mean speed cancels on the session's path, and clocks differ less:"
                            + " another path, or another sample rate";
        }
        return isClocks
                ? "two sample clocks or the machine's speed, which this file alone does not tell"
                        + " apart"
                : "more than two sample clocks differ: the machine's speed or another sample rate";
    }

    private static String warp(RealignReport r) {
        if (r.warp().beforeMicroseconds() == 0) {
            return "none that stands out";
        }
        String before = text("time swings by %.1f µs rms", r.warp().beforeMicroseconds());
        return r.warp().removed()
                ? before
                        + text(
                                ", taken out; %.2f µs rms expected to be left",
                                r.warp().expectedAfterMicroseconds())
                : before + ", left as it is (--unwarp takes it out)";
    }

    private static String next(RealignReport r) {
        return text(
                "In the workstation: put %s at the original's place. To move the returned track itself,"
                        + " slide it %.2f samples (%.3f ms) %s%s.",
                r.file(),
                Math.abs(r.delaySamples()),
                Math.abs(r.delayMs()),
                r.delaySamples() < 0 ? "later" : "earlier",
                r.channels().stream().anyMatch(c -> c.polarity().equals("inverted"))
                        ? " and turn its polarity over"
                        : "");
    }
}
