package offtape.core.model;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;

class TapeCurveTest {

    private static final Bend CUBIC = new Bend(Bend.Shape.CUBIC, 2);

    /** x − x³/12 has of a cosine A: A − A³/16 and −A³/48, from cos³ = (3·cos + cos 3)/4. */
    @Test
    void knowsTheHarmonicsOfACubicCurve() {
        TapeCurve curve = new TapeCurve(List.of(CUBIC), List.of(1.0), 0);
        double[] h = curve.harmonics(0.8);
        assertEquals(0.8 - 0.512 / 16, h[1], 1e-12);
        assertEquals(-0.512 / 48, h[3], 1e-12);
        assertEquals(h[1] / 0.8, curve.ratios(0.8)[0], 1e-5);
        assertEquals(h[3] / 0.8, curve.ratios(0.8)[1], 1e-5);
    }

    /** However far beyond, it never falls. */
    @Test
    void neverFalls() {
        Bend tanh = new Bend(Bend.Shape.TANH, 0.7);
        TapeCurve curve = new TapeCurve(List.of(CUBIC, tanh), List.of(0.6, 0.4), 0);
        double before = curve.of(-50);
        for (double x = -50; x <= 50; x += 0.01) {
            assertTrue(curve.of(x) >= before - 1e-12);
            before = curve.of(x);
        }
    }

    @Test
    void refusesSharesThatAddUpToMoreThanOne() {
        List<Bend> bends = List.of(CUBIC, CUBIC);
        List<Double> shares = List.of(0.6, 0.6);
        assertThrows(IllegalArgumentException.class, () -> new TapeCurve(bends, shares, 0));
    }
}
