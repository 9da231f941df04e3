package offtape.report.judge;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.stream.Collectors;
import offtape.core.text.Sentences;
import offtape.report.fault.Likelihood;

/** Why something is decided, or is not, in plain sentences. */
final class Grounds {

    private static final Sentences SAID = Sentences.near(Grounds.class);

    /** Less likely sound than this, a machine is out of the ordinary. */
    private static final double STRANGE = 0.1;

    private final Situation situation;

    Grounds(Situation situation) {
        this.situation = situation;
    }

    /** The grounds of a decision, what weighs most first. */
    List<String> because(Course course) {
        if (!situation.voids().isEmpty()) {
            return scope(course);
        }
        List<String> because = new ArrayList<>();
        because.addAll(CheckWords.of("fails.own", situation.fails()));
        because.addAll(CheckWords.of("fails.shared", situation.sharedFails()));
        situation.suspects().forEach(s -> because.add(suspected(s)));
        if (situation.isSearched() && !situation.unexplained().isEmpty()) {
            because.add(SAID.say("unexplained", CheckWords.names(situation.unexplained())));
        }
        if (course == Course.KEEP) {
            because.add(met());
        }
        because.addAll(CheckWords.of("fails.marginal", situation.checks("marginal")));
        because.addAll(doubts());
        if (course == Course.SERVICE || course == Course.LET_GO) {
            because.addAll(money());
        }
        because.addAll(scope(course));
        return because;
    }

    private static String suspected(Suspect suspect) {
        return suspect.name()
                + " – "
                + Likelihood.words(suspect.likelihood())
                + "."
                + (suspect.isOutside() ? " " + SAID.say("outside") : "")
                + (suspect.evidence() == null ? "" : " " + suspect.evidence());
    }

    private String met() {
        int passed = situation.checks("pass").size();
        int all = situation.checks().size();
        if (passed < all) {
            return SAID.say("met.some", passed, all);
        }
        return all == 1 ? SAID.say("met.one") : SAID.say("met.all", all);
    }

    private static String soundness(double sound) {
        if (sound >= Likelihood.DECISIVE) {
            return SAID.say("sound.likely", Likelihood.percent(sound));
        }
        return sound >= STRANGE
                ? SAID.say("sound.open", Likelihood.percent(sound))
                : SAID.say("sound.strange");
    }

    private List<String> doubts() {
        List<String> doubts = new ArrayList<>();
        Double sound = situation.soundLikelihood();
        if (situation.suspects().isEmpty() && sound != null) {
            doubts.add(soundness(sound));
        }
        if (!situation.isSearched()) {
            doubts.add(SAID.say("not-searched"));
        }
        situation.gaps().stream()
                .collect(Collectors.groupingBy(Gap::why, LinkedHashMap::new, Collectors.toList()))
                .forEach((why, gaps) -> doubts.add(SAID.say("not-known", names(gaps)) + " " + why));
        return doubts;
    }

    private List<String> money() {
        List<String> money = new ArrayList<>();
        if (situation.economics() == null) {
            return money;
        }
        situation.beyondRepair().forEach(s -> money.add(SAID.say("beyond-repair", s.name())));
        if (!situation.unexplained().isEmpty() && !situation.economics().canMendUnknown()) {
            money.add(SAID.say("beyond-repair-unknown"));
        }
        if (Course.isMendable(situation)) {
            money.addAll(Course.bill(situation).words());
        }
        return money;
    }

    private List<String> scope(Course course) {
        List<String> scope = new ArrayList<>();
        if (course == Course.KEEP && situation.isReplayOnly()) {
            scope.add(SAID.say("replay-only"));
        }
        if (situation.isJudged()) {
            LimitSet set = situation.limits();
            scope.add(SAID.say("limits-source", set.name(), set.source()));
        }
        return scope;
    }

    /** Why nothing is decided, in a sentence or two. */
    String reason() {
        if (!situation.voids().isEmpty()) {
            return SAID.say("open.void") + " " + String.join(" ", situation.voids());
        }
        if (!situation.fails().isEmpty()) {
            return SAID.say("open.outside");
        }
        if (!situation.sharedFails().isEmpty()) {
            return SAID.say("open.shared");
        }
        return situation.isJudged() ? SAID.say("open.gaps") : unlimited();
    }

    private String unlimited() {
        boolean isGiven = situation.limits() != null;
        if (!situation.inside().isEmpty()) {
            return SAID.say(isGiven ? "open.unsure-at-speed" : "open.unsure");
        }
        return SAID.say(isGiven ? "open.limits-at-speed" : "open.limits");
    }

    private static String names(List<Gap> gaps) {
        return gaps.stream().map(Gap::what).distinct().collect(Collectors.joining("; "));
    }
}
