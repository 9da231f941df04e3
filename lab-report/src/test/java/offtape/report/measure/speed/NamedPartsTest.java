package offtape.report.measure.speed;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;

import java.util.List;
import offtape.core.transport.TransportDescription;
import offtape.report.result.SpeedComponent;
import org.junit.jupiter.api.Test;

/**
 * A machine at 190.5 mm/s: capstan of 6.35 mm 9.549 Hz, roller of 40 mm 1.516 Hz, reels of 30 to 85
 * mm 0.357 to 1.011 Hz. At 0.5 Hz (60.6 mm) 35 µm of tape move a reel's line by
 * 2π·0.035·0.125/190.5 = 1.44e-4 Hz/s = 0.0087 Hz a minute.
 */
class NamedPartsTest {

    private static final String PARTS =
            """
            {"format": "offtape-transport", "version": 1, "capstan": {"diameterMm": 6.35},
             "pinchRoller": {"diameterMm": 40}, "idlers": [{"name": "pulley", "diameterMm": 40}],
             "supplyReel": {"hubRadiusMm": 30, "packRadiusMm": 85},
             "takeUpReel": {"hubRadiusMm": 30, "packRadiusMm": 85},
             "mainsHz": 50 %s}
            """;

    private static String name(SpeedComponent line, String more, Double mmPerS) {
        return name(line, more, mmPerS, 0, 0);
    }

    private static String name(
            SpeedComponent line, String more, Double mmPerS, double deviation, double drift) {
        TransportDescription parts = TransportDescription.fromJson(PARTS.formatted(more));
        return NamedParts.name(List.of(line), parts, mmPerS, deviation, drift).get(0).part();
    }

    private static String name(double hz, double uncertainty) {
        return name(SpeedComponent.steady(hz, 0.1, null, uncertainty, 0.001), "", 190.5);
    }

    /** A line that was tried for movement; what moves counts from its middle. */
    private static SpeedComponent moving(double hz, double perMinute, double uncertainty) {
        boolean moves = perMinute != 0;
        return new SpeedComponent(
                hz - perMinute / 2,
                0.1,
                null,
                0.0004,
                0.001,
                moves ? (Double) (hz + perMinute / 2) : null,
                moves ? (Double) perMinute : null,
                uncertainty,
                null);
    }

    @Test
    void aLineHasTheNameOfThePartAtItsRate() {
        assertEquals("capstan", name(9.549, 0.001));
        assertEquals("capstan, 2nd harmonic", name(19.098, 0.001));
        assertEquals("mains", name(50.02, 0.001));
        assertEquals("twice the mains", name(100.04, 0.001));
    }

    @Test
    void aLineBesideEveryRateHasNone() {
        assertNull(name(9.2, 0.001));
        assertNull(name(6.4, 0.001));
        assertNull(name(47, 0.001));
    }

    /** Five seconds of tone know 9.4 Hz no better than 0.15 Hz. */
    @Test
    void theUncertaintyOfTheLineCounts() {
        assertNull(name(9.4, 0.01));
        assertEquals("capstan", name(9.4, 0.15));
    }

    @Test
    void allPartsThatFitAreNamed() {
        assertEquals("pinch roller or pulley", name(1.516, 0.001));
        assertEquals("supply reel or take-up reel", name(0.5, 0.01));
    }

    @Test
    void movementTellsOneReelFromTheOther() {
        assertEquals("supply reel", name(moving(0.5, 0.0087, 0.001), "", 190.5));
        assertEquals("take-up reel", name(moving(0.5, -0.0087, 0.001), "", 190.5));
    }

    @Test
    void aLineThatStandsStillIsNoReel() {
        assertNull(name(moving(0.5, 0, 0.0002), "", 190.5));
        assertEquals(
                "supply reel or take-up reel", name(moving(0.5, 0, 0.01), "", 190.5), "not known");
    }

    @Test
    void theThicknessOfTheTapeSaysHowFastAReelMoves() {
        String thick = ", \"tapeThicknessMicrometres\": 35";
        assertEquals("supply reel", name(moving(0.5, 0.0087, 0.0003), thick, 190.5));
        assertNull(name(moving(0.5, 0.0045, 0.0003), thick, 190.5));
        assertEquals("supply reel", name(moving(0.5, 0.0045, 0.0003), "", 190.5));
    }

    @Test
    void aRollerDoesNotMoveLikeAReel() {
        assertNull(name(moving(1.516, 0.02, 0.001), "", 190.5));
    }

    @Test
    void theSpeedOfTheRecordingGoesBeforeThatOfTheFile() {
        SpeedComponent line = SpeedComponent.steady(9.549, 0.1, null, 0.001, 0.001);
        String own = ", \"tapeSpeedMmPerS\": 190.5";
        assertEquals("capstan", name(line, own, null));
        assertNull(name(line, own, 381.0));
        assertNull(name(line, "", null));
        SpeedComponent mains = SpeedComponent.steady(50, 0.1, null, 0.001, 0.001);
        assertEquals("mains", name(mains, "", null));
    }

    /** 10 % fast: 10.504 Hz. */
    @Test
    void theMeasuredSpeedMovesTheRates() {
        SpeedComponent line = SpeedComponent.steady(10.504, 0.1, null, 0.001, 0.001);
        assertEquals("capstan", name(line, "", 190.5, 0.1, 0));
        assertNull(name(line, "", 190.5));
    }

    /** A drift of 0.3 % takes 1.516 Hz along by 0.0045 Hz. */
    @Test
    void aRollerMovesWithTheSpeedOfTheTape() {
        assertNull(name(moving(1.516, 0.0045, 0.0005), "", 190.5));
        assertEquals(
                "pinch roller or pulley", name(moving(1.516, 0.0045, 0.0005), "", 190.5, 0, 0.003));
    }
}
