package offtape.report.judge;

import java.util.List;
import offtape.report.result.Verdict;

/** From a situation to the verdict: what to do, why, and what next. */
final class Decision {

    private Decision() {}

    /** The verdict of a situation. */
    static Verdict of(Situation situation, List<Verdict.Fault> faults) {
        Course course = Course.of(situation);
        Grounds grounds = new Grounds(situation);
        NextSteps next = NextSteps.of(situation, course);
        return new Verdict(
                course.key(),
                course == Course.OPEN ? grounds.reason() : null,
                grounds.because(course),
                situation.checks(),
                faults,
                situation.soundLikelihood(),
                next.words(),
                next.cautions());
    }
}
