package offtape.report.compare;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import offtape.core.unit.Quantity;
import offtape.report.compare.Change.Direction;
import offtape.report.headline.Aim;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ChangeTest {

    private static Change change(Aim aim, double before, double after, Double repeatability) {
        return new Change(
                "figure",
                "left",
                true,
                aim,
                Quantity.known(before, "dB", 0.3),
                Quantity.known(after, "dB", 0.4),
                repeatability);
    }

    /** Uncertainties of 0.3 and 0.4 add as squares to 0.5, a 3-4-5 triangle. */
    @Test
    void aChangeIsClearBeyondTheUncertaintyOfTheDifference() {
        Change small = change(Aim.HIGHER, 1.0, 1.45, null);
        assertEquals(0.5, small.difference().uncertainty(), 1e-12);
        assertFalse(small.isClear());
        assertTrue(change(Aim.HIGHER, 1.0, 1.55, null).isClear());
        assertEquals("figure, left", small.label());
    }

    @Test
    void whatMeasuringAgainScattersCountsWhereItIsMore() {
        assertEquals(0.5, change(Aim.HIGHER, 1, 1.6, 0.2).difference().uncertainty(), 1e-12);
        assertEquals(0.7, change(Aim.HIGHER, 1, 1.6, 0.7).difference().uncertainty(), 1e-12);
        assertEquals(Direction.UNCLEAR, change(Aim.HIGHER, 1, 1.6, 0.7).direction());
    }

    /** From −2 to +1.9 is nearer to nought by 0.1 only, though it moved by 3.9. */
    @ParameterizedTest
    @CsvSource({
        "HIGHER, 1, 2, BETTER",
        "HIGHER, 2, 1, WORSE",
        "LOWER, 1, 2, WORSE",
        "LOWER, 2, 1, BETTER",
        "NEARER_ZERO, -3, 1, BETTER",
        "NEARER_ZERO, 1, -3, WORSE",
        "NEARER_ZERO, -2, 1.9, UNCLEAR"
    })
    void whichWayItWentHangsOnTheFigure(Aim aim, double before, double after, Direction way) {
        assertEquals(way, change(aim, before, after, null).direction());
    }

    @Test
    void whatIsUnknownOnceIsUnknown() {
        Quantity known = Quantity.known(1, "dB", 0);
        Quantity unknown = Quantity.unknown("It was not measured.");
        Change c = new Change("figure", null, true, Aim.LOWER, unknown, known, null);
        assertFalse(c.isKnown());
        assertFalse(c.isClear());
        assertEquals(Direction.UNKNOWN, c.direction());
        assertEquals("figure", c.label());
        Change units =
                new Change("figure", null, true, Aim.LOWER, known, Quantity.known(1, "%", 0), null);
        assertFalse(units.isKnown(), "of other units");
    }
}
