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
    @CsvSource({"0.41, PASS", "0.39, MARGINAL", "0, MARGINAL", "-0.39, MARGINAL", "-0.41, FAIL"})
    void zonesAreOneUncertaintyWide(double room, Outcome.Kind kind) {
        assertEquals(kind, Outcome.of(room, 0.4).kind());
    }

    @Test
    void whatIsKnownExactlyIsNeverMarginalButAtTheLimit() {
        assertEquals(new Outcome(Outcome.Kind.PASS, 1e-9, 0), Outcome.of(1e-9, 0));
        assertEquals(Outcome.Kind.MARGINAL, Outcome.of(0, 0).kind());
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
    }
}
