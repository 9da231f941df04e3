package offtape.report.measure.mode;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import offtape.core.transport.CaptureMode;
import offtape.core.unit.Quantity;
import offtape.report.locate.ProgrammeReturn;
import offtape.report.measure.loopback.KnownInterface;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Heads, delay and clocks from three markers ({@link MarkedReturn}), derived by hand. */
class HeadFiguresTest {

    private static final ProgrammeReturn LATE = MarkedReturn.of(0.16, 7);

    private static HeadFigures figures(
            ProgrammeReturn ret, Double spacingMm, KnownInterface loop, Double mmPerS) {
        Capture capture =
                new Capture(CaptureMode.OFF_TAPE, ModeQuestion.NOBODY, spacingMm, loop, 1);
        return new HeadFigures(ret, capture, mmPerS);
    }

    @Test
    void theMeanDelayIsTheLinesStart() {
        Quantity delay = figures(LATE, null, null, null).meanDelay().orElseThrow();
        assertEquals(160, delay.value(), 1e-9);
        assertEquals("ms", delay.unit());
        assertEquals(MarkedReturn.START_MS, delay.uncertainty(), 1e-7);
    }

    /**
     * The start of a line whose slope is the loop's is the mean: 10/3 · 2 µs · √(1/3) = 3.849 µs.
     * With 10 µs of the loop's delay and 20 µs of filters that makes 22.69 µs. If that slope is off
     * by 3.1 ppm, 89.9 µs are left of the outer markers, so 10/3 · √((89.9² + 2²)/3) = 173.06 µs.
     * With a slope of its own the start is known within 6.2126 µs, and 0.1 % of 155 ms may be
     * drift: 156.73 µs.
     */
    @ParameterizedTest
    @CsvSource({
        "7, 155, 0.0226894",
        "3.9, 155.093, 0.174494",
        "10.1, 154.907, 0.174494",
        "3.8, 155, 0.156728",
        "10.2, 155, 0.156728",
        ", 155, 0.156728",
    })
    void theHeadsDelayIsLessTheLoops(Double clockPpm, double delayMs, double uncertaintyMs) {
        KnownInterface loop = MarkedReturn.loop(5.0, clockPpm);
        Quantity delay = figures(LATE, null, loop, 190.5).headDelay();
        assertEquals(delayMs, delay.value(), 1e-9);
        assertEquals("ms", delay.unit());
        assertEquals(uncertaintyMs, delay.uncertainty(), 2e-6);
    }

    /** Two heads are 5 ms to 1.5 s apart. */
    @ParameterizedTest
    @CsvSource({"0.0099, false", "0.0101, true", "1.5049, true", "1.5051, false", "0.004, false"})
    void aDelayThatHeadsCannotHaveIsRefused(double lateSeconds, boolean told) {
        ProgrammeReturn ret = MarkedReturn.of(lateSeconds, 0);
        Quantity delay = figures(ret, null, MarkedReturn.loop(5.0, 0.0), 190.5).headDelay();
        assertEquals(told, delay.isKnown());
        if (told) {
            assertEquals(1000 * lateSeconds - 5, delay.value(), 1e-9);
        } else {
            assertTrue(delay.reason().contains("none that two heads can have"), delay.reason());
        }
    }

    @Test
    void itIsSaidWhatLacks() {
        String without = figures(LATE, null, null, 190.5).headDelay().reason();
        assertTrue(without.contains("--loopback"), without);
        Quantity silent = figures(LATE, null, MarkedReturn.loop(null, 7.0), 190.5).headDelay();
        assertTrue(silent.reason().startsWith("Too few markers"), silent.reason());
        ProgrammeReturn one = MarkedReturn.of(LATE.map(), true, false);
        HeadFigures unheard = figures(one, null, MarkedReturn.loop(5.0, 7.0), 190.5);
        assertTrue(unheard.headDelay().reason().startsWith("Too few markers"));
        assertTrue(unheard.clock(true).isEmpty());
        assertTrue(unheard.meanDelay().isEmpty());
    }

    /**
     * 155 ms at 190.5 mm/s are 29.5275 mm, known within 1 % of speed and 22.69 µs of 155 ms; what
     * somebody measured is right within half a millimetre.
     */
    @Test
    void theHeadsLieSoFarApart() {
        KnownInterface loop = MarkedReturn.loop(5.0, 7.0);
        Quantity found = figures(LATE, null, loop, 190.5).headSpacing();
        assertEquals(29.5275, found.value(), 1e-9);
        assertEquals("mm", found.unit());
        double share = Math.hypot(0.01, 22.6894e-3 / 155);
        assertEquals(29.5275 * share, found.uncertainty(), 1e-6);
        Quantity given = figures(LATE, 28.5, loop, 190.5).headSpacing();
        assertEquals(Quantity.known(28.5, "mm", 0.5), given);
        Quantity slow = figures(LATE, null, loop, null).headSpacing();
        assertTrue(slow.reason().contains("--tape-speed"), slow.reason());
        Quantity none = figures(LATE, null, null, 190.5).headSpacing();
        assertFalse(none.isKnown());
        assertTrue(none.reason().contains("--loopback"), none.reason());
    }

    /**
     * The slope is the clocks'. On tape a drift of speed by 0.2 % over the programme's 60 s moves
     * the delay by as much of the lag: of 155 ms with a loop, of 30 mm at 190.5 mm/s, of the whole
     * 160 ms, and of 150 ms where that cannot be heads.
     */
    @ParameterizedTest
    @CsvSource({
        "false, 160, , , 0",
        "true, 160, 5, 60, 155",
        "true, 160, , 30, 157.48031",
        "true, 160, , , 160",
        "true, 160, 158, , 160",
        "true, 160, 158, 30, 157.48031",
        "true, 2, , , 150",
        "true, 1600, , , 150",
        "true, 5.1, , , 5.1",
        "true, 4.9, , , 150",
        "true, 1499, , , 1499",
        "true, 1501, , , 150",
    })
    void theClocksDifferByTheSlope(
            boolean tape, double lateMs, Double loopMs, Double spacingMm, double lagMs) {
        ProgrammeReturn ret = MarkedReturn.of(lateMs / 1000, -7);
        KnownInterface loop = loopMs == null ? null : MarkedReturn.loop(loopMs, -7.0);
        Quantity clock = figures(ret, spacingMm, loop, 190.5).clock(tape).orElseThrow();
        assertEquals(-7, clock.value(), 1e-6);
        assertEquals("ppm", clock.unit());
        double drift = 1e6 * 0.002 * lagMs / 1000 / 60;
        assertEquals(Math.hypot(MarkedReturn.SLOPE_PPM, drift), clock.uncertainty(), 2e-5);
    }

    /** A distance tells the lag only together with the tape's speed. */
    @Test
    void aDistanceWithoutSpeedTellsNoLag() {
        Quantity clock = figures(LATE, 60.0, null, null).clock(true).orElseThrow();
        double drift = 1e6 * 0.002 * 0.16 / 60;
        assertEquals(Math.hypot(MarkedReturn.SLOPE_PPM, drift), clock.uncertainty(), 2e-5);
    }
}
