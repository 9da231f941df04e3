package offtape.report.locate;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.function.DoubleUnaryOperator;
import org.junit.jupiter.api.Test;

class MarkerSightTest {

    private static final WrittenProgramme WRITTEN = WrittenProgramme.small();

    @Test
    void inOneTakeTheLastMarkerIsInTime() {
        List<MarkerSight> sights = sights(t -> (t - 1.5) * 1.01);
        assertEquals(2, sights.size());
        assertEquals(0, sights.get(1).lateSeconds(), sights.get(1).doubtSeconds());
        assertEquals(0, sights.get(1).lateSeconds(), 1e-4);
    }

    /** 30 ms taken out of the pause after the reference tone bring all that follows 30 ms early. */
    @Test
    void aCutMakesItEarly() {
        List<MarkerSight> sights = sights(t -> t - 1.5 + (t > 1.5 + 3.375 ? 0.03 : 0));
        MarkerSight last = sights.get(sights.size() - 1);
        assertEquals(-0.03, last.lateSeconds(), 0.002);
        assertTrue(0.03 > 2 * last.doubtSeconds(), "doubt " + last.doubtSeconds());
    }

    private static List<MarkerSight> sights(DoubleUnaryOperator programmeSeconds) {
        double[] x = WrittenProgramme.withHiss(WRITTEN.returned(19, programmeSeconds));
        return Locator.locate(WRITTEN.programme(), WrittenProgramme.recording(x)).markers();
    }
}
