package offtape.report.measure.transport;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Optional;
import java.util.OptionalDouble;
import offtape.core.unit.Quantity;
import offtape.report.result.HealthNote;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** A return that shows its comb, and one so short that it shows none. */
class HeadDelaysTest {

    private static final Quantity NOT_MEASURED = Quantity.unknown("Not measured.");
    private static CombDelay comb;

    private static final String BY_LOOPBACK =
            "The delay of the programme less the interface's own.";
    private static final String BY_SPACING =
            "The distance of the heads that was given, over the tape's speed.";
    private static final String BY_ITSELF =
            "From the recording itself: rates that both heads hear alike are missing.";
    private static final String AGREES = " The wavering of the return agrees and makes it sharper.";

    @BeforeAll
    static void findTheComb() {
        comb = CombDelay.find(TwoHeads.heard(), 1.5).orElseThrow();
    }

    private final HeadDelays silent = new HeadDelays(TwoHeads.moment(), 0.3);
    private final HeadDelays telling = new HeadDelays(TwoHeads.heard(), 0.3);

    private static Quantity ms(double value, double uncertainty) {
        return Quantity.known(value, "ms", uncertainty);
    }

    /** 157.5 ± 0.4 ms, k = 2: 0.1575 s with a standard deviation of 0.2 ms. */
    @Test
    void aMeasuredDelayStandsAlone() {
        HeadDelay delay = silent.decide(ms(157.5, 0.4), 0.2).orElseThrow();
        assertEquals(0.1575, delay.seconds(), 1e-15);
        assertEquals(0.0002, delay.sigmaSeconds(), 1e-15);
        assertEquals(BY_LOOPBACK, delay.found());
        assertNull(delay.note());
        assertEquals(new Comb(0.1575, 0.0002), delay.comb());
    }

    /** Without it the distance counts, known to 1.2 %; also if the delay measured is none. */
    @Test
    void aGivenDistanceStandsAlone() {
        for (Quantity measured : new Quantity[] {NOT_MEASURED, ms(0, 0.4), ms(-3, 0.4)}) {
            HeadDelay delay = silent.decide(measured, 0.2).orElseThrow();
            assertEquals(0.2, delay.seconds(), 1e-15);
            assertEquals(0.0024, delay.sigmaSeconds(), 1e-15);
            assertEquals(BY_SPACING, delay.found());
            assertNull(delay.note());
        }
    }

    /** Two figures of one standard deviation give their mean, known √2 times as well. */
    @Test
    void aCombThatAgreesMakesTheDelaySharper() {
        double sigma = comb.sigmaSeconds();
        double given = comb.seconds() + 3 * sigma;
        HeadDelay delay = telling.decide(ms(1000 * given, 2000 * sigma), null).orElseThrow();
        assertEquals(comb.seconds() + 1.5 * sigma, delay.seconds(), 1e-9);
        assertEquals(sigma / Math.sqrt(2), delay.sigmaSeconds(), 1e-9);
        assertEquals(BY_LOOPBACK + AGREES, delay.found());
        assertNull(delay.note());
    }

    /** With three times the deviation it has a ninth of the weight. */
    @Test
    void theSharperFigureHasTheLargerWeight() {
        double sigma = comb.sigmaSeconds();
        double given = comb.seconds() - 5 * sigma;
        HeadDelay delay = telling.decide(ms(1000 * given, 6000 * sigma), null).orElseThrow();
        assertEquals(comb.seconds() - 0.5 * sigma, delay.seconds(), 1e-9);
        assertEquals(sigma * 3 / Math.sqrt(10), delay.sigmaSeconds(), 1e-9);
    }

    /** Beyond four standard deviations of the difference, √2 of each, the return is right. */
    @ParameterizedTest
    @CsvSource({"5.6, 0", "5.7, 1", "-5.6, 0", "-5.7, 1"})
    void aCombContradictsBeyondFourDeviations(double sigmas, int contradicted) {
        double sigma = comb.sigmaSeconds();
        double given = comb.seconds() + sigmas * sigma;
        HeadDelay delay = telling.decide(ms(1000 * given, 2000 * sigma), null).orElseThrow();
        assertEquals(contradicted == 1, delay.note() != null);
    }

    /** 120 ms were measured, the return shows 100. */
    @Test
    void aContradictionIsTold() {
        HeadDelay delay = telling.decide(ms(120, 0.4), null).orElseThrow();
        assertEquals(comb.seconds(), delay.seconds(), 0);
        assertEquals(comb.sigmaSeconds(), delay.sigmaSeconds(), 0);
        assertEquals(BY_ITSELF, delay.found());
        HealthNote note = delay.note();
        assertEquals("warning", note.severity());
        assertEquals("head-delay-contradicted", note.code());
        assertTrue(
                note.message()
                        .startsWith(
                                "The delay of the programme less the interface's own puts the replay"
                                        + " head 120.0 ms after the record head, but the wavering of"
                                        + " the return shows 100.0 ms."),
                note.message());
        String ofSpacing = telling.decide(NOT_MEASURED, 0.12).orElseThrow().note().message();
        assertTrue(ofSpacing.startsWith("The distance of the heads that was given"), ofSpacing);
    }

    @Test
    void theReturnAloneTellsIt() {
        HeadDelay delay = telling.decide(NOT_MEASURED, null).orElseThrow();
        assertEquals(TwoHeads.DELAY_S, delay.seconds(), 2e-4);
        assertEquals(BY_ITSELF, delay.found());
        assertNull(delay.note());
        assertEquals(OptionalDouble.of(comb.seconds()), HeadDelays.shown(TwoHeads.heard(), 1.5));
        assertEquals(OptionalDouble.empty(), HeadDelays.shown(TwoHeads.moment(), 1.5));
    }

    /**
     * Else the programme's delay less 20 ± 11 ms of an interface, if it is more than three times
     * that and less than the 1.5 s that a tape may take.
     */
    @ParameterizedTest
    @CsvSource({"0.0601, 0.0401", "0.3, 0.28", "1.4999, 1.4799"})
    void theProgrammesDelayTellsItRoughly(double programme, double seconds) {
        HeadDelay delay =
                new HeadDelays(TwoHeads.moment(), programme)
                        .decide(NOT_MEASURED, null)
                        .orElseThrow();
        assertEquals(seconds, delay.seconds(), 1e-12);
        assertEquals(0.011, delay.sigmaSeconds(), 0);
        assertTrue(delay.found().startsWith("The delay of the programme less some milliseconds"));
        assertNull(delay.note());
    }

    @ParameterizedTest
    @CsvSource({"-0.1", "0.01", "0.06", "1.5", "4"})
    void otherDelaysOfTheProgrammeTellNothing(double programme) {
        assertEquals(
                Optional.empty(),
                new HeadDelays(TwoHeads.moment(), programme).decide(NOT_MEASURED, null));
    }
}
