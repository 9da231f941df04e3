package offtape.report.locate;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import offtape.core.audio.MemoryAudio;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

class MarkerSightTest {

    private static Returns returns;

    @BeforeAll
    static void generate() {
        returns = Returns.ofSmall();
    }

    @Test
    void inOneTakeTheLastMarkerIsInTime() {
        List<MarkerSight> sights = sights(returns.of(Returns.RATE, 1.5, 1, 1.01, 0.5, 0.5));
        assertEquals(2, sights.size());
        assertEquals(0, sights.get(1).lateSeconds(), sights.get(1).doubtSeconds());
        assertEquals(0, sights.get(1).lateSeconds(), 1e-4);
    }

    /** 30 ms taken out of the pause after the reference tone bring all that follows 30 ms early. */
    @Test
    void aCutMakesItEarly() {
        MemoryAudio whole = returns.of(Returns.RATE, 1.5, 1, 1, 0.5, 0.5);
        double[][] x = whole.read(0, (int) whole.frames());
        int at = (int) (1.5 * Returns.RATE) + 162_000;
        int gone = (int) (0.03 * Returns.RATE);
        double[][] cut = new double[2][x[0].length - gone];
        for (int c = 0; c < 2; c++) {
            System.arraycopy(x[c], 0, cut[c], 0, at);
            System.arraycopy(x[c], at + gone, cut[c], at, x[c].length - gone - at);
        }
        List<MarkerSight> sights = sights(new MemoryAudio("cut.wav", Returns.RATE, cut));
        MarkerSight last = sights.get(sights.size() - 1);
        assertEquals(-0.03, last.lateSeconds(), 0.002);
        assertTrue(0.03 > 2 * last.doubtSeconds(), "doubt " + last.doubtSeconds());
    }

    private static List<MarkerSight> sights(MemoryAudio recording) {
        return Locator.locate(returns.programme(), recording).markers();
    }
}
