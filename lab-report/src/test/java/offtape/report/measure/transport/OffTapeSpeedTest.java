package offtape.report.measure.transport;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import offtape.core.unit.Quantity;
import offtape.report.measure.speed.HeardDeviation;
import offtape.report.measure.speed.ToneReading;
import offtape.report.result.Speed;
import org.junit.jupiter.api.Test;

class OffTapeSpeedTest {

    private static final Quantity CANCELS = Quantity.unknown("It cancels.");
    private static final Quantity NOT_MEASURED = Quantity.unknown("Not measured.");

    private static ToneReading tone(HeardDeviation heard) {
        return new ToneReading(
                Speed.unknown("Not read.").withMean(Quantity.known(0, "%", 0.001), CANCELS), heard);
    }

    @Test
    void withoutAToneTheReasonIsTheTones() {
        OffTapeSpeed none =
                OffTapeSpeed.of(
                        new ToneReading(Speed.unknown("There was no tone."), null),
                        CANCELS,
                        Quantity.known(100, "ms", 0.4),
                        0.1,
                        0.3);
        assertEquals("There was no tone.", none.speed().weightedRms().reason());
        assertEquals(CANCELS, none.speed().deviation());
        assertEquals(List.of(), none.notes());
    }

    @Test
    void withoutADelayItIsAskedFor() {
        OffTapeSpeed none =
                OffTapeSpeed.of(tone(TwoHeads.moment()), CANCELS, NOT_MEASURED, null, 0.01);
        assertTrue(none.speed().weightedRms().reason().contains("--head-spacing"));
        assertEquals(CANCELS, none.speed().deviation());
        assertEquals(List.of(), none.notes());
    }

    /** The return shows 100 ms, whatever was measured. */
    @Test
    void aContradictionComesAlong() {
        OffTapeSpeed read =
                OffTapeSpeed.of(
                        tone(TwoHeads.heard()), CANCELS, Quantity.known(120, "ms", 0.4), null, 0.3);
        assertEquals(
                List.of("head-delay-contradicted"),
                read.notes().stream().map(n -> n.code()).toList());
        assertEquals(100, read.speed().headDelay().value(), 0.2);
        assertEquals("%", read.speed().weightedRms().unit());
    }
}
