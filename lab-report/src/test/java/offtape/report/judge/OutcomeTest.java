package offtape.report.judge;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertSame;

import java.util.stream.IntStream;
import java.util.stream.Stream;
import offtape.reference.ReferenceTable;
import offtape.reference.Source;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;

class OutcomeTest {

    static Stream<Arguments> guards() {
        ReferenceTable table = ReferenceTable.load("guard-band");
        return IntStream.range(0, table.rows().size())
                .mapToObj(
                        i ->
                                Arguments.of(
                                        table.rows().get(i).get(1).asDouble(),
                                        table.rows().get(i).get(2).asDouble()));
    }

    /** A figure that lies so many expanded uncertainties within its limit, of 0.4. */
    @ParameterizedTest
    @MethodSource("guards")
    @Source("JCGM 106 and ISO 14253-1, chance of wrongly accepting")
    void theChanceOfBeingWrongIsThatOfTheTable(double guard, double percent) {
        assertEquals(percent, Outcome.of(0.4 * guard, 0.4).wrongPercent(), 6e-4);
        assertEquals(percent, Outcome.of(-0.4 * guard, 0.4).wrongPercent(), 6e-4);
    }

    /** The zones of ISO 14253-1: beyond the limit by more than U, within U of it, inside. */
    @ParameterizedTest
    @CsvSource({
        "0.41, PASS",
        "0.4, MARGINAL",
        "0.39, MARGINAL",
        "0, MARGINAL",
        "-0.39, MARGINAL",
        "-0.4, MARGINAL",
        "-0.41, FAIL"
    })
    void zonesAreOneUncertaintyWide(double room, Outcome.Kind kind) {
        assertEquals(kind, Outcome.of(room, 0.4).kind());
    }

    @Test
    void whatIsKnownExactlyIsNeverMarginalButAtTheLimit() {
        assertEquals(new Outcome(Outcome.Kind.PASS, 1e-9, 0), Outcome.of(1e-9, 0));
        assertEquals(new Outcome(Outcome.Kind.FAIL, -1e-9, 0), Outcome.of(-1e-9, 0));
        assertEquals(new Outcome(Outcome.Kind.MARGINAL, 0, 0), Outcome.of(0, 0));
    }

    @Test
    void theWorseIsLessSureToBeMet() {
        Outcome pass = Outcome.of(1, 0.4);
        Outcome barely = Outcome.of(0.45, 0.4);
        Outcome fail = Outcome.of(-1, 0.4);
        Outcome slightly = Outcome.of(-0.45, 0.4);
        assertSame(barely, pass.worse(barely));
        assertSame(fail, fail.worse(pass));
        assertSame(fail, slightly.worse(fail));
        assertSame(barely, barely.worse(pass));
        assertSame(fail, fail.worse(slightly));
    }

    /** Little room that is sure is better than more that is not. */
    @Test
    void whatIsSureComesBeforeHowFar() {
        Outcome sure = Outcome.of(0.1, 0.05);
        Outcome unsure = Outcome.of(0.3, 0.4);
        assertSame(unsure, sure.worse(unsure));
        assertSame(unsure, unsure.worse(sure));
        Outcome doubted = Outcome.of(-0.3, 0.4);
        Outcome beyond = Outcome.of(-0.1, 0.05);
        assertSame(beyond, doubted.worse(beyond));
        assertSame(beyond, beyond.worse(doubted));
    }

    @Test
    void ofTwoAlikeTheFirstIsTaken() {
        Outcome first = Outcome.of(1, 0.4);
        assertSame(first, first.worse(Outcome.of(1, 0.4)));
    }
}
