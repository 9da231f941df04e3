package offtape.report.fault.symptom;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import java.util.Map;
import offtape.report.fault.symptom.SpeedLineKinds.Kind;
import offtape.report.result.SpeedComponent;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Kinds of parts by the rate of their line, f = v / (π·D). */
class SpeedLineKindsTest {

    @ParameterizedTest
    @CsvSource({
        "190.5, 7.58, CAPSTAN", // 8 mm
        "190.5, 2.02, ROLLER", // 30 mm
        "190.5, 0.61, REEL", // 100 mm
        "381, 13.5, CAPSTAN", // 9 mm
        "47.6, 6.06, CAPSTAN", // 2.5 mm
        "47.6, 1.52, ROLLER", // 10 mm
        "47.6, 0.43, REEL", // 35 mm
        "190.5, 50, MOTOR"
    })
    void aLineIsOfThePartThatTurnsSoFast(double mmPerS, double hz, Kind kind) {
        assertEquals(Map.of(kind, 0.2), strongest(mmPerS, line(hz, 0.2, null)));
    }

    /** Multiples belong to the part that makes the first: a flat spot of a roller of 30 mm. */
    @Test
    void multiplesBelongToTheirFundamental() {
        assertEquals(
                Map.of(Kind.ROLLER, 0.3),
                strongest(
                        190.5,
                        line(2.02, 0.3, null),
                        line(4.04, 0.2, null),
                        line(6.06, 0.12, null)));
    }

    /** A narrow part with strong multiples is no plain shaft. */
    @Test
    void strongMultiplesMakeItARoller() {
        assertEquals(
                Map.of(Kind.ROLLER, 0.3),
                strongest(190.5, line(5, 0.3, null), line(10, 0.2, null), line(15, 0.12, null)));
    }

    /** Where the transport's dimensions gave the line a name, that counts. */
    @Test
    void theNameOfThePartCounts() {
        assertEquals(
                Map.of(Kind.REEL, 0.2, Kind.CAPSTAN, 0.1),
                strongest(190.5, line(7.58, 0.2, "supply reel"), line(0.61, 0.1, "capstan")));
    }

    private static Map<Kind, Double> strongest(double mmPerS, SpeedComponent... lines) {
        return new SpeedLineKinds(List.of(lines), mmPerS).strongest();
    }

    private static SpeedComponent line(double hz, double percent, String part) {
        return SpeedComponent.steady(hz, percent, part, 0.001, 0.001);
    }
}
