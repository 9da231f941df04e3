package offtape.cli.realign;

import java.util.ArrayList;
import java.util.List;
import offtape.cli.terminal.Terminal;
import offtape.core.text.Phrases;

/** What was done to a return in words, and what to do in the workstation. */
public final class RealignWords {

    /** Below this a difference of speed can be one of two sample clocks. */
    private static final double CLOCKS_PPM = 200;

    private static final String INDENT = "  ";

    private final Phrases phrases;

    private RealignWords(Phrases phrases) {
        this.phrases = phrases;
    }

    /** The words spoken on a terminal. */
    public static RealignWords on(Terminal terminal) {
        return new RealignWords(terminal.phrases(RealignWords.class));
    }

    /** The lines on one return. */
    public List<String> lines(RealignReport r) {
        List<String> all = new ArrayList<>();
        all.add(phrases.say("realign.in-time", r.returned(), r.original(), r.file()));
        all.add(INDENT + delay(r));
        all.add(INDENT + path(r));
        all.add(INDENT + speed(r));
        all.add(INDENT + warp(r));
        all.add(INDENT + phrases.say(r.levelSet() ? "realign.level-set" : "realign.level-kept"));
        if (r.session() != null) {
            new SessionWords(phrases).lines(r.session()).forEach(l -> all.add(INDENT + l));
        }
        r.warnings().forEach(w -> all.add(phrases.say("realign.mind", phrases.told(w))));
        all.add(next(r));
        return all;
    }

    private String delay(RealignReport r) {
        return phrases.say(
                "realign.delay", r.delaySamples(), r.delayMs(), r.delayUncertaintySamples());
    }

    private String path(RealignReport r) {
        List<String> channels =
                r.channels().stream()
                        .map(
                                c ->
                                        phrases.say(
                                                c.polarity().equals("inverted")
                                                        ? "realign.inverted"
                                                        : "realign.gain",
                                                c.gainDb()))
                        .toList();
        return phrases.say("realign.path", String.join(", ", channels), r.coherence());
    }

    private String speed(RealignReport r) {
        if (r.driftPpm() == 0) {
            return r.exact()
                    ? phrases.say("realign.exact")
                    : phrases.say("realign.same-speed", r.driftUncertaintyPpm());
        }
        return phrases.say(
                "realign.speed",
                fast(phrases, r.driftPpm()),
                r.driftUncertaintyPpm(),
                phrases.say(cause(r)));
    }

    /** By how much something is fast or slow. */
    static String fast(Phrases phrases, double ppm) {
        return phrases.say(ppm < 0 ? "realign.slow" : "realign.fast", Math.abs(ppm));
    }

    private static String cause(RealignReport r) {
        boolean isClocks = Math.abs(r.driftPpm()) < CLOCKS_PPM;
        if (r.session() != null && r.session().isOnePass()) {
            return isClocks ? "realign.cause-clocks" : "realign.cause-other-path";
        }
        return isClocks ? "realign.cause-clocks-or-speed" : "realign.cause-speed";
    }

    private String warp(RealignReport r) {
        double before = r.warp().beforeMicroseconds();
        if (before == 0) {
            return phrases.say("realign.no-warp");
        }
        return r.warp().removed()
                ? phrases.say("realign.warp-removed", before, r.warp().expectedAfterMicroseconds())
                : phrases.say("realign.warp-left", before);
    }

    private String next(RealignReport r) {
        boolean isTurned = r.channels().stream().anyMatch(c -> c.polarity().equals("inverted"));
        String way = r.delaySamples() < 0 ? "later" : "earlier";
        return phrases.say(
                (isTurned ? "realign.turned-" : "realign.slide-") + way,
                r.file(),
                Math.abs(r.delaySamples()),
                Math.abs(r.delayMs()));
    }
}
