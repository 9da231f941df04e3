package offtape.report.fault.symptom;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** Scales of symptoms. */
class ScaleTest {

    @ParameterizedTest
    @EnumSource(Scale.class)
    void aValueComesBackFromItsScale(Scale scale) {
        for (double value : new double[] {0.003, 0.4, 7, 300}) {
            assertEquals(value, scale.back(scale.on(value)), 1e-9 * value);
            double step = 1e-6 * value;
            double slope = (scale.on(value + step) - scale.on(value - step)) / (2 * step);
            assertEquals(slope, scale.slope(value), 1e-6 * slope);
        }
    }

    /** asinh(1) = ln(1 + √2) = 0.881374 at the knee, and the same below nought. */
    @Test
    void signedScalesAreStraightBelowTheirKnee() {
        assertEquals(0.881374, Scale.SIGNED.on(2), 1e-6);
        assertEquals(-0.881374, Scale.SIGNED.on(-2), 1e-6);
        assertEquals(0.881374, Scale.SIGNED_WIDE.on(20), 1e-6);
        assertEquals(0.005, Scale.SIGNED.on(0.01), 1e-6);
    }
}
