package offtape.report.measure.noise;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Bands of frames whose powers are given. A band of one bin has two degrees of freedom, for which
 * χ² is an exponential distribution: its lower quartile lies at −2·ln 0.75, its median at 2·ln 2.
 */
class BandCourseTest {

    private static final double QUARTILE = -2 * Math.log(0.75);

    /** One bin in frames of the given powers. */
    private static BandCourse single(double... powers) {
        double[][] bins = new double[powers.length][];
        Arrays.setAll(bins, f -> new double[] {0, powers[f], 0});
        return BandCourse.of(bins, 1, 0.5, 1.5);
    }

    /** Twenty frames of which five are low, two thirds of the rest the median and the rest high. */
    private static BandCourse course(double low, double median, double high) {
        double[] powers = new double[20];
        Arrays.fill(powers, 0, 7, low);
        Arrays.fill(powers, 7, 17, median);
        Arrays.fill(powers, 17, 20, high);
        return single(powers);
    }

    /**
     * From 23 to 46 Hz with bins every 10 Hz, which reach 5 Hz to either side: a fifth of the
     * second, the third and fourth, a tenth of the fifth.
     */
    @Test
    void binsAtTheEdgesCountByTheirShare() {
        double[][] bins = {{1e6, 1e5, 10, 7, 5, 20, 1e5}, {1e6, 1e5, 20, 14, 10, 40, 1e5}};
        BandCourse band = BandCourse.of(bins, 10, 23, 46);
        assertEquals(2 + 7 + 5 + 2, band.power(0), 1e-9);
        assertEquals(2 * 16, band.power(1), 1e-9);
    }

    @Test
    void aBandHoldsItsLowerEdge() {
        BandCourse band = single(1, 1);
        assertTrue(band.holds(0.5));
        assertTrue(band.holds(1.49));
        assertFalse(band.holds(1.5));
        assertFalse(band.holds(0.49));
    }

    /**
     * Ten bins alike: neighbours are alike by 4/9 and their neighbours by 1/36, so ν = 2·10²/(10 +
     * 2·9·4/9 + 2·8/36). Two thirds of a bin more than two make two degrees of the bound: 2·2.667
     * over the 2.667 of a row.
     */
    @Test
    void freedomIsThatOfLikeNeighbours() {
        double[][] bins = new double[4][12];
        for (double[] frame : bins) {
            Arrays.fill(frame, 3);
        }
        BandCourse ten = BandCourse.of(bins, 1, 0.5, 10.5);
        assertEquals(200 / (10 + 8 + 16.0 / 36), ten.freedom(), 1e-9);
        BandCourse bound = BandCourse.of(bins, 1, 0.5, 2.5 + 2.0 / 3);
        // χ² of two degrees exceeds −2·ln α in a share α.
        assertEquals(-Math.log(0.01), bound.threshold(0.01, 0), 1e-6);
    }

    /** Sound in one bin of the louder half of the frames leaves the freedom of the noise alone. */
    @Test
    void loudFramesDoNotTellTheFreedom() {
        double[][] bins = new double[8][12];
        for (double[] frame : bins) {
            Arrays.fill(frame, 3);
        }
        for (int f = 5; f < 8; f++) {
            bins[f][4] = 1e6;
        }
        BandCourse band = BandCourse.of(bins, 1, 0.5, 10.5);
        assertEquals(200 / (10 + 8 + 16.0 / 36), band.freedom(), 1e-9);
    }

    /** The sixth of twenty frames in order of power is the quartile; its place in time is none. */
    @Test
    void theFloorIsToldByTheQuartile() {
        double[] powers = new double[20];
        Arrays.setAll(powers, f -> 20 - f);
        assertEquals(6 * 2 / QUARTILE, single(powers).floor(), 1e-9);
    }

    /**
     * The quartile of n values scatters by √(¼·¾/n) over the density there, 0.375 of it, n being 95
     * % of the frames: relative 0.09934/(0.375·0.5754) = 0.4604 for twenty.
     */
    @Test
    void theFloorMayBeTooLow() {
        BandCourse band = course(1, 1, 1);
        double relative = Math.sqrt(0.1875 / 19) / (0.375 * QUARTILE);
        assertEquals(1 + 4.5 * relative, band.threshold(1e-3, 4.5) / band.threshold(1e-3, 0), 1e-9);
    }

    /**
     * Frames in any order: which are the quieter half is told by their power alone. Those of powers
     * 10 have flat bins, the loud ones a single bin.
     */
    @Test
    void theOrderOfFramesTellsNothing() {
        double[][] bins = new double[9][12];
        for (int f = 0; f < 9; f++) {
            boolean loud = f % 2 == 0 && f > 1;
            if (loud || f == 4) {
                bins[f][5] = 1e6 + f;
            } else {
                Arrays.fill(bins[f], 3);
            }
        }
        BandCourse band = BandCourse.of(bins, 1, 0.5, 10.5);
        assertEquals(200 / (10 + 8 + 16.0 / 36), band.freedom(), 1e-9);
    }

    /**
     * Noise of 2, for a level of twice the floor of 1, and no excess: variances of 2²·v of the
     * floor and 2·2²/(ν·19) of the mean.
     */
    @Test
    void louderNoiseScattersMore() {
        double[] levels = new double[20];
        Arrays.fill(levels, 2);
        BandCourse.Excess excess = course(QUARTILE / 2, 0.5, 0.5).excess(levels);
        double relative = Math.sqrt(0.1875 / 19) / (0.375 * QUARTILE);
        assertEquals(0, excess.power());
        assertEquals(4 * relative * relative + 8.0 / 38, excess.variance(), 1e-9);
    }

    /** Digital silence has no floor, and does not ask for more than the freedom of one bin. */
    @Test
    void digitalSilenceHasNoFloor() {
        BandCourse band = single(0, 0, 0, 0);
        assertEquals(0, band.floor());
        assertEquals(2, band.freedom());
    }

    /**
     * A floor of 1 in frames of mean 0.3·7/20 + … : what the mean has over the floor. With v the
     * relative variance of the floor, noise N and excess P have N²·v + 2·N·(N + 2P)/(ν·19).
     */
    @Test
    void theExcessIsWhatLiesOverTheFloor() {
        BandCourse band = course(QUARTILE / 2, 1, 21);
        double[] levels = new double[20];
        Arrays.fill(levels, 1);
        BandCourse.Excess excess = band.excess(levels);
        double mean = (7 * QUARTILE / 2 + 10 + 63) / 20;
        assertEquals(1, band.floor(), 1e-9);
        assertEquals(mean - 1, excess.power(), 1e-9);
        double relative = Math.sqrt(0.1875 / 19) / (0.375 * QUARTILE);
        double variance = relative * relative + 2 * (1 + 2 * (mean - 1)) / (2 * 19);
        assertEquals(variance, excess.variance(), 1e-9);
        assertEquals(0, excess.hidden(), 1e-9);
    }

    /**
     * Where noise is three times louder in half the frames, the mean of the noise is 2, and the 1
     * that came with it may be sound. Less than the noise is nothing.
     */
    @Test
    void noiseThatSwellsIsTakenOut() {
        BandCourse band = course(QUARTILE / 2, 1, 21);
        double[] levels = new double[20];
        Arrays.fill(levels, 0, 10, 3);
        Arrays.fill(levels, 10, 20, 1);
        BandCourse.Excess excess = band.excess(levels);
        assertEquals((7 * QUARTILE / 2 + 10 + 63) / 20 - 2, excess.power(), 1e-9);
        assertEquals(1, excess.hidden(), 1e-9);
        Arrays.fill(levels, 100);
        assertEquals(0, band.excess(levels).power());
    }

    /**
     * The median tells of noise of median/ln 2. By two deviations of the floor, 0.4604 each, over
     * the floor of 1 it may be sound in half the frames, which hides all the noise: from a median
     * of 1.9208·ln 2 = 1.3314.
     */
    @ParameterizedTest
    @CsvSource({"1.33, 0", "1.333, 1"})
    void soundInMostFramesHidesInTheNoise(double median, double hidden) {
        double[] levels = new double[20];
        Arrays.fill(levels, 1);
        assertEquals(hidden, course(QUARTILE / 2, median, 3).excess(levels).hidden(), 1e-9);
    }
}
