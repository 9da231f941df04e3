package offtape.report.apply.model;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;

/** A measured curve beyond its ends. */
class PointCurveTest {

    // 12 dB lower two octaves higher: 6 dB an octave, which goes on.
    @Test
    void fallGoesOnUpwards() {
        PointCurve fall = new PointCurve(new double[] {250, 1000, 4000}, new double[] {12, 0, -12});
        assertEquals(-6, fall.at(2000), 1e-9);
        assertEquals(-18, fall.at(8000), 1e-9);
        assertEquals(-12, fall.held(8000), 0);
        assertEquals(12, fall.at(125), 1e-9, "what falls upwards does not rise downwards");
    }

    // Within 0.5 % there is neither a third of an octave to read a slope from nor a hundredth.
    @Test
    void narrowCurveGoesOnLevel() {
        PointCurve narrow = new PointCurve(new double[] {1000, 1005}, new double[] {0, 1});
        assertEquals(0, narrow.at(500), 0);
        assertEquals(1, narrow.at(2000), 0);
        assertEquals(1, narrow.held(2000), 0);
    }
}
