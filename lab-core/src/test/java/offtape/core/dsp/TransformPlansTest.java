package offtape.core.dsp;

import static org.junit.jupiter.api.Assertions.assertNotSame;
import static org.junit.jupiter.api.Assertions.assertSame;

import org.jtransforms.fft.DoubleFFT_1D;
import org.junit.jupiter.api.Test;

/** Ten points are kept here. */
class TransformPlansTest {

    private final TransformPlans plans = new TransformPlans(10);

    @Test
    void whatFitsIsMadeOnce() {
        DoubleFFT_1D four = plans.plan(4);
        DoubleFFT_1D six = plans.plan(6);
        assertSame(four, plans.plan(4));
        assertSame(six, plans.plan(6));
        assertNotSame(four, six);
    }

    /** 4 + 6 points fit, one more does not: the plan of 4 goes, then 6 + 1 + 3 fit again. */
    @Test
    void theOldestGoesFirst() {
        DoubleFFT_1D four = plans.plan(4);
        DoubleFFT_1D six = plans.plan(6);
        DoubleFFT_1D one = plans.plan(1);
        DoubleFFT_1D three = plans.plan(3);
        assertSame(six, plans.plan(6));
        assertSame(one, plans.plan(1));
        assertSame(three, plans.plan(3));
        assertNotSame(four, plans.plan(4));
        assertNotSame(six, plans.plan(6));
    }

    /** A transform of more points than are kept pushes out all others, not itself. */
    @Test
    void theLatestStays() {
        DoubleFFT_1D two = plans.plan(2);
        DoubleFFT_1D five = plans.plan(5);
        DoubleFFT_1D large = plans.plan(64);
        assertSame(large, plans.plan(64));
        assertNotSame(two, plans.plan(2));
        assertNotSame(five, plans.plan(5));
    }
}
