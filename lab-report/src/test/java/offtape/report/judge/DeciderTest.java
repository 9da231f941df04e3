package offtape.report.judge;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertSame;

import java.util.List;
import offtape.report.fault.FaultFinder;
import offtape.report.fault.FaultFinding;
import offtape.report.result.HealthNote;
import offtape.report.result.Results;
import offtape.report.result.Verdict;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** From results to what is decided. */
class DeciderTest {

    private static final FaultFinding SOUND = new FaultFinding(List.of(), 0.97);

    /** The balance of 1.25 ± 0.25 dB passes. */
    private static final LimitSet MET = Limits.set(Limits.of("balance", -2.0, 2.0));

    /** Only what makes the recording worthless keeps it from deciding. */
    @ParameterizedTest
    @CsvSource(
            nullValues = "-",
            value = {
                "blocking, wrong-programme, -",
                "blocking, dead-channel, keep",
                "warning, wrong-programme, keep"
            })
    void aRecordingThatCannotBeReliedOnDecidesNothing(
            String severity, String code, String decision) {
        Measured session =
                Measured.whole().withHealth(new HealthNote(severity, code, "It is another one."));
        Verdict verdict = Decider.decided(session.results(), MET, null, SOUND).verdict();
        assertEquals(decision, verdict.decision());
        assertEquals(
                decision == null ? "The recording cannot be relied on: It is another one." : null,
                verdict.reason());
        assertEquals(
                decision == null,
                verdict.because().equals(List.of("The limits of \"house rule\": invented.")));
    }

    @Test
    void withoutLimitsASoundMachineIsLeftOpen() {
        Verdict verdict = Decider.decided(Measured.whole().results(), null, null, SOUND).verdict();
        assertNull(verdict.decision());
        assertEquals(List.of(), verdict.checks());
        assertEquals(0.97, verdict.soundLikelihood());
        assertEquals(
                "No limits were given. Whether it is good enough, limits decide.",
                verdict.reason());
    }

    /** None of the limits counts at 190.5 mm/s. */
    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "0.3|Whether it is good enough, limits decide.",
                "0.6|a fault that is likely is not sure enough alone."
            })
    void limitsOfAnotherTapeSpeedDecideNothing(double likelihood, String end) {
        Verdict.Fault fault =
                new Verdict.Fault(
                        "dirty-head",
                        "Dirty head",
                        "left",
                        likelihood,
                        List.of(),
                        List.of(),
                        "",
                        null);
        Verdict verdict =
                Decider.decided(
                                Measured.whole().with(null).results(),
                                Limits.set(Limits.at(381, "balance", 2, null)),
                                null,
                                new FaultFinding(List.of(fault), 0.3))
                        .verdict();
        assertNull(verdict.decision());
        String begin = "None of the limits that were given counts at this tape speed";
        assertEquals(begin + (likelihood < 0.5 ? ". " : ", and ") + end, verdict.reason());
        assertEquals(List.of(fault), verdict.faults());
    }

    @Test
    void faultsAreLookedForWhereTheyAreNotGiven() {
        Results results = Measured.whole().results();
        assertEquals(
                Decider.decided(results, MET, null, FaultFinder.find(results)).verdict(),
                Decider.decided(results, MET, null).verdict());
    }

    /** Nobody services an interface: it is held against limits, and no more. */
    @Test
    void anInterfaceIsHeldAgainstLimitsOnly() {
        Results loop = Measured.whole().in("loopback").results();
        assertSame(loop, Decider.decided(loop, null, null));
        Verdict held = Decider.decided(loop, MET, null).verdict();
        assertNull(held.decision());
        assertEquals("pass", held.checks().get(0).outcome());
        assertFalse(held.reason().isEmpty());
        assertEquals(List.of(), held.next());
    }
}
