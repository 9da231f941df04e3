package offtape.report.measure.transport;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import offtape.report.measure.line.FoundLine;
import offtape.report.measure.speed.HeardDeviation;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * 4096 values at 500 Hz: bins 0.12207 Hz apart. The first from 0.5 Hz on is bin 5; blocks of 12
 * begin at bins 5, 17, 29, 41, 53, 65, 77 …, and are wider from bin 150 on.
 */
class CombSpectrumTest {

    private static final double BIN_HZ = 500.0 / 4096;

    private static CombSpectrum single(double bandHz, double noise, List<FoundLine> lines) {
        return new CombSpectrum(TwoHeads.single(bandHz, noise, lines));
    }

    private static FoundLine line(double startHz, double endHz) {
        return new FoundLine(startHz, endHz, 0.01, 0.1, 0.001, 0, 0);
    }

    /**
     * 10 Hz is bin 81.9: six blocks of 12 and one of four bins, too few. 10.2 Hz is bin 83.6, whose
     * last block has six.
     */
    @ParameterizedTest
    @CsvSource({"10, 6", "10.1, 6", "10.2, 7", "2.1, 1", "2.6, 1", "2.9, 2", "0.6, 0", "0.4, 0"})
    void blocksFollowTheRate(double bandHz, int blocks) {
        assertEquals(blocks, single(bandHz, 0, List.of()).blocks());
    }

    /**
     * From bin 149 on a block has the whole part of 8 % of its first bin, by hand: 149, 161, 173,
     * 186, 200, 216, 233, 251, 271, 292, 315, 340, 367, 396, 427, 461, 497, 536, 578, 624, 673,
     * 726, 784, 846, 913, 986, 1064, 1149, 1240, 1339, 1446, 1561 to 1638 (200 Hz); twelve blocks
     * lie below.
     */
    @Test
    void wideBlocksAtFastRates() {
        assertEquals(12 + 32, single(220, 0, List.of()).blocks());
        assertEquals(12 + 32, single(200, 0, List.of()).blocks());
        assertEquals(12 + 3, single(186 * BIN_HZ, 0, List.of()).blocks());
    }

    /** A block must have four times the density of the noise. */
    @Test
    void whatIsMostlyNoiseSaysNothing() {
        assertEquals(6, single(10, TwoHeads.singleDensity() / 4.01, List.of()).blocks());
        assertEquals(0, single(10, TwoHeads.singleDensity() / 3.99, List.of()).blocks());
    }

    /**
     * What counts is the noise in the middle of a block: 4.27 Hz of the third, 5.74 of the fourth.
     */
    @Test
    void noiseCountsAtTheRateOfTheBlock() {
        HeardDeviation single = TwoHeads.single(10, 0, List.of());
        CombSpectrum spectrum =
                new CombSpectrum(
                        new HeardDeviation(
                                single.percent(),
                                500,
                                10,
                                f -> f < 5 ? TwoHeads.singleDensity() : 0,
                                List.of()));
        assertEquals(3, spectrum.blocks());
    }

    /**
     * Bins closer than four to a line are left out, and with fewer than six a block is. A line on
     * bin 19 takes six of the 12 bins from 17 on, one on bin 20 or 23 seven; one that moves from
     * bin 23 to 25, or back, takes nine of them; one from 11 to 17 takes nine of the first block's
     * and four of the second's.
     */
    @ParameterizedTest
    @CsvSource({
        "17, 17, 6",
        "19, 19, 6",
        "20, 20, 5",
        "23, 23, 5",
        "26, 26, 6",
        "23, 25, 5",
        "25, 23, 5",
        "11, 17, 5",
        "17, 11, 5",
        "10, 24, 4",
        "24, 10, 4",
        "0, 200, 0",
        "200, 0, 0",
    })
    void linesAreLeftOut(double startBin, double endBin, int blocks) {
        assertEquals(
                blocks, single(10, 0, List.of(line(startBin * BIN_HZ, endBin * BIN_HZ))).blocks());
    }

    /**
     * Without a comb the likelihood of n bins of one density D is −n·ln D, over 1.944 for what
     * neighbouring bins share: 12 bins a block, of which those count that begin below the rate.
     */
    @Test
    void evenMotionHasTheLikelihoodOfItsDensity() {
        CombSpectrum spectrum = single(10, 0, List.of());
        double block = -12 * Math.log(TwoHeads.singleDensity());
        assertEquals(block, spectrum.blockLogLikelihood(3, 0), 1e-3);
        assertEquals(6 * block / 1.944, spectrum.logLikelihood(0.0, 60), 1e-3);
        assertEquals(2 * block / 1.944, spectrum.logLikelihood(0.0, 28.9 * BIN_HZ), 1e-3);
        assertEquals(3 * block / 1.944, spectrum.logLikelihood(0.0, 29.1 * BIN_HZ), 1e-3);
        assertEquals(1, spectrum.dispersion(0), 0);
    }

    /**
     * Of 3 · 2048 values pieces of 4096 are taken, which are 1.5 times as many seconds: 2 · 1.5 − 1
     * = 2 pieces, and each block says as much more.
     */
    @Test
    void longerReturnsSayMore() {
        double[] x = new double[6144];
        x[3072] = 1;
        CombSpectrum spectrum = new CombSpectrum(new HeardDeviation(x, 500, 10, f -> 0, List.of()));
        // on places 3072 and 1024 of the two pieces Hann's window is a half
        double density = TwoHeads.singleDensity() / 4;
        assertEquals(-2 * 12 * Math.log(density), spectrum.blockLogLikelihood(0, 0), 0.05);
    }

    /**
     * The seventh block, bins 77 to 88, holds the zero at 10 Hz of heads 0.1 s apart. Three things
     * fill it: Hann's window, (2π · 0.6 · 0.1 s/8.192 s)²; noise of a ninth of the motion, 2/9; and
     * a delay that wavers, by (2π·f·l)². A line of 1.2 % at 0.12207 Hz makes l = 0.012/(2π ·
     * 0.12207)/√2 = 11.06 ms rms; it lies below the lowest rate. The density of the block is even,
     * so its likelihood is −12·ln of the mean of 1/g, less Σ ln g.
     */
    @ParameterizedTest
    @CsvSource({"0, 0", "0.1, 0", "0, 1.2"})
    void zerosAreFilled(double noiseShare, double wavering) {
        double[] x = TwoHeads.single(12, 0, List.of()).percent().clone();
        for (int i = 0; i < x.length; i++) {
            x[i] += wavering * Math.sin(2 * Math.PI * i / x.length);
        }
        double density = TwoHeads.singleDensity();
        CombSpectrum spectrum =
                new CombSpectrum(
                        new HeardDeviation(x, 500, 12, f -> noiseShare * density, List.of()));
        double late = wavering == 0 ? 0 : 0.01106;
        double inverse = 0;
        double logs = 0;
        for (int k = 77; k < 89; k++) {
            double f = k * BIN_HZ;
            double g =
                    Math.pow(2 * Math.sin(Math.PI * f * 0.1), 2)
                            + Math.pow(2 * Math.PI * 0.06 / 8.192, 2)
                            + (noiseShare == 0 ? 0 : 2.0 / 9)
                            + Math.pow(2 * Math.PI * f * late, 2);
            inverse += 1 / g / 12;
            logs += Math.log(g);
        }
        assertEquals(
                -12 * Math.log(density * inverse) - logs,
                spectrum.blockLogLikelihood(6, 0.1),
                0.01);
    }

    /** Whittle's likelihood has its top where the density is that of the comb. */
    @Test
    void theTrueDelayIsLikeliest() {
        CombSpectrum spectrum = new CombSpectrum(TwoHeads.heard());
        double top = spectrum.logLikelihood(TwoHeads.DELAY_S, 60.0);
        for (double off = 0.0005; off < 0.08; off *= 1.3) {
            assertTrue(spectrum.logLikelihood(TwoHeads.DELAY_S + off, 60.0) < top, off + " s late");
            assertTrue(
                    spectrum.logLikelihood(TwoHeads.DELAY_S - off, 60.0) < top, off + " s early");
        }
        assertTrue(spectrum.logLikelihood(0.0, 60) < top - 12);
    }

    /** A comb of even motion scatters about its own delay by less than chance makes: 1. */
    @Test
    void aCombDoesNotScatterAboutItsDelay() {
        CombSpectrum spectrum = new CombSpectrum(TwoHeads.heard());
        assertEquals(1, spectrum.dispersion(TwoHeads.DELAY_S), 0);
    }

    /**
     * Jerks 2048 values apart with signs in turn: each piece of 4096 holds two, at which Hann's
     * window is a half, so that every other bin is 0 and every other twice the mean. (0 − 1)² = (2
     * − 1)² = 1 is what chance makes of a single piece; of 2 · 8191/4096 − 1 = 2.9995 pieces it is
     * that many times as much.
     */
    @Test
    void dispersionIsTheScatterOverThatOfChance() {
        double[] x = new double[8191];
        x[1024] = 1;
        x[3072] = -1;
        x[5120] = 1;
        CombSpectrum spectrum = new CombSpectrum(new HeardDeviation(x, 500, 10, f -> 0, List.of()));
        assertEquals(2.9995, spectrum.dispersion(0), 1e-3);
    }
}
