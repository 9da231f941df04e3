package offtape.report.judge;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import offtape.core.text.Sentences;
import offtape.report.fault.Caution;
import offtape.report.result.Verdict;

/** What to do next, and what to beware of in doing it. */
final class NextSteps {

    private static final Sentences SAID = Sentences.near(NextSteps.class);

    /** Cheap first. */
    private static final List<String> EFFORTS = List.of("outside", "clean", "adjust", "replace");

    private final Situation situation;
    private final Course course;
    private final Set<String> steps = new LinkedHashSet<>();
    private final Set<Caution> cautions = new LinkedHashSet<>();

    private NextSteps(Situation situation, Course course) {
        this.situation = situation;
        this.course = course;
    }

    /** Those after a decision, or towards one. */
    static NextSteps of(Situation situation, Course course) {
        NextSteps next = new NextSteps(situation, course);
        switch (course) {
            case KEEP -> next.keep();
            case SERVICE -> next.service();
            case LET_GO -> next.letGo();
            case OPEN -> next.find();
        }
        return next;
    }

    /** The steps in their order. */
    List<String> words() {
        return List.copyOf(steps);
    }

    /** What to beware of. */
    List<String> cautions() {
        return cautions.stream().map(Caution::words).toList();
    }

    private void keep() {
        mend(situation.outside());
        steps.add(SAID.say("next.keep"));
    }

    private void service() {
        mend(situation.toMend());
        List<Verdict.Check> tapes =
                situation.unexplained().stream().filter(Situation::hangsOnTape).toList();
        if (!tapes.isEmpty()) {
            steps.add(SAID.say("next.other-tape", CheckWords.names(tapes)));
        }
        if (!situation.unexplained().isEmpty()) {
            steps.add(SAID.say("next.technician", CheckWords.names(situation.unexplained())));
            cautions.add(Caution.MAINS);
        }
        situation.gaps().forEach(g -> steps.add(g.remedy()));
        steps.add(SAID.say("next.compare"));
    }

    private void letGo() {
        mend(situation.outside());
        steps.add(SAID.say("next.let-go"));
    }

    /** What is cheap and likely is done first even where nothing is decided. */
    private void find() {
        if (situation.voids().isEmpty()) {
            mend(situation.suspects().stream().filter(NextSteps::isCheap).toList());
            situation.suspects().stream()
                    .filter(s -> !isCheap(s))
                    .forEach(
                            s ->
                                    step(
                                            s,
                                            SAID.say("next.to-be-sure", s.name())
                                                    + " "
                                                    + s.note().confirm()));
        }
        situation.gaps().forEach(g -> steps.add(g.remedy()));
        if (!situation.sharedFails().isEmpty()) {
            steps.add(SAID.say("next.two-pass"));
        }
        if (!situation.voids().isEmpty()) {
            steps.add(SAID.say("next.mend-that"));
        } else if (!situation.isJudged()) {
            steps.add(SAID.say("next.limits"));
        }
    }

    private static boolean isCheap(Suspect suspect) {
        return EFFORTS.indexOf(suspect.note().effort()) < EFFORTS.indexOf("adjust");
    }

    private void mend(List<Suspect> suspects) {
        suspects.stream().sorted(order()).forEach(s -> step(s, repair(s)));
    }

    private void step(Suspect suspect, String words) {
        steps.add(words);
        suspect.note().cautions().forEach(c -> cautions.add(Caution.of(c)));
    }

    /** Cheap first, then what mends most, then what is surest. */
    private Comparator<Suspect> order() {
        return Comparator.comparingInt((Suspect s) -> EFFORTS.indexOf(s.note().effort()))
                .thenComparing(s -> -explained(s).size())
                .thenComparing(s -> -s.likelihood());
    }

    private List<Verdict.Check> explained(Suspect suspect) {
        return situation.checks("fail").stream().filter(suspect::explains).toList();
    }

    private String repair(Suspect suspect) {
        List<String> words = new ArrayList<>();
        words.add(suspect.name() + " – " + suspect.note().first());
        if (course == Course.SERVICE && !isCheap(suspect)) {
            words.add(SAID.say("next.not-enough") + " " + suspect.note().repair());
        }
        words.add(suspect.note().gain());
        List<String> failures = explained(suspect).stream().map(Verdict.Check::quantity).toList();
        if (!failures.isEmpty()) {
            words.add(SAID.say("next.explains", String.join("; ", failures)));
        }
        return String.join(" ", words);
    }
}
