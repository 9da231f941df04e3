package offtape.report.measure.line;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import offtape.core.dsp.RealFft;
import offtape.core.dsp.Spectrum;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class LinePowerTest {

    private static final int PLACES = 513;
    private static final double LN_2 = Math.log(2);

    /**
     * A spectrum that has these powers, a hertz apart: of samples whose transform has their roots,
     * as if the sum of the windows were 2.
     *
     * @param perBin places a bin
     */
    private static LinePower of(double[] power, double perBin) {
        int n = 2 * (power.length - 1);
        double[] re = Arrays.stream(power).map(Math::sqrt).toArray();
        double[] x = RealFft.ofSize(n).inverse(Spectrum.of(n, re, new double[re.length]));
        return LinePower.of(x, 2, n, 1 / perBin, 1);
    }

    private static double[] flat(double power) {
        double[] p = new double[PLACES];
        Arrays.fill(p, power);
        return p;
    }

    /**
     * 3 · sin at 2.5 Hz over 2 s: a bin is 0.5 Hz, and the transform, lengthened to 256 samples of
     * 64 Hz, has two places a bin.
     */
    @Test
    void theSquareOfAPeakIsRead() {
        double[] x = new double[128];
        Arrays.setAll(x, i -> 3 * Math.sin(2 * Math.PI * 2.5 * i / 64));
        LinePower power = LinePower.of(new Stretch(x, 64));
        assertEquals(0.25, power.binHz(), 0);
        assertEquals(129, power.size());
        assertEquals(10, power.nearest(2.5));
        assertEquals(10, power.nearest(2.62));
        assertEquals(11, power.nearest(2.63));
        assertEquals(9, power.power(10), 1e-3);
        assertEquals(
                9 / 4.0, power.power(12), 1e-3, "a bin away Hann's window lets a half through");
        assertEquals(0, power.power(14), 1e-3, "two bins away nothing");
    }

    /** At 1.5 places a bin the two places to either side lie within a bin, at 2 as well. */
    @ParameterizedTest
    @CsvSource({
        "1.5, 98, false",
        "1.5, 102, false",
        "1.5, 97, true",
        "1.5, 103, true",
        "1, 99, false",
        "1, 101, false",
        "1, 98, true",
        "1, 102, true",
        "2, 98, false",
        "2, 102, false",
        "2, 97, true",
        "2, 103, true"
    })
    void aTopIsTheHighestWithinABin(double perBin, int higher, boolean top) {
        double[] p = flat(1);
        p[100] = 50;
        p[higher] = 60;
        assertEquals(top, of(p, perBin).isTop(100));
        assertTrue(of(p, perBin).isTop(higher));
        assertFalse(of(p, perBin).isTop(200), "as high as all around");
    }

    /** At the very ends it cannot be seen whether a place is the highest. */
    @ParameterizedTest
    @CsvSource({"1, false", "2, true", "510, true", "511, false"})
    void aTopHasABinToEitherSide(int place, boolean top) {
        double[] p = flat(1);
        p[place] = 50;
        assertEquals(top, of(p, 2).isTop(place));
    }

    @Test
    void nothingHasNoTop() {
        LinePower silent = of(flat(0), 1);
        assertFalse(silent.isTop(100));
        assertEquals(Double.NEGATIVE_INFINITY, silent.logChance(100));
        assertEquals(0, silent.noise(100), 0);
    }

    /**
     * A peak that is less than six times the median of 64 bins in its block and in those beside it
     * is left alone. 513 places at one a bin are eight blocks; what is over belongs to the last.
     */
    @ParameterizedTest
    @CsvSource({
        "100, 1, 5.9, false",
        "100, 1, 6.1, true",
        "100, 0, 6.1, true",
        "100, 2, 6.1, true",
        "100, 3, 6.1, false",
        "100, 3, 601, true",
        "20, 1, 6.1, true",
        "20, 2, 6.1, false",
        "500, 7, 6.1, true",
        "500, 6, 6.1, true",
        "500, 5, 6.1, false",
        "511, 7, 6.1, true"
    })
    void onlyWhatStandsOutIsLookedInto(int place, int quiet, double peak, boolean top) {
        double[] p = flat(100);
        Arrays.fill(p, 64 * quiet, 64 * (quiet + 1), 1);
        p[place - 1] = 0;
        p[place + 1] = 0;
        p[place] = peak;
        assertEquals(top, of(p, 1).isTop(place));
    }

    /** At two places a bin a block has 128; 31 loud ones of 64 do not move a median. */
    @Test
    void aBlockIsSixtyFourBins() {
        double[] p = flat(100);
        Arrays.fill(p, 128, 256, 1);
        p[300] = 150;
        p[299] = 0;
        p[298] = 0;
        p[301] = 0;
        p[302] = 0;
        assertTrue(of(p, 2).isTop(300), "beside the quiet block, 128 to 255");
        p[400] = 150;
        Arrays.fill(p, 396, 400, 0);
        Arrays.fill(p, 401, 405, 0);
        assertFalse(of(p, 2).isTop(400), "two blocks on");
        double[] q = flat(1);
        for (int block = 0; block < 8; block++) {
            Arrays.fill(q, 64 * block + 16, 64 * block + 47, 100);
        }
        q[120] = 7;
        assertTrue(of(q, 1).isTop(120));
    }

    /** Places after the last whole block belong to it, and a short spectrum is one block. */
    @Test
    void whatIsLeftOverBelongsToABlock() {
        double[] p = flat(100);
        Arrays.fill(p, 384, 480, 1);
        p[498] = 0;
        p[499] = 0;
        p[500] = 6.1;
        p[501] = 0;
        p[502] = 0;
        assertTrue(of(p, 1.5).isTop(500), "five blocks of 96 are 480");
        double[] few = Arrays.copyOf(flat(1), 33);
        few[20] = 6.1;
        assertTrue(of(few, 1).isTop(20));
        few[20] = 5.9;
        assertFalse(of(few, 1).isTop(20));
    }

    /**
     * Beyond the lobe, three bins wide, every second bin is read: at two places a bin, places 6, 10
     * … 62 to either side, 15 of them; their medians are the eighth of 1 to 15 and of 6 to 20.
     */
    @Test
    void noiseIsReadBesideTheLobe() {
        double[] p = flat(1e4);
        for (int i = 0; i < 15; i++) {
            int shuffled = 7 * i % 15;
            p[200 + 6 + 4 * i] = 1 + shuffled;
            p[200 - 6 - 4 * i] = 6 + shuffled;
        }
        assertEquals((8 + 13) / 2.0, of(p, 2).noise(200) * LN_2, 1e-6);
        p[200] = 26;
        assertEquals(FalseAlarm.logChance(2, 15), of(p, 2).logChance(200), 1e-6, "26 over 13");
    }

    /**
     * Higher up more is read, a sixteenth of the place's own number of bins and 51 at most, an odd
     * number so that there is one in the middle: 25 of the places 403, 405 … 451 for 400/16 = 25,
     * 27 for 447/16 = 27.9, 51 for 1600/16 = 100, and 25 for 431/16 = 26.9.
     */
    @ParameterizedTest
    @CsvSource({"400, 25", "431, 25", "447, 27", "820, 51", "1600, 51"})
    void moreIsReadHigherUp(int place, int count) {
        double[] p = new double[2049];
        Arrays.fill(p, 1e4);
        for (int i = 0; i < count; i++) {
            p[place + 3 + 2 * i] = 1 + i;
            p[place - 3 - 2 * i] = 1 + i;
        }
        double median = (count + 1) / 2.0;
        p[place] = 10 * median;
        LinePower power = of(p, 1);
        assertEquals(median, power.noise(place) * LN_2, 1e-6);
        assertEquals(FalseAlarm.logChance(10, count), power.logChance(place), 1e-6);
    }

    /**
     * A side with fewer than five places tells nothing, and 0 Hz with the bin about it is none of
     * them: at place 12 those are 9, 7, 5, 3, 1; at 11 the last would be 0. At two places a bin 24
     * has 18, 14, 10, 6, 2. At the upper end 512 is the last place there is: 501 has 504 … 512.
     */
    @ParameterizedTest
    @CsvSource({
        "1, 12, 1.5, 1, 1.125",
        "1, 11, 1.5, 1, 1",
        "2, 24, 1.5, 1, 1.125",
        "2, 23, 1.5, 1, 1",
        "1, 501, 1, 1.5, 1.0694444444",
        "1, 502, 1, 1.5, 1"
    })
    void aShortSideCountsByItsPlaces(
            double perBin, int place, double below, double above, double expected) {
        double[] p = flat(above);
        Arrays.fill(p, 0, place, below);
        assertEquals(expected, of(p, perBin).noise(place) * LN_2, 1e-6);
    }

    /** Where noise has an edge, the noisier side counts, whichever it is. */
    @ParameterizedTest
    @CsvSource({"1, 1.99, 1.495", "1.99, 1, 1.495", "1, 2.01, 2.01", "2.01, 1, 2.01"})
    void theNoisierSideOfAnEdgeCounts(double below, double above, double expected) {
        double[] p = flat(above);
        Arrays.fill(p, 0, 200, below);
        LinePower power = of(p, 1);
        assertEquals(expected, power.noise(200) * LN_2, 1e-6);
        double chance = FalseAlarm.logChance(p[200] / Math.max(below, above), 15);
        assertEquals(chance, power.logChance(200), 1e-6, "held against the noisier side");
    }

    /** Seven places, a bin apart: here every second one, 1 + 2 + 4 … + 64 = 127. */
    @Test
    void whatALineLeavesIsReadWithinItsLobe() {
        double[] p = flat(1e4);
        for (int d = -3; d <= 3; d++) {
            p[200 + 2 * d] = 1 << (d + 3);
        }
        assertEquals(127 / 7.0, of(p, 2).left(200.4), 1e-6);
    }

    /** Beyond the ends of the spectrum the last place stands for what is not there. */
    @Test
    void theLobeMayReachOverTheEnds() {
        double[] p = flat(1e4);
        for (int i = 0; i < 5; i++) {
            p[i] = 1 + i;
            p[512 - i] = 1 + i;
        }
        assertEquals((1 + 1 + 1 + 2 + 3 + 4 + 5) / 7.0, of(p, 1).left(1), 1e-6);
        assertEquals((1 + 1 + 1 + 2 + 3 + 4 + 5) / 7.0, of(p, 1).left(511), 1e-6);
    }
}
