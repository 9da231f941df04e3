package offtape.core.transport;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.OptionalDouble;
import offtape.reference.ReferenceTable;
import offtape.reference.Source;
import org.junit.jupiter.api.Test;

class ExpectedLinesTest {

    private static final OptionalDouble REEL = OptionalDouble.of(190.5);

    private static TransportDescription of(String members) {
        return TransportDescription.fromJson(
                "{\"format\": \"offtape-transport\", \"version\": 1, " + members + "}");
    }

    private static ExpectedLine only(List<ExpectedLine> lines, String part) {
        List<ExpectedLine> found = lines.stream().filter(l -> l.part().equals(part)).toList();
        assertEquals(1, found.size(), part);
        return found.get(0);
    }

    private static void assertAround(double hz, ExpectedLine line, double widest) {
        assertTrue(line.lowHz() < hz && hz < line.highHz(), line + " does not hold " + hz);
        assertTrue(line.highHz() / line.lowHz() < widest, line + " is wide");
    }

    /** As a capstan and as a pack each tabulated part has its line at the tabulated rate. */
    @Test
    @Source("f = v / (π d), rotating parts of common transports")
    void partsHaveTheirLinesAtTheTabulatedRates() {
        ReferenceTable table = ReferenceTable.load("rotation-rates");
        for (int row = 0; row < table.size(); row++) {
            double d = table.number(row, "diameter");
            OptionalDouble speed = OptionalDouble.of(table.number(row, "speed"));
            double rate = table.number(row, "rate");
            if (d >= 10) {
                String reel = "\"takeUpReel\": {\"packRadiusMm\": " + d / 2 + "}";
                assertAround(
                        rate, only(ExpectedLines.of(of(reel), speed, 0), "take-up reel"), 1.07);
            } else {
                String capstan = "\"capstan\": {\"diameterMm\": " + d + "}";
                assertAround(rate, only(ExpectedLines.of(of(capstan), speed, 0), "capstan"), 1.02);
            }
        }
    }

    /** 190.5/(π·6.35) = 9.549 Hz; twice that 19.10, three times 28.65. */
    @Test
    void harmonicsAreNamed() {
        List<ExpectedLine> lines =
                ExpectedLines.of(of("\"capstan\": {\"diameterMm\": 6.35}"), REEL, 0);
        assertEquals(3, lines.size());
        assertAround(19.098, only(lines, "capstan, 2nd harmonic"), 1.02);
        assertAround(28.648, only(lines, "capstan, 3rd harmonic"), 1.02);
    }

    /** 1 % fast: 9.549 Hz if the capstan is too thick, 9.645 Hz if it turns too fast. */
    @Test
    void aSmallErrorOfSpeedMayBeOneOfDiameter() {
        TransportDescription t = of("\"capstan\": {\"diameterMm\": 6.35}");
        ExpectedLine line = only(ExpectedLines.of(t, REEL, 0.01), "capstan");
        assertAround(9.549, line, 1.025);
        assertAround(9.645, line, 1.025);
        // 10 % fast is no error of diameter: 10.504 Hz
        assertAround(10.504, only(ExpectedLines.of(t, REEL, 0.1), "capstan"), 1.02);
    }

    /**
     * 190.5 · 1.02/(π·6.35) = 9.740 Hz: up to 2 % the capstan may be too thick, beyond it is not.
     */
    @Test
    void twoPerCentIsTheLargestErrorOfDiameter() {
        TransportDescription t = of("\"capstan\": {\"diameterMm\": 6.35}");
        assertAround(9.549, only(ExpectedLines.of(t, REEL, 0.02), "capstan"), 1.035);
        assertAround(9.549, only(ExpectedLines.of(t, REEL, -0.02), "capstan"), 1.035);
        ExpectedLine faster = only(ExpectedLines.of(t, REEL, 0.0201), "capstan");
        assertTrue(faster.lowHz() > 9.549, faster.toString());
        assertAround(9.741, faster, 1.015);
    }

    /** 190.5/(π·28) = 2.1656 Hz; rubber is pressed flat, so it turns some per cent otherwise. */
    @Test
    void aPinchRollerIsLessCertainThanACapstan() {
        List<ExpectedLine> lines =
                ExpectedLines.of(of("\"pinchRoller\": {\"diameterMm\": 28}"), REEL, 0);
        assertEquals(
                List.of("pinch roller", "pinch roller, 2nd harmonic", "pinch roller, 3rd harmonic"),
                lines.stream().map(ExpectedLine::part).toList());
        assertAround(2.1656 * 1.01, lines.get(0), 1.03);
        assertAround(2.1656 * 0.99, lines.get(0), 1.03);
        assertAround(3 * 2.1656, lines.get(2), 1.03);
        assertEquals(ExpectedLine.Movement.STEADY, lines.get(0).movement());
    }

    /** Hub 60 mm and pack 170 mm across: from 0.357 to 1.011 Hz. */
    @Test
    void aReelLiesBetweenItsHubAndItsFullPack() {
        TransportDescription t = of("\"supplyReel\": {\"hubRadiusMm\": 30, \"packRadiusMm\": 85}");
        ExpectedLine line = only(ExpectedLines.of(t, REEL, 0), "supply reel");
        assertEquals(0.357, line.lowHz(), 0.012);
        assertEquals(1.011, line.highHz(), 0.035);
        assertEquals(ExpectedLine.Movement.FASTER, line.movement());
    }

    /**
     * 1440 turns a minute are 24 Hz. A belt of 300 mm over 45 mm at 2 Hz: 2·π·45/300 = 0.942 Hz.
     */
    @Test
    void motorsMainsAndBeltsNeedNoTapeSpeed() {
        TransportDescription t =
                of(
                        "\"mainsHz\": 60, \"capstan\": {\"diameterMm\": 3}, \"motors\": [{\"rpm\":"
                                + " 1440}], \"belts\": [{\"lengthMm\": 300, \"pulleyDiameterMm\": 45,"
                                + " \"pulleyRotationHz\": 2}, {\"name\": \"main belt\","
                                + " \"lengthMm\": 300, \"pulleyDiameterMm\": 60}]");
        List<ExpectedLine> lines = ExpectedLines.of(t, OptionalDouble.empty(), 0);
        assertAround(24, only(lines, "motor"), 1.03);
        assertAround(60, only(lines, "mains"), 1.02);
        assertAround(120, only(lines, "twice the mains"), 1.02);
        assertAround(0.942, only(lines, "belt"), 1.07);
        assertTrue(
                lines.stream().noneMatch(l -> l.part().matches("capstan.*|main belt")),
                lines.toString());
        // on the shaft of a 3 mm capstan at 47.625 mm/s, 5.053 Hz: 5.053·π·60/300 = 3.175 Hz
        List<ExpectedLine> cassette = ExpectedLines.of(t, OptionalDouble.of(47.625), 0);
        assertAround(3.175, only(cassette, "main belt"), 1.07);
    }

    @Test
    void idlersGoByTheirNames() {
        TransportDescription t =
                of(
                        "\"idlers\": [{\"name\": \"tension roller\", \"diameterMm\": 22},"
                                + " {\"diameterMm\": 28}, {\"name\": \"unknown\"}]");
        assertEquals(
                List.of("tension roller", "idler"),
                ExpectedLines.of(t, REEL, 0).stream().map(ExpectedLine::part).toList());
    }

    /**
     * 190.5 mm/s, 62 mm, 35 µm: the radius changes by h·v/(2π·r) = 0.01712 mm/s, the rate 0.4890 Hz
     * by the same share 0.01712/62: 1.350e-4 Hz/s.
     */
    @Test
    void aReelMovesAsItsPackGrows() {
        double change = ReelMovement.hzPerSecond(190.5 / (2 * Math.PI * 62), 190.5, 35);
        assertEquals(1.350e-4, change, 1e-7);
    }
}
