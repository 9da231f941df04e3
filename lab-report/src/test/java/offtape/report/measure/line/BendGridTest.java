package offtape.report.measure.line;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import org.junit.jupiter.api.Test;

class BendGridTest {

    /**
     * Bending by b turns the phase at the ends, half the length T from the middle, by 2π·f·b·T²/16;
     * steps of 4 rad at 4 Hz over 20 s are b = 64/(2π·4·400) = 0.006366/s. Reels bend by 0.004·f at
     * most: 0.016/s at 4 Hz, two steps, and 0.008/s at 2 Hz, where a step is twice as wide: none.
     */
    @Test
    void bendsAreThoseThatReelsCanHave() {
        List<BendGrid> grids = BendGrid.octaves(1.5, 4, 20);
        assertEquals(2, grids.size());
        assertEquals(2, grids.get(0).fromHz(), 0);
        assertEquals(4, grids.get(0).toHz(), 0);
        double step = 64 / (2 * Math.PI * 4 * 400);
        assertArrayEquals(
                new double[] {-2 * step, -step, 0, step, 2 * step}, grids.get(0).bends(), 1e-12);
        assertEquals(1.5, grids.get(1).fromHz(), 0);
        assertEquals(2, grids.get(1).toHz(), 0);
        assertArrayEquals(new double[] {0}, grids.get(1).bends(), 0);
    }

    /**
     * Over 200 s the area of a pack may change by b·T = 1.6 at most, b = 0.008/s at 4 Hz and at 2
     * Hz (where 0.004·f is as much); steps are 64/(2π·4·40 000) = 6.366e-5/s, 125 to each side, and
     * twice that, 62. Below, 0.004 · 1 Hz allows 0.004/s in steps of 2.546e-4/s: 15.
     */
    @Test
    void aPackDoesNotVanish() {
        List<BendGrid> grids = BendGrid.octaves(0.5, 4, 200);
        assertEquals(List.of(251, 125, 31), grids.stream().map(g -> g.bends().length).toList());
        double step = 64 / (2 * Math.PI * 4 * 40_000);
        assertEquals(-125 * step, grids.get(0).bends()[0], 1e-12);
        assertEquals(125 * step, grids.get(0).bends()[250], 1e-12);
        assertEquals(0.5, grids.get(2).fromHz(), 0);
        assertEquals(1, grids.get(2).toHz(), 0);
    }

    /** 2.1 peaks a hertz and second, for each bend: 2.1 · 2 Hz · 20 s · 5. */
    @Test
    void peaksOfNoiseAreCounted() {
        assertEquals(420, BendGrid.octaves(2, 4, 20).get(0).peaks(20), 1e-9);
        assertEquals(63, new BendGrid(1, 2.5, new double[] {0}).peaks(20), 1e-9);
    }
}
