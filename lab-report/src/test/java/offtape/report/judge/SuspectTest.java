package offtape.report.judge;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;

import java.util.List;
import offtape.report.result.Verdict;
import org.junit.jupiter.api.Test;

/** Likely faults, each once. */
class SuspectTest {

    private static Verdict.Fault fault(
            String code, String channel, double likelihood, String... evidence) {
        return new Verdict.Fault(
                code, code, channel, likelihood, List.of(evidence), List.of(), "Try.", null);
    }

    @Test
    void aFaultOfBothChannelsIsOneAndAsSureAsTheSurer() {
        List<Suspect> suspects =
                Suspect.likely(
                        List.of(
                                fault("dirty-head", "right", 0.6, "First.", "Second."),
                                fault("hiss", "left", 0.49, "Third."),
                                fault("pinch-roller", null, 0.5),
                                fault("dirty-head", "left", 0.9)),
                        Cases::note);
        assertEquals(2, suspects.size(), "what is less than half likely is none");
        Suspect head = suspects.get(0);
        assertEquals(List.of("right", "left"), head.channels());
        assertEquals(0.9, head.likelihood());
        assertEquals("First.", head.evidence());
        assertEquals("The dirty-head (left and right)", head.name());
        Suspect roller = suspects.get(1);
        assertEquals(List.of(), roller.channels());
        assertEquals("The pinch-roller", roller.name());
        assertNull(roller.evidence());
    }

    @Test
    void whatSpeaksForItIsSaidIfAnythingDoes() {
        Situation bare =
                new Situation(
                        "two-pass",
                        null,
                        List.of(),
                        List.of(new Suspect(Cases.note("dropouts"), List.of(), 0.6, null)),
                        0.3,
                        List.of(),
                        List.of(),
                        null);
        assertEquals(
                "The dropouts – likely, 60\u00a0%. That lies outside the machine.",
                new Grounds(bare).because(Course.OPEN).get(0));
    }
}
