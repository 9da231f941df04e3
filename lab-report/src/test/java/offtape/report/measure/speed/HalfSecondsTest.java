package offtape.report.measure.speed;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import org.junit.jupiter.api.Test;

/** At four values a second a block of half a second has two. */
class HalfSecondsTest {

    private static final double RATE = 4;

    /** What is settled begins three seconds after the tone: middles of blocks at 3.25, 3.75 … s. */
    @Test
    void everyBlockHasItsHighestReadingAtItsMiddle() {
        HalfSeconds half = new HalfSeconds(RATE);
        half.weighted(new double[] {1, -1, 1, -1, 1, -1});
        assertNull(half.readings());
        half.reading(new double[] {0.1, 0.3, 0.5});
        half.reading(new double[] {0.2, 0.4});
        assertArrayEquals(new double[] {0.3, 0.5}, half.readings().weightedPeakPercent());
        assertArrayEquals(new double[] {3.25, 3.75}, half.readings().seconds(), 1e-12);
        half.reading(new double[] {0.3});
        assertArrayEquals(new double[] {0.3, 0.5, 0.4}, half.readings().weightedPeakPercent());
        assertArrayEquals(new double[] {3.25, 3.75, 4.25}, half.readings().seconds(), 1e-12);
    }

    /** 24 blocks; the highest reading in the 23rd, so that the first ten seconds with it win. */
    @Test
    void theWorstTenSecondsHoldTheHighestReading() {
        double[] reading = new double[48];
        Arrays.fill(reading, 0.1);
        reading[45] = 0.4;
        double[] weighted = new double[48];
        // blocks 3 to 22 with 0.3 twice, of squares 0.09 each: √(2 · 0.09 / 40)
        weighted[10] = 0.3;
        weighted[40] = -0.3;
        HalfSeconds half = new HalfSeconds(RATE);
        half.weighted(weighted);
        half.reading(reading);
        assertTrue(half.hasWorst());
        assertEquals(0.4, half.worstPeak());
        assertEquals(3 + 3 * 0.5, half.worstFromSeconds(), 1e-12);
        assertEquals(Math.sqrt(2 * 0.09 / 40), half.worstRms(), 1e-12);
    }

    /** Of ten seconds with the same highest reading those with the higher root mean square. */
    @Test
    void amongEqualReadingsTheStrongerDeviationIsWorse() {
        double[] reading = new double[52];
        Arrays.fill(reading, 0.2);
        double[] weighted = new double[52];
        Arrays.fill(weighted, 0.1);
        // Blocks 21 and 22 are stronger: 3 to 22 are the first twenty that hold both.
        weighted[42] = 0.2;
        weighted[44] = 0.2;
        HalfSeconds half = new HalfSeconds(RATE);
        half.reading(reading);
        half.weighted(weighted);
        assertEquals(0.2, half.worstPeak());
        assertEquals(3 + 3 * 0.5, half.worstFromSeconds(), 1e-12);
        assertEquals(Math.sqrt((38 * 0.01 + 2 * 0.04) / 40), half.worstRms(), 1e-12);
    }

    @Test
    void tenSecondsAreNeededForTheWorst() {
        HalfSeconds half = new HalfSeconds(RATE);
        half.weighted(new double[40]);
        half.reading(new double[39]);
        assertFalse(half.hasWorst());
        half.reading(new double[1]);
        assertTrue(half.hasWorst());
        assertEquals(3, half.worstFromSeconds());
        assertEquals(0, half.worstPeak());
        assertEquals(0, half.worstRms());
    }

    /** Five minutes fill what is kept; what follows joins neighbours to whole seconds. */
    @Test
    void longReadingsJoin() {
        HalfSeconds half = new HalfSeconds(2);
        half.weighted(new double[602]);
        double[] reading = new double[602];
        Arrays.setAll(reading, i -> i);
        half.reading(reading);
        double[] percent = half.readings().weightedPeakPercent();
        assertEquals(301, percent.length);
        assertEquals(1, percent[0]);
        assertEquals(601, percent[300]);
        assertEquals(3.5, half.readings().seconds()[0], 1e-12);
        assertEquals(3 + 300 + 0.5, half.readings().seconds()[300], 1e-12);
    }
}
