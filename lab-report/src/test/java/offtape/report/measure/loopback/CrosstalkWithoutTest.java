package offtape.report.measure.loopback;

import static offtape.report.measure.loopback.Loops.NO;
import static offtape.report.measure.loopback.Loops.db;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertSame;

import java.util.List;
import offtape.core.unit.Quantity;
import offtape.report.result.Channels;
import offtape.report.result.InterfaceFigures;
import offtape.report.result.InterfaceShare;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Leaks whose phases are not known may add or cancel. */
class CrosstalkWithoutTest {

    private static CrosstalkWithout without(Quantity leftToRight, Quantity rightToLeft) {
        return new CrosstalkWithout(
                new InterfaceFigures(NO, null, NO, leftToRight, rightToLeft, List.of()));
    }

    private static Channels heard(Quantity leftToRight, Quantity rightToLeft) {
        return Channels.unknown("No.").withCrosstalk(leftToRight, rightToLeft);
    }

    /**
     * The interface's leak over the one that was heard: −40.5 to −30 dB is 0.2985, −40.4 dB 0.302;
     * −33.2 dB is 0.692 and −33 dB 0.708. From three tenths on it limits, over seven only a bound
     * is told.
     */
    @ParameterizedTest
    @CsvSource({
        "-40.5, 29.85, false, true",
        "-40.4, 30.20, true, true",
        "-33.2, 69.18, true, true",
        "-33, 70.79, true, false",
        "-29, 100, true, false"
    })
    void theShareDecides(double ownDb, double sharePercent, boolean limits, boolean known) {
        CrosstalkWithout without = without(db(ownDb, 0.2), NO);
        Channels pair = without.of(heard(db(-30, 0.1), db(-20, 0.1)));
        assertEquals(known, pair.crosstalkLeftToRight().isKnown());
        assertEquals(db(-20, 0.1), pair.crosstalkRightToLeft(), "nothing is known of this way");
        assertEquals(1, without.entries().size());
        InterfaceShare.Entry entry = without.entries().get(0);
        assertEquals("Crosstalk at 1 kHz, left into right", entry.figure());
        assertEquals("dB", entry.unit());
        assertEquals(ownDb, entry.own(), 0);
        assertEquals(-30, entry.heard(), 0);
        assertEquals(sharePercent, entry.sharePercent(), 0.01);
        assertEquals(limits, entry.limits());
        assertEquals(known ? "in the uncertainty" : "only a bound is told", entry.treatment());
    }

    @Test
    void eachWayHasItsOwnFloor() {
        CrosstalkWithout without = without(db(-70, 0.1), db(-60, 0.1));
        Channels pair = without.of(heard(db(-50, 0.1), db(-40, 0.1)));
        // a tenth each: up to −20·log 0.9 = 0.915 dB less
        assertEquals(-50, pair.crosstalkLeftToRight().value(), 0);
        assertEquals(-40, pair.crosstalkRightToLeft().value(), 0);
        assertEquals(Math.hypot(0.1, 0.91515), pair.crosstalkRightToLeft().uncertainty(), 1e-4);
        assertEquals("Crosstalk at 1 kHz, right into left", without.entries().get(1).figure());
        assertEquals(-60, without.entries().get(1).own(), 0);
    }

    @Test
    void whatWasNotHeardStaysUnknown() {
        CrosstalkWithout without = without(db(-70, 0.1), db(-60, 0.1));
        Channels pair = without.of(heard(NO, NO));
        assertSame(NO, pair.crosstalkLeftToRight());
        assertEquals(List.of(), without.entries());
    }

    /** −60 dB of a leak beside −40 dB: a tenth, so up to −20·log 0.9 = 0.915 dB less. */
    @Test
    void crosstalkOfTheInterfaceIsAFloor() {
        Quantity few = Quantity.known(0, "µs", 0.1);
        InterfaceFigures own =
                new InterfaceFigures(NO, null, few, db(-60, 0.1), db(-41, 0.1), List.of());
        Channels pair =
                new CrosstalkWithout(own)
                        .of(Channels.unknown("No.").withCrosstalk(db(-40, 0.1), db(-40, 0.1)));
        assertEquals(-40, pair.crosstalkLeftToRight().value(), 0);
        assertEquals(Math.hypot(0.1, 0.91515), pair.crosstalkLeftToRight().uncertainty(), 1e-4);
        // 10^(−1/20) of it: the machine's may be 1.891 times as much, +5.5 dB
        assertEquals(
                "What was heard (-40.0 dB) is hardly more than the interface's own crosstalk (-41.0"
                        + " dB); the machine's is less than -34.5 dB.",
                pair.crosstalkRightToLeft().reason());
    }
}
