package offtape.core.dsp;

import static offtape.core.standard.Checks.assertPublished;
import static org.junit.jupiter.api.Assertions.assertEquals;

import offtape.reference.Source;
import org.apache.commons.math3.analysis.integration.RombergIntegrator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class KaiserWindowTest {

    /** Tabulated as e⁻ˣ I0(x). */
    @ParameterizedTest
    @CsvSource({"1, 0.465759607594", "5, 0.183540812609", "10, 0.127833337163"})
    @Source("SciPy, scipy.special.i0e (Cephes), twelve digits")
    void besselFunctionAgreesWithALibrary(double x, double scaled) {
        assertPublished(scaled, Math.exp(-x) * KaiserWindow.besselI0(x), 5e-13, 0, "I0 of " + x);
    }

    /** I0(x) = (1/π) ∫ exp(x cos θ) dθ from 0 to π, integrated by a general-purpose library. */
    @ParameterizedTest
    @ValueSource(doubles = {0.01, 0.5, 2, 5.653, 8, 8.96, 15, 25})
    @Source("Abramowitz and Stegun 9.6.16")
    void besselFunctionAgreesWithItsIntegral(double x) {
        double integral =
                new RombergIntegrator(1e-13, 1e-13, 5, 25)
                                .integrate(1 << 20, t -> Math.exp(x * Math.cos(t) - x), 0, Math.PI)
                        / Math.PI;
        assertEquals(1, Math.exp(-x) * KaiserWindow.besselI0(x) / integral, 1e-12);
    }

    @Test
    @Source("Oppenheim and Schafer, Discrete-Time Signal Processing, section 7.5.3 (from memory)")
    void workedExampleOfSixtyDecibels() {
        assertPublished(5.653, KaiserWindow.beta(60), 5e-4, 0, "beta of 60 dB");
    }

    @Test
    @Source("SciPy manual, kaiser_beta (after Oppenheim and Schafer, pages 475 and 476)")
    void workedExampleOfSixtyFiveDecibels() {
        assertPublished(6.20426, KaiserWindow.beta(65), 5e-6, 0, "beta of 65 dB");
    }

    /**
     * β = 0.5842·(A − 21)^0.4 + 0.07886·(A − 21) up to 50 dB: for A = 50, 0.5842·29^0.4 = 2.2466
     * and 0.07886·29 = 2.2869; the other branch would give 4.5513.
     */
    @Test
    @Source("Oppenheim and Schafer, Discrete-Time Signal Processing, section 7.5.3 (from memory)")
    void theLowerBranchReachesFiftyDecibels() {
        assertPublished(4.5335, KaiserWindow.beta(50), 1e-4, 0, "beta of 50 dB");
    }

    /** At 21 dB the window is rectangular: β = 0. The branches meet at 50 dB within 0.4 %. */
    @Test
    void rectangularAtTwentyOneDecibels() {
        assertEquals(0, KaiserWindow.beta(21), 0);
        assertEquals(1, KaiserWindow.value(0.9, KaiserWindow.beta(21)), 1e-15);
        assertEquals(1, KaiserWindow.beta(50) / KaiserWindow.beta(50.000001), 0.004);
    }

    /** I0(0) = 1, so the window is 1 in the middle and 1/I0(β) at its edge: I0(5) = 27.23987. */
    @Test
    @Source("SciPy, scipy.special.i0 (Cephes)")
    void standsOnAPedestalAndEndsThere() {
        assertEquals(1, KaiserWindow.value(0, 5), 1e-15);
        assertPublished(1 / 27.23987, KaiserWindow.value(1, 5), 1e-8, 0, "edge");
        assertEquals(KaiserWindow.value(0.3, 5), KaiserWindow.value(-0.3, 5), 0);
        assertEquals(0, KaiserWindow.value(1.0001, 5), 0);
        assertEquals(0, KaiserWindow.value(-1.0001, 5), 0);
    }
}
