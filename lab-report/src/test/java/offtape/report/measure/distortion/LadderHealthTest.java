package offtape.report.measure.distortion;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import offtape.core.unit.Quantity;
import offtape.report.result.Distortion;
import offtape.report.result.FittedCurve;
import offtape.report.result.HealthNote;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What is said of ladders whose figures are given. */
class LadderHealthTest {

    private static List<HealthNote> notes(Quantity slope, FittedCurve k3, FittedCurve replay) {
        Quantity none = Quantity.unknown("Not asked.");
        return LadderHealth.notes(
                List.of(
                        new Distortion(
                                "right", 1000, List.of(), none, none, none, none, none, none, slope,
                                k3, replay)));
    }

    private static FittedCurve scattering(double misfit) {
        return new FittedCurve(new double[] {0}, new double[] {1}, new double[] {0.1}, misfit);
    }

    /**
     * A third-order law rises by 2 dB per dB. Under 1.2 it is not tape's, over 4 something clips,
     * each only if the uncertainty does not reach the limit.
     */
    @ParameterizedTest
    @CsvSource({
        "1.0, 0.19, distortion-not-of-tape",
        "1.0, 0.2,",
        "1.3, 0.05,",
        "2.0, 0.1,",
        "4.5, 0.5,",
        "4.5, 0.49, distortion-abrupt",
        "3.9, 0.05,"
    })
    void theSlopeOfTheThirdTellsItsOrigin(double slope, double uncertainty, String code) {
        List<HealthNote> notes = notes(Quantity.known(slope, "dB/dB", uncertainty), null, null);
        assertEquals(
                code == null ? List.of() : List.of(code),
                notes.stream().map(HealthNote::code).toList());
        notes.forEach(
                n ->
                        assertTrue(
                                n.message().contains(slope + " dB per dB")
                                        && n.message().contains("right")));
    }

    @Test
    void anUnknownSlopeSaysNothing() {
        assertEquals(List.of(), notes(Quantity.unknown("Too few."), null, null));
    }

    /** Three times the scatter that noise explains is still borne, on either curve. */
    @ParameterizedTest
    @CsvSource({"3, 3, 0", "3.01, 1, 1", "1, 3.01, 1", "4, 4, 1"})
    void scatterIsRemarkedOn(double k3, double replay, int count) {
        List<HealthNote> notes =
                notes(Quantity.unknown("Too few."), scattering(k3), scattering(replay));
        assertEquals(count, notes.size());
        notes.forEach(n -> assertEquals("ladder-rough", n.code()));
    }
}
