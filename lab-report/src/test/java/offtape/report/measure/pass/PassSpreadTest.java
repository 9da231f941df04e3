package offtape.report.measure.pass;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import offtape.core.unit.Quantity;
import org.junit.jupiter.api.Test;

/** One reading in several replays. */
class PassSpreadTest {

    private static final Quantity LACKING = Quantity.unknown("The tone is not whole.");

    private static final Quantity LOW = Quantity.known(0.25, "%", 0.03);
    private static final Quantity MIDDLE = Quantity.known(0.5, "%", 0.01);
    private static final Quantity HIGH = Quantity.known(1.5, "%", 0.04);

    @Test
    void theHighestKeepsItsOwnUncertainty() {
        assertEquals(HIGH, PassSpread.highest(List.of(LOW, LACKING, HIGH, MIDDLE)));
    }

    /** (0.25 + 0.5 + 1.5)/3 = 0.75, known as well as one is: (0.03 + 0.01 + 0.04)/3. */
    @Test
    void theMeanIsNoMoreCertainThanOne() {
        Quantity mean = PassSpread.mean(List.of(LOW, HIGH, LACKING, MIDDLE));
        assertEquals(0.75, mean.value(), 1e-12);
        assertEquals(0.08 / 3, mean.uncertainty(), 1e-12);
        assertEquals("%", mean.unit());
    }

    /** 1.5 − 0.25, each end with its own error: √(0.04² + 0.03²) = 0.05. */
    @Test
    void theSpreadIsHighestLessLowest() {
        Quantity spread = PassSpread.spread(List.of(MIDDLE, HIGH, LOW, LACKING));
        assertEquals(1.25, spread.value(), 1e-12);
        assertEquals(0.05, spread.uncertainty(), 1e-12);
        assertEquals("%", spread.unit());
    }

    @Test
    void twoReadingsHaveASpreadAndOneHasNone() {
        assertEquals(0.25, PassSpread.spread(List.of(MIDDLE, LOW)).value(), 1e-12);
        assertEquals(
                "Fewer than two replays have this reading.",
                PassSpread.spread(List.of(MIDDLE, LACKING)).reason());
    }

    /** Where no replay has it, the reason of the first is told. */
    @Test
    void aReadingThatNoReplayHasIsToldWhy() {
        List<Quantity> none = List.of(LACKING, Quantity.unknown("It was drowned."));
        assertEquals(LACKING, PassSpread.highest(none));
        assertEquals(LACKING, PassSpread.mean(none));
        assertEquals("Fewer than two replays have this reading.", PassSpread.spread(none).reason());
    }
}
