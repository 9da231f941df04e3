package offtape.report.measure.tone;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;

class ComplexTest {

    private static final Complex A = new Complex(3, 4);
    private static final Complex B = new Complex(1, -2);

    private static void assertIs(double re, double im, Complex actual) {
        assertEquals(re, actual.re(), 1e-12);
        assertEquals(im, actual.im(), 1e-12);
    }

    /** (3 + 4i)·(1 − 2i) = 3 + 8 + (4 − 6)i; over: (3 + 4i)·(1 + 2i)/5 = (3 − 8 + 10i)/5. */
    @Test
    void numbersAreReckonedAsByHand() {
        assertIs(11, -2, A.times(B));
        assertIs(-1, 2, A.over(B));
        assertIs(4, 2, A.plus(B));
        assertIs(2, 6, A.minus(B));
        assertIs(3, -4, A.conjugate());
        assertIs(-6, -8, A.times(-2));
        assertIs(3, 4, A.plus(Complex.ZERO));
    }

    /** A circle's sixth: 2·(½ + √3/2·i). A negative size turns that half round. */
    @Test
    void sizeAndPhaseMakeANumber() {
        assertIs(1, Math.sqrt(3), Complex.polar(2, Math.PI / 3));
        assertIs(-1, -Math.sqrt(3), Complex.polar(-2, Math.PI / 3));
        assertEquals(5, A.size(), 1e-12);
        assertEquals(2.5, Complex.polar(1, 2.5).phase(), 1e-12);
        assertEquals(-Math.PI / 2, new Complex(0, -3).phase(), 1e-12);
    }
}
