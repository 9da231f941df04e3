package offtape.report.measure.sweep;

import static org.junit.jupiter.api.Assertions.assertEquals;

import offtape.report.measure.sweep.Leakage.Leak;
import offtape.report.measure.tone.Complex;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Two channels l and r, heard as L = l + a·r and R = r + b·l. */
class LeakageTest {

    private static final Complex L = Complex.polar(0.8, 0.4);
    private static final Complex R = Complex.polar(0.3, -1.1);

    private static Complex degrees(double size, double degrees) {
        return Complex.polar(size, Math.toRadians(degrees));
    }

    private static void assertSame(Complex expected, Complex found) {
        assertEquals(expected.re(), found.re(), 1e-12);
        assertEquals(expected.im(), found.im(), 1e-12);
    }

    /**
     * A leak that is as late everywhere turns by the frequency; one that is nearly inverted is an
     * inverted one that is a little late or early.
     */
    @ParameterizedTest
    @CsvSource({
        "30, 2000, 60",
        "-30, 500, -15",
        "89, 2000, 178",
        "170, 2000, 160",
        "-170, 2000, -160",
        "170, 500, 175",
        "-100, 500, -140",
        "0, 16000, 0",
        "180, 16000, 180"
    })
    void isAsLateAtOtherFrequencies(double degreesAtOne, double hz, double degreesThere) {
        Leak leak = new Leak(degrees(0.02, degreesAtOne), 1000);
        assertSame(degrees(0.02, degreesThere), leak.at(hz));
        assertSame(leak.ratio(), leak.at(1000));
    }

    @Test
    void eachDirectionHasItsOwn() {
        Leak toRight = new Leak(degrees(0.1, 20), 1000);
        Leak toLeft = new Leak(degrees(0.2, 10), 500);
        Leakage leakage = new Leakage(toRight, toLeft);
        assertSame(degrees(0.2, 20), leakage.into(0, 1000));
        assertSame(degrees(0.1, 20), leakage.into(1, 1000));
    }

    /** L − a·R = (1 − ab)·l and R − b·L = (1 − ab)·r, whatever is made of them. */
    @ParameterizedTest
    @CsvSource({"0.1, 20, 0.05, -70", "0.3, 130, 0, 0", "0, 0, 0.2, 175", "0.2, -95, 0.2, 85"})
    void whatIsHeardIsTakenApart(double a, double aDegrees, double b, double bDegrees) {
        Leakage leakage =
                new Leakage(
                        new Leak(degrees(b, bDegrees), 1000), new Leak(degrees(a, aDegrees), 1000));
        Complex intoLeft = leakage.into(0, 3000);
        Complex intoRight = leakage.into(1, 3000);
        Complex left = L.plus(intoLeft.times(R));
        Complex right = R.plus(intoRight.times(L));
        Complex kept = new Complex(1, 0).minus(intoLeft.times(intoRight));
        double leftPower = left.size() * left.size();
        double rightPower = right.size() * right.size();
        double kept2 = kept.size() * kept.size();
        Complex cross = left.times(right.conjugate());

        assertSame(kept.times(L), leakage.unmixedAmplitude(0, left, right, 3000));
        assertSame(kept.times(R), leakage.unmixedAmplitude(1, right, left, 3000));
        assertSame(R.over(L), leakage.unmixedRatio(right.over(left), 3000));
        assertSame(
                L.times(R.conjugate()).times(kept2),
                leakage.unmixed(cross, leftPower, rightPower, 3000));
        assertEquals(
                kept2 * 0.8 * 0.8,
                leakage.unmixedPower(0, leftPower, rightPower, cross, 3000),
                1e-12);
        assertEquals(
                kept2 * 0.3 * 0.3,
                leakage.unmixedPower(1, rightPower, leftPower, cross, 3000),
                1e-12);
    }
}
