package offtape.report.measure.loss;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.List;
import java.util.function.DoubleUnaryOperator;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class SetFitterTest {

    private static final LossTerm SPACE = LossTerm.of(Cause.SPACING, 190.5);
    private static final LossTerm GAP = LossTerm.of(Cause.GAP, 190.5);
    private static final LossTerm AZIMUTH = LossTerm.of(Cause.AZIMUTH, 190.5);
    private static final LossTerm EDGE = LossTerm.rollOff(2, 0);
    private static final Shelf BRIGHT = new Shelf(50, 70);

    /** What a space of 1 µm takes off each hertz more: 54.575 dB a wave, 190 500 µm a second. */
    private static final double DB_A_HZ = -54.5751 / 190_500;

    private static SetFitter fitter(LossCurve curve, Witness witness) {
        return new SetFitter(curve, Covariance.of(curve, 0), List.of(BRIGHT), witness);
    }

    private static CauseSet set(LossTerm... terms) {
        return new CauseSet(List.of(terms), null);
    }

    private static LossCurve curve(double noiseDb, DoubleUnaryOperator db, double... hz) {
        double[] noise = new double[hz.length];
        Arrays.fill(noise, noiseDb);
        return new LossCurve(hz, Arrays.stream(hz).map(db).toArray(), noise);
    }

    /** Twelve points an octave from 500 Hz to 16 kHz. */
    private static LossCurve wide(DoubleUnaryOperator db) {
        double[] hz =
                IntStream.rangeClosed(-12, 48)
                        .mapToDouble(k -> 1000 * Math.pow(2, k / 12.0))
                        .toArray();
        return curve(0.02, db, hz);
    }

    /** Half an octave apart, noise of 0.03 and 0.04 dB; what filters leave makes e^−½ in common. */
    private static LossCurve pair(double firstDb, double secondDb) {
        return new LossCurve(
                new double[] {1000, 1000 * Math.sqrt(2)},
                new double[] {firstDb, secondDb},
                new double[] {0.03, 0.04});
    }

    /** Of the difference: 0.03² + 0.04² + 2 · 0.01² · (1 − e^−½). */
    private static final double DIFFERENCE = 0.00257869;

    /**
     * With an offset alone 0.1 dB between two points are χ² = 0.01 / 0.00257869 = 3.87793; the
     * offset is nearer to the surer point, 0.1 dB · (0.001 − 6.0653e-5) / 0.00257869.
     */
    @Test
    void anOffsetLeavesWhatNoCauseExplains() {
        SetFit fit = fitter(pair(0, 0.1), null).fit(set(), 0, null).get(0);
        assertEquals(3.87793, fit.misfit(), 1e-4);
        assertEquals(0.0364270, fit.offsetDb(), 1e-6);
        assertEquals(0, fit.theta().length);
        SetFit wrong = fitter(pair(0, 0.1), null).fit(set(), 7, null).get(0);
        assertEquals(10.87793, wrong.misfit(), 1e-4);
    }

    /** Two points and two unknowns: the space is their difference over what 1 µm takes. */
    @Test
    void aSpaceIsKnownAsWellAsTheDifference() {
        double microns = 1000 * (Math.sqrt(2) - 1) * DB_A_HZ;
        SetFit fit = fitter(pair(0.2, 0.2 + 3 * microns), null).fit(set(SPACE), 0, null).get(0);
        assertArrayEquals(new double[] {3}, fit.theta(), 1e-4);
        assertEquals(0.2 - 3 * 1000 * DB_A_HZ, fit.offsetDb(), 1e-4);
        assertEquals(0, fit.misfit(), 1e-6);
        assertEquals(DIFFERENCE / (microns * microns), fit.covariance()[0][0], 1e-4);
    }

    /** A curve that is a sum of causes is taken apart into them, from wherever a fit starts. */
    @Test
    void causesAreFoundAgain() {
        double[] truth = {1.5, 25, 0.4};
        CauseSet set = set(SPACE, GAP, EDGE);
        SetFitter fitter = fitter(wide(hz -> 0.3 + set.db(truth, hz)), null);
        SetFit fit = fitter.fit(set, 0, null).get(0);
        assertArrayEquals(truth, fit.theta(), 0.05);
        assertEquals(0.3, fit.offsetDb(), 0.01);
        assertTrue(fit.misfit() < 0.01, "χ² " + fit.misfit());
        SetFit fewer = fitter.fit(set(GAP, SPACE), 0, null).get(0);
        SetFit again = fitter.fit(set, 0, fewer).get(0);
        assertArrayEquals(truth, again.theta(), 0.05);
        assertTrue(fewer.misfit() > 10, "χ² " + fewer.misfit());
        // from the truth it need not move
        SetFit there = new SetFit(set, truth, fit.covariance(), 0.3, 0);
        assertArrayEquals(truth, fitter.fit(set, 0, there).get(0).theta(), 1e-9);
    }

    /**
     * Two causes of one curve share what there is in any way: each is known some 30 000 times worse
     * than alone (with an addition of 1e-9 to each, 1/√(2 · 1e-9) = 22 361 times).
     */
    @Test
    void causesOfOneCurveAreKnownTogetherOnly() {
        LossCurve curve = wide(hz -> SPACE.db(2, hz));
        double alone = fitter(curve, null).fit(set(SPACE), 0, null).get(0).covariance()[0][0];
        SetFit twice = fitter(curve, null).fit(set(SPACE, SPACE), 0, null).get(0);
        assertEquals(2, twice.theta()[0] + twice.theta()[1], 1e-3);
        double times = Math.sqrt(twice.covariance()[0][0] / alone);
        assertTrue(times > 10_000 && times < 50_000, times + " times");
        assertEquals(-1, twice.covariance()[0][1] / twice.covariance()[0][0], 1e-6);
    }

    /** A set with a shelf has its curve beside the others'. */
    @Test
    void aShelfIsPartOfTheCurve() {
        CauseSet wrong = new CauseSet(List.of(SPACE), BRIGHT);
        LossCurve curve = wide(hz -> BRIGHT.db(hz) + 1.5 * DB_A_HZ * hz);
        SetFit fit = fitter(curve, null).fit(wrong, 0, null).get(0);
        assertArrayEquals(new double[] {1.5}, fit.theta(), 1e-3);
        assertEquals(0, fit.misfit(), 1e-3);
        assertTrue(fitter(curve, null).fit(set(SPACE), 0, null).get(0).misfit() > 100);
    }

    /** A curve that tells nothing leaves azimuth where the delay has it: 3 ± 0.5 µm. */
    @Test
    void theWitnessHoldsAzimuth() {
        LossCurve vague = curve(1000, hz -> 0, 1000, 2000, 4000);
        Witness witness = new Witness(3, 0.5, 0);
        SetFit fit = fitter(vague, witness).fit(set(AZIMUTH), 0, null).get(0);
        assertArrayEquals(new double[] {3}, fit.theta(), 1e-6);
        assertEquals(0.25, fit.covariance()[0][0], 1e-6);
        assertEquals(0, fit.misfit(), 1e-6);
    }

    /**
     * A gap of 4 µm and azimuth of 3 µm: 16 and 9 µm² of one aperture. The delay tells which is
     * which, and where both are in a set the fit is also tried from where it has azimuth.
     */
    @Test
    void gapAndAzimuthMayHaveChangedPlaces() {
        CauseSet both = set(AZIMUTH, GAP);
        double[] truth = {3, 16};
        SetFitter fitter = fitter(wide(hz -> both.db(truth, hz)), new Witness(3, 0.1, 0));
        List<SetFit> fits = fitter.fit(both, 0, null);
        assertEquals(2, fits.size());
        assertArrayEquals(truth, fits.get(1).theta(), 0.3);
        assertEquals(0, fits.get(1).misfit(), 0.01);
        assertEquals(1, fitter.fit(set(AZIMUTH), 0, null).size());
        assertEquals(1, fitter(wide(hz -> 0), null).fit(set(GAP), 0, null).size());
        // azimuth begins where the witness has it, whatever another fit says
        SetFit astray = new SetFit(both, new double[] {-3, 16}, new double[2][2], 0, 0);
        assertEquals(3, fitter.fit(both, 0, astray).get(0).theta()[0], 0.3);
    }

    /**
     * Where noise of 10 dB is all there is, the shelf's share is known as a slope is: 10 dB over
     * the root of the sum of squares about the mean.
     */
    @Test
    void aShelfIsKnownAsASlope() {
        double[] hz = {2000, 4000, 8000};
        LossCurve noisy = curve(10, f -> 0, hz);
        double[] s = Arrays.stream(hz).map(BRIGHT::db).toArray();
        double mean = (s[0] + s[1] + s[2]) / 3;
        double squares = 0;
        for (double v : s) {
            squares += (v - mean) * (v - mean);
        }
        SetFit shelf =
                new SetFit(new CauseSet(List.of(), BRIGHT), new double[0], new double[0][0], 0, 0);
        assertEquals(10 / Math.sqrt(squares), fitter(noisy, null).shelfDeviation(shelf), 1e-3);
        // beside a space only a bend tells it: at 2, 4 and 6 kHz s1 − 2·s2 + s3 with 1 + 4 + 1
        double[] even = {2000, 4000, 6000};
        double bend = BRIGHT.db(2000) - 2 * BRIGHT.db(4000) + BRIGHT.db(6000);
        SetFit beside =
                new SetFit(
                        new CauseSet(List.of(SPACE), BRIGHT),
                        new double[] {1},
                        new double[1][1],
                        0,
                        0);
        assertEquals(
                10 * Math.sqrt(6) / Math.abs(bend),
                fitter(curve(10, f -> 0, even), null).shelfDeviation(beside),
                1e-3);
    }

    /**
     * At 1, 2 and 3 kHz a space goes with 1, 2, 3 and a small gap with 1, 4, 9; less their means
     * −1, 0, 1 and −11, −2, 13 thirds: 8 / √(2 · 294/9) = 0.98974. More of one is less of the
     * other. Where the noise of 3 kHz is huge only two points count, which are alike whatever it
     * is.
     */
    @ParameterizedTest
    @CsvSource({"10, -0.98974", "1e7, -1"})
    void causesThatLookAlikeAreTakenForEachOther(double lastNoiseDb, double coefficient) {
        LossCurve noisy =
                new LossCurve(
                        new double[] {1000, 2000, 3000},
                        new double[3],
                        new double[] {10, 10, lastNoiseDb});
        SetFitter fitter = fitter(noisy, null);
        assertEquals(coefficient, fitter.correlation(SPACE, 1, GAP, 0), 1e-4);
        assertEquals(-1, fitter.correlation(SPACE, 1, SPACE, 3), 1e-9);
        // a layer beside a space rises
        LossTerm beyond = LossTerm.of(Cause.THICKNESS, 190.5).beyondSpacing();
        assertEquals(-coefficient, fitter.correlation(SPACE, 1, beyond, 0), 1e-4);
    }
}
