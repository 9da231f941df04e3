package offtape.report.judge;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;

import java.util.List;
import offtape.report.fault.Caution;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** What to do next, in its order. */
class NextStepsTest {

    private static final String COMPARE =
            "Measure again in the same way, and set both sessions side by side: offtape compare"
                    + " BEFORE AFTER --out DIR.";

    private static final String RISING =
            "Play the programme's long tone to its end without a break, and measure again.";

    private static NextSteps next(Course course, String checks, String suspects, String missing) {
        return NextSteps.of(Cases.situation("two-pass", checks, suspects, 0.1, missing), course);
    }

    /** What lies outside is put right even where the machine goes. */
    @Test
    void whoLetsItGoStillMendsWhatLiesOutside() {
        assertEquals(
                List.of(
                        "The ground-loop – Look at the ground-loop. All is well without the"
                                + " ground-loop.",
                        "Part with it, or keep it for parts; whoever takes it should see this"
                                + " report."),
                next(Course.LET_GO, "response/left=fail", "worn-head/left=0.9 ground-loop=0.6", "")
                        .words());
    }

    /** Of two that cost and mend alike the surer one comes first. */
    @Test
    void theSurerRepairComesFirst() {
        NextSteps next =
                next(
                        Course.SERVICE,
                        "wow-and-flutter=fail",
                        "capstan=0.6 pinch-roller=0.9 belt=0.7",
                        "");
        assertEquals(
                List.of("The pinch-roller", "The belt", "The capstan", "Measure again in the"),
                next.words().stream().map(s -> s.replaceAll(" –.*| same way.*", "")).toList());
        assertEquals(
                "The belt – Look at the belt. If that is not enough: Mend the belt. All is well"
                        + " without the belt. It would explain what fails: Wow and flutter, weighted"
                        + " peak.",
                next.words().get(1));
    }

    @Test
    void aServiceFindsOutWhatIsNotKnownToo() {
        assertEquals(
                List.of(
                        "The dirty-head (left) – Look at the dirty-head. All is well without the"
                                + " dirty-head.",
                        RISING,
                        COMPARE),
                next(Course.SERVICE, "", "dirty-head/left=0.9", "wow-and-flutter").words());
    }

    /** Cleaning is done at once; what takes a bench or parts is made sure of first. */
    @Test
    void whatIsNotCheapIsMadeSureOfFirst() {
        NextSteps next =
                next(
                        Course.OPEN,
                        "",
                        "azimuth=0.6 worn-head/left=0.6 dirty-head/left=0.6 dropouts=0.6",
                        "wow-and-flutter");
        assertEquals(
                List.of(
                        "The dropouts – Look at the dropouts. All is well without the dropouts.",
                        "The dirty-head (left) – Look at the dirty-head. All is well without the"
                                + " dirty-head.",
                        "The azimuth – to be sure: Measure the azimuth.",
                        "The worn-head (left) – to be sure: Measure the worn-head.",
                        RISING),
                next.words().subList(0, 5));
        assertEquals(6, next.words().size(), "and to take limits");
        assertEquals(List.of(Caution.MOVING_TAPE.words(), Caution.MAINS.words()), next.cautions());
    }

    /** What no known fault explains is looked for inside the machine. */
    @Test
    void aTechnicianIsToldOfTheMains() {
        NextSteps next = next(Course.SERVICE, "balance=fail", "", "");
        assertEquals(
                List.of(
                        "Have a technician look for the cause of: Balance, right re left.",
                        COMPARE),
                next.words());
        assertEquals(List.of(Caution.MAINS.words()), next.cautions());
    }

    @ParameterizedTest
    @EnumSource(Course.class)
    void somethingCanAlwaysBeDone(Course course) {
        assertFalse(next(course, "", "", "").words().isEmpty());
    }
}
