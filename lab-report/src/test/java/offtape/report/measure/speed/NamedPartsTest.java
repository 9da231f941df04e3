package offtape.report.measure.speed;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import offtape.core.transport.TransportDescription;
import offtape.core.unit.Quantity;
import offtape.report.result.RateBand;
import offtape.report.result.Speed;
import offtape.report.result.SpeedComponent;
import offtape.report.result.TransportSpeed;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

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

    /**
     * 9.5493 Hz of a capstan within 0.6 %: 9.4920 to 9.6066 Hz, wider by the line's uncertainty.
     */
    @ParameterizedTest
    @CsvSource({
        "9.4915, 0.0006, capstan",
        "9.4915, 0.0004,",
        "9.6071, 0.0006, capstan",
        "9.6071, 0.0004,"
    })
    void theRateOfAPartHasItsTolerance(double hz, double uncertainty, String part) {
        assertEquals(part, name(hz, uncertainty));
    }

    /**
     * A capstan's line may change by 3e-4 of itself, twice the drift and twice its uncertainty of
     * 0.0004 Hz: 9.549 · 3e-4 + 0.0008 = 0.00366 Hz; with a drift of 0.1 % 0.0191 Hz more.
     */
    @ParameterizedTest
    @CsvSource({
        "0, 0, capstan",
        "0.0036, 0, capstan",
        "0.0038, 0,",
        "-0.0036, 0, capstan",
        "-0.0038, 0,",
        "0.0226, 0.001, capstan",
        "0.0229, 0.001,",
        "-0.0226, 0.001, capstan",
        "-0.0229, 0.001,"
    })
    void aPartThatTurnsWithTheTapeMovesNoFarther(double change, double drift, String part) {
        assertEquals(part, name(moving(9.549, change, 0.0005), "", 190.5, 0, drift));
    }

    /**
     * 28 to 42 µm, a fifth to either side of 35, move 0.5 Hz by 0.0069266 to 0.0103899 Hz a minute,
     * give or take twice an uncertainty of 0.0003. At a speed 20 % higher, a sixth less.
     */
    @ParameterizedTest
    @CsvSource({
        "0.0064, 0, supply reel",
        "0.0062, 0,",
        "0.0109, 0, supply reel",
        "0.0111, 0,",
        "-0.0064, 0, take-up reel",
        "-0.0062, 0,",
        "-0.0109, 0, take-up reel",
        "-0.0111, 0,",
        "0.0052, 0.2, supply reel",
        "0.0051, 0.2,",
        "0.0092, 0.2, supply reel",
        "0.0093, 0.2,"
    })
    void aReelMovesAsItsTapeIsThick(double perMinute, double deviation, String part) {
        SpeedComponent line = moving(0.5, perMinute, 0.0003);
        assertEquals(part, name(line, ", \"tapeThicknessMicrometres\": 35", 190.5, deviation, 0));
    }

    /** 6 to 60 µm: 0.0014843 to 0.0148427 Hz a minute, and twice 0.0003 to either side. */
    @ParameterizedTest
    @CsvSource({"0.0009, supply reel", "0.0008,", "0.0154, supply reel", "0.0155,"})
    void anyTapeInUseMayLieOnTheReel(double perMinute, String part) {
        assertEquals(part, name(moving(0.5, perMinute, 0.0003), "", 190.5));
    }

    /** Percent are shares times a hundred; what is not known counts as none. */
    @Test
    void meanAndDriftOfTheMeasuredSpeedAreTaken() {
        TransportDescription parts = TransportDescription.fromJson(PARTS.formatted(""));
        SpeedComponent fast = SpeedComponent.steady(10.504, 0.1, null, 0.001, 0.001);
        SpeedComponent follows = moving(1.516, 0.0045, 0.0005);
        Speed none = Speed.unknown("Lines alone.");
        Speed tenFast = none.withMean(Quantity.known(10, "%", 0.01), none.drift());
        Speed drifting = none.withMean(none.deviation(), Quantity.known(0.3, "%", 0.01));
        assertEquals(
                "capstan",
                only(NamedParts.name(tenFast.withComponents(List.of(fast)), parts, 190.5)));
        assertNull(only(NamedParts.name(none.withComponents(List.of(fast)), parts, 190.5)));
        assertEquals(
                "pinch roller or pulley",
                only(NamedParts.name(drifting.withComponents(List.of(follows)), parts, 190.5)));
        assertNull(only(NamedParts.name(none.withComponents(List.of(follows)), parts, 190.5)));
    }

    private static String only(Speed named) {
        assertEquals(1, named.components().size());
        return named.components().get(0).part();
    }

    /** A return off tape has lines as heard and as the transport has them; both are named. */
    @Test
    void theTransportsOwnLinesAreNamedAndHiddenPartsTold() {
        TransportDescription parts =
                TransportDescription.fromJson(
                        """
                        {"format": "offtape-transport", "version": 1, "tapeSpeedMmPerS": 190.5,
                         "capstan": {"diameterMm": 9.52}, "pinchRoller": {"diameterMm": 40}}
                        """);
        List<SpeedComponent> lines =
                List.of(
                        SpeedComponent.steady(1.516, 0.1, null, 0.001, 0.001),
                        SpeedComponent.steady(5, 0.1, null, 0.001, 0.001));
        TransportSpeed own =
                HiddenPartsTest.own(List.of(new RateBand(0.02, 6.34), new RateBand(6.4, 50)))
                        .with(lines, List.of("First."));
        Speed heard = Speed.unknown("Lines alone.").withComponents(lines);
        Speed named = NamedParts.name(heard.withTransport(own), parts, null);
        assertEquals("pinch roller", named.components().get(0).part());
        assertEquals("pinch roller", named.transport().components().get(0).part());
        assertNull(named.transport().components().get(1).part());
        assertEquals(2, named.transport().notes().size());
        assertTrue(named.transport().notes().get(1).startsWith("Capstan, 6.33 to 6.41 Hz:"));
        assertNull(NamedParts.name(heard, parts, null).transport());
    }
}
