package offtape.report.judge;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import offtape.report.fault.Caution;
import offtape.report.result.Verdict;

/** What to do next, and what to beware of in doing it. */
final class NextSteps {

    /** Cheap first. */
    private static final List<String> EFFORTS = List.of("outside", "clean", "adjust", "replace");

    private static final String COMPARE =
            "Measure again in the same way, and set both sessions side by side: offtape compare"
                    + " BEFORE AFTER --out DIR.";

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
        steps.add(
                "Keep this session: what wears is seen by measuring again later, with offtape"
                        + " history SESSION SESSION.");
    }

    private void service() {
        mend(situation.suspects());
        List<Verdict.Check> tapes =
                situation.unexplained().stream().filter(Situation::hangsOnTape).toList();
        if (!tapes.isEmpty()) {
            steps.add(
                    "Measure again with another tape, of a kind that the machine is set for: "
                            + CheckWords.names(tapes)
                            + " may be the tape's.");
        }
        if (!situation.unexplained().isEmpty()) {
            steps.add(
                    "Have a technician look for the cause of: "
                            + CheckWords.names(situation.unexplained())
                            + ".");
            cautions.add(Caution.MAINS);
        }
        situation.gaps().forEach(g -> steps.add(g.remedy()));
        steps.add(COMPARE);
    }

    private void letGo() {
        mend(situation.outside());
        steps.add("Part with it, or keep it for parts; whoever takes it should see this report.");
    }

    /** What is cheap and likely is done first even where nothing is decided. */
    private void find() {
        if (situation.voids().isEmpty()) {
            mend(situation.suspects().stream().filter(NextSteps::isCheap).toList());
            situation.suspects().stream()
                    .filter(s -> !isCheap(s))
                    .forEach(s -> step(s, s.name() + " – to be sure: " + s.note().confirm()));
        }
        situation.gaps().forEach(g -> steps.add(g.remedy()));
        if (!situation.sharedFails().isEmpty()) {
            steps.add(
                    "Record the programme on this machine, replay it, and measure that as well:"
                            + " offtape measure RETURN --programme DIR --out SESSION --mode two-pass.");
        }
        if (!situation.voids().isEmpty()) {
            steps.add("Mend that, record the programme again, and measure it.");
        } else if (!situation.isJudged()) {
            steps.add(
                    "Hold the figures against limits: offtape measure … --limits din45500-4, or the"
                            + " maker's own, for which offtape prepare --limits-template FILE writes a"
                            + " form.");
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
            words.add("If that is not enough: " + suspect.note().repair());
        }
        words.add(suspect.note().gain());
        List<String> failures = explained(suspect).stream().map(Verdict.Check::quantity).toList();
        if (!failures.isEmpty()) {
            words.add("It would explain what fails: " + String.join("; ", failures) + ".");
        }
        return String.join(" ", words);
    }
}
