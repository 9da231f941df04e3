package offtape.report.measure.mode;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import offtape.core.transport.CaptureMode;
import offtape.core.unit.Quantity;
import offtape.report.measure.loopback.KnownInterface;
import offtape.report.measure.speed.ToneReading;
import offtape.report.result.HealthNote;
import offtape.report.result.Speed;
import offtape.report.result.Timing;
import offtape.report.result.TransportSpeed;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What each mode lets one know of a return of three markers ({@link MarkedReturn}). */
class ModeFiguresTest {

    private static final ToneReading TONE = MarkedReturn.tone(0.05, 0.05, 0.001, null);

    private static ModeFigures of(CaptureMode mode, double ppm, KnownInterface loop) {
        Capture capture = new Capture(mode, ModeQuestion.NOBODY, null, loop, 1);
        return new ModeFigures(MarkedReturn.of(0.16, ppm), TONE, List.of(), capture, 190.5);
    }

    private static ModeFigures of(CaptureMode mode) {
        return of(mode, 7, null);
    }

    private static void assertReason(String words, Quantity unknown) {
        assertFalse(unknown.isKnown());
        assertTrue(unknown.reason().contains(words), unknown.reason());
    }

    @Test
    void aReferenceTapeTellsTheSpeed() {
        Speed speed = of(CaptureMode.REFERENCE_TAPE).speed();
        assertEquals(0.3, speed.deviation().value(), 1e-12);
        assertEquals(0.1, speed.drift().value(), 1e-12);
        assertNull(speed.passDifference());
    }

    /** Two passes of one machine tell by how much they differ, and how that changes. */
    @Test
    void twoPassesTellTheirDifference() {
        Speed speed = of(CaptureMode.TWO_PASS).speed();
        assertReason("so a wrong speed cancels", speed.deviation());
        assertEquals(0.1, speed.drift().value(), 1e-12);
        assertEquals(0.3, speed.passDifference().value(), 1e-12);
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "OFF_TAPE | no pitch changes | leaves nothing to hear",
                "LOOPBACK | the interface measured itself | the interface measured itself",
                " | measure again with --mode | ",
            })
    void oneMomentTellsNoSpeed(CaptureMode mode, String mean, String drift) {
        Speed speed = of(mode).speed();
        assertReason(mean, speed.deviation());
        if (drift == null) {
            assertEquals(0.1, speed.drift().value(), 1e-12);
        } else {
            assertReason(drift, speed.drift());
        }
        assertEquals(0.05, speed.weightedRms().value(), 1e-12);
        assertNull(speed.passDifference());
    }

    /** The delay is that of the programme's first frame; heads and clock as the mode lets one. */
    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "REFERENCE_TAPE | recorded elsewhere was replayed | looks like one of tape speed",
                "TWO_PASS | rewound between recording and replay | differ between its two passes",
                "LOOPBACK | the interface measured itself | ",
                "OFF_TAPE | with --loopback | ",
                " | measure again with --mode | measure again with --mode",
            })
    void whatAModeCannotTellIsSaid(CaptureMode mode, String heads, String clock) {
        Timing timing = of(mode).timing("inverted");
        assertEquals(160, timing.delay().value(), 1e-9);
        assertEquals("ms", timing.delay().unit());
        assertEquals(2, timing.delay().uncertainty(), 1e-9);
        assertEquals("inverted", timing.polarity());
        assertReason(heads, timing.headDelay());
        assertReason(heads, timing.headSpacing());
        if (clock == null) {
            assertEquals(7, timing.recordingClockError().value(), 1e-6);
        } else {
            assertReason(clock, timing.recordingClockError());
        }
    }

    /** On tape 0.2 % of 160 ms over a minute may be drift: 5.33 ppm; a loop has none. */
    @Test
    void aTapeMayDriftAndALoopMayNot() {
        double tape = of(CaptureMode.OFF_TAPE).timing("").recordingClockError().uncertainty();
        double loop = of(CaptureMode.LOOPBACK).timing("").recordingClockError().uncertainty();
        assertEquals(Math.hypot(MarkedReturn.SLOPE_PPM, 16.0 / 3), tape, 2e-5);
        assertEquals(MarkedReturn.SLOPE_PPM, loop, 2e-5);
    }

    @Test
    void headsOffTapeAreTheDelayLessTheLoops() {
        Timing timing = of(CaptureMode.OFF_TAPE, 7, MarkedReturn.loop(5.0, 7.0)).timing("");
        assertEquals(155, timing.headDelay().value(), 1e-9);
        assertEquals(0.155 * 190.5, timing.headSpacing().value(), 1e-9);
    }

    /** A rate that two clocks cannot have was not recorded while the programme played. */
    @Test
    void aRateThatNoClocksHaveTellsNeitherHeadsNorClock() {
        ModeFigures off = of(CaptureMode.OFF_TAPE, -20_000, null);
        assertReason("too fast or too slow", off.timing("").headDelay());
        assertReason("runs +2.041 % off", off.timing("").recordingClockError());
        assertReason("Too few markers", off.meanDelay());
        ModeFigures loop = of(CaptureMode.LOOPBACK, -20_000, null);
        assertReason("runs +2.041 % off", loop.timing("").recordingClockError());
        assertEquals(
                List.of("mode-contradicted"), off.notes().stream().map(HealthNote::code).toList());
    }

    /** Where too few markers were heard the rate of both ends tells the clock: −r/(1 + r). */
    @Test
    void withoutALineTheEndsTellTheClock() {
        ModeFigures figures =
                new ModeFigures(
                        MarkedReturn.of(MarkedReturn.of(0.16, 150).map(), true, false),
                        MarkedReturn.tone(0, 0.05, 0.001, null),
                        List.of(),
                        Capture.of(CaptureMode.OFF_TAPE),
                        190.5);
        Quantity clock = figures.timing("").recordingClockError();
        assertEquals(150, clock.value(), 1e-6);
        assertEquals("ppm", clock.unit());
        assertEquals(47.1405, clock.uncertainty(), 1e-3);
        assertReason("Too few markers", figures.meanDelay());
    }

    @ParameterizedTest
    @CsvSource({"OFF_TAPE, true", "LOOPBACK, true", "TWO_PASS, false", "REFERENCE_TAPE, false"})
    void whatWasRecordedMeanwhileHasAMeanDelay(CaptureMode mode, boolean told) {
        ModeFigures figures = of(mode);
        assertEquals(mode, figures.mode());
        assertEquals(told, figures.meanDelay().isKnown());
        if (told) {
            assertEquals(160, figures.meanDelay().value(), 1e-9);
        }
    }

    /**
     * The heads' distance over the tape's speed tells how long the tape takes: 30 / 190.5 s.
     * Without the speed it is the delay of 160 ms less the 20 ms of a usual interface.
     */
    @Test
    void theTransportIsAskedForWithWhatIsKnownOfTheHeads() {
        ToneReading tone = MarkedReturn.tone(0.05, 0.05, 0.001, ModeSignsTest.comb(8, 0));
        Capture capture = new Capture(CaptureMode.OFF_TAPE, ModeQuestion.NOBODY, 30.0);
        ModeFigures figures =
                new ModeFigures(MarkedReturn.of(0.16, 7), tone, List.of(), capture, 190.5);
        TransportSpeed own = figures.transport(190.5).speed();
        assertEquals(1000 * 30 / 190.5, own.headDelay().value(), 1e-6);
        assertReason("no pitch changes", own.deviation());
        assertEquals(140, figures.transport(null).speed().headDelay().value(), 1e-6);
    }
}
