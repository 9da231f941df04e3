package offtape.report.judge;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.stream.Collectors;
import offtape.report.fault.Likelihood;

/** Why something is decided, or is not, in plain sentences. */
final class Grounds {

    /** Less likely sound than this, a machine is out of the ordinary. */
    private static final double STRANGE = 0.1;

    private static final String SHARED =
            "The tape, the machine that recorded it or this one is not good enough: ";

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
        CheckWords.of(situation.fails()).forEach(w -> because.add("Not good enough: " + w));
        CheckWords.of(situation.sharedFails()).forEach(w -> because.add(SHARED + w));
        situation.suspects().forEach(s -> because.add(suspected(s)));
        if (situation.isSearched() && !situation.unexplained().isEmpty()) {
            because.add(
                    "No known fault explains what fails here: "
                            + CheckWords.names(situation.unexplained())
                            + ".");
        }
        if (course == Course.KEEP) {
            because.add(met());
        }
        CheckWords.of(situation.checks("marginal"))
                .forEach(w -> because.add("Too close to call: " + w));
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
                + (suspect.isOutside() ? " That lies outside the machine." : "")
                + (suspect.evidence() == null ? "" : " " + suspect.evidence());
    }

    private String met() {
        int passed = situation.checks("pass").size();
        int all = situation.checks().size();
        return (passed == all
                        ? all == 1 ? "The limit is met" : "All " + all + " limits are met"
                        : passed + " of " + all + " limits are met")
                + " beyond doubt"
                + (passed == all ? "." : ", and none is failed.");
    }

    private static String soundness(double sound) {
        if (sound >= Likelihood.DECISIVE) {
            return "No known fault stands out (" + Likelihood.percent(sound) + ").";
        }
        return sound >= STRANGE
                ? "No single fault is likely, but that there is none is no more than "
                        + Likelihood.percent(sound)
                        + " likely."
                : "Something is not as in sound machines, and no single known fault explains it:"
                        + " look at the figures below one by one.";
    }

    private List<String> doubts() {
        List<String> doubts = new ArrayList<>();
        Double sound = situation.soundLikelihood();
        if (situation.suspects().isEmpty() && sound != null) {
            doubts.add(soundness(sound));
        }
        if (!situation.isSearched()) {
            doubts.add("Known faults could not be looked for in this recording.");
        }
        situation.gaps().stream()
                .collect(Collectors.groupingBy(Gap::why, LinkedHashMap::new, Collectors.toList()))
                .forEach((why, gaps) -> doubts.add("Not known: " + names(gaps) + ". " + why));
        return doubts;
    }

    private List<String> money() {
        List<String> money = new ArrayList<>();
        if (situation.economics() == null) {
            return money;
        }
        situation
                .beyondRepair()
                .forEach(s -> money.add(s.name() + " cannot be mended, by the file of costs."));
        if (!situation.unexplained().isEmpty() && !situation.economics().canMendUnknown()) {
            money.add("What no known fault explains cannot be mended, by the file of costs.");
        }
        if (Course.isMendable(situation)) {
            money.addAll(Course.bill(situation).words());
        }
        return money;
    }

    private List<String> scope(Course course) {
        List<String> scope = new ArrayList<>();
        if (course == Course.KEEP && situation.isReplayOnly()) {
            scope.add(
                    "This recording shows how the machine replays; how it records is not judged.");
        }
        if (situation.isJudged()) {
            LimitSet set = situation.limits();
            scope.add("The limits of \"" + set.name() + "\": " + set.source() + ".");
        }
        return scope;
    }

    /** Why nothing is decided, in a sentence or two. */
    String reason() {
        if (!situation.voids().isEmpty()) {
            return "The recording cannot be relied on: " + String.join(" ", situation.voids());
        }
        if (!situation.fails().isEmpty()) {
            return "What fails likely has its cause outside the machine. Mend that, then measure"
                    + " again and decide.";
        }
        if (!situation.sharedFails().isEmpty()) {
            return "What fails may be the fault of the tape, or of the machine that recorded it, as"
                    + " well as of this one.";
        }
        return situation.isJudged()
                ? "Nothing that could be told fails, but too much is not known."
                : unlimited();
    }

    private String unlimited() {
        String start =
                situation.limits() == null
                        ? "No limits were given"
                        : "None of the limits that were given counts at this tape speed";
        if (!situation.inside().isEmpty()) {
            return start + ", and a fault that is likely is not sure enough alone.";
        }
        return start + ". Whether it is good enough, limits decide.";
    }

    private static String names(List<Gap> gaps) {
        return gaps.stream().map(Gap::what).distinct().collect(Collectors.joining("; "));
    }
}
