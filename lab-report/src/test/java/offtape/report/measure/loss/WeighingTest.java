package offtape.report.measure.loss;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import java.util.function.DoubleUnaryOperator;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class WeighingTest {

    private static final LossTerm SPACE = LossTerm.of(Cause.SPACING, 190.5);
    private static final LossTerm LAYER = LossTerm.of(Cause.THICKNESS, 190.5);
    private static final LossTerm APERTURE = LossTerm.apertures(1, 190.5);
    private static final LossTerm EDGE = LossTerm.rollOff(2, 0);

    private static SetFit fit(double misfit, double theta, LossTerm... terms) {
        double[] all = new double[terms.length];
        double[][] c = new double[terms.length][terms.length];
        for (int i = 0; i < all.length; i++) {
            all[i] = theta;
            c[i][i] = 0.25;
        }
        return new SetFit(new CauseSet(List.of(terms), null), all, c, 0, misfit);
    }

    private static Weighing of(SetFit... fits) {
        return new Weighing(null, List.of(fits), 10, 0, null, null);
    }

    private static List<List<Cause>> simplest(SetFit... fits) {
        return of(fits).simplest().stream().map(f -> f.set().causes()).toList();
    }

    /** Within a χ² of 6 of the best a set explains the curve as well. */
    @Test
    void setsWithinSixExplainTheCurveAsWell() {
        SetFit best = fit(10, 1, SPACE);
        SetFit near = fit(16, 1, LAYER);
        SetFit far = fit(16.01, 1, EDGE);
        SetFit absent = fit(9, -1, APERTURE);
        assertEquals(List.of(best, near), of(best, near, far, absent).possible().toList());
    }

    /** Fewest causes first; a set that holds all causes of another is not told. */
    @Test
    void theSimplestSetsAreTold() {
        SetFit space = fit(15, 1, SPACE);
        SetFit more = fit(10, 1, SPACE, EDGE);
        SetFit other = fit(11, 1, APERTURE, EDGE);
        SetFit worse = fit(12, 1, APERTURE, EDGE);
        assertEquals(
                List.of(List.of(Cause.SPACING), List.of(Cause.APERTURE, Cause.UPPER_EDGE)),
                simplest(worse, more, other, space));
        assertEquals(11, of(worse, more, other, space).simplest().get(1).misfit());
        SetFit none = fit(16, 0);
        assertEquals(List.of(List.of()), simplest(more, none, space));
    }

    /** A space is more usual than a layer, by a χ² of 2. */
    @ParameterizedTest
    @CsvSource({"11.9, SPACING", "12.1, THICKNESS"})
    void aSpaceComesBeforeALayer(double misfit, Cause first) {
        SetFit space = fit(misfit, 1, SPACE);
        SetFit layer = fit(10, 1, LAYER);
        assertEquals(List.of(first), simplest(space, layer).get(0));
        assertEquals(List.of(first), simplest(layer, space).get(0));
    }

    /** Space and layer of one set stand for themselves: 5 and 4 are 4 µm beside a layer of 2. */
    @Test
    void theFiguresOfASetStandForThemselves() {
        SetFit both =
                new SetFit(
                        new CauseSet(List.of(SPACE, LAYER.beyondSpacing()), null),
                        new double[] {5, 4},
                        new double[2][2],
                        0,
                        10);
        assertEquals(4, of(both).simplest().get(0).theta()[0], 1e-12);
        assertEquals(2, of(both).simplest().get(0).theta()[1], 1e-12);
    }

    /** √6 deviations of 0.5 µm to either side of 2 µm. */
    @Test
    void aCauseReachesAsFarAsSix() {
        CauseRange range = of(fit(10, 2, SPACE), fit(30, 0)).range(Cause.SPACING);
        assertEquals(2 - 0.5 * Math.sqrt(6), range.low(), 1e-9);
        assertEquals(2 + 0.5 * Math.sqrt(6), range.high(), 1e-9);
        assertNull(of(fit(10, 2, SPACE)).range(Cause.GAP));
    }

    /** Twelve points an octave from 500 Hz to 16 kHz, noise of 0.02 dB. */
    private static LossCurve curve(DoubleUnaryOperator db) {
        double[] hz =
                IntStream.rangeClosed(-12, 48)
                        .mapToDouble(k -> 1000 * Math.pow(2, k / 12.0))
                        .toArray();
        double[] noise = new double[hz.length];
        Arrays.fill(noise, 0.02);
        return new LossCurve(hz, Arrays.stream(hz).map(db).toArray(), noise);
    }

    private static Weighing weighed(DoubleUnaryOperator db) {
        return Weighing.of(curve(db), 190.5, 48_000, null).orElseThrow();
    }

    /** 3 µm of space and nothing else: no set without space or layer comes near. */
    @Test
    void aCurveOfOneCauseIsExplainedByIt() {
        Weighing space = weighed(hz -> 0.1 + SPACE.db(3, hz));
        assertTrue(space.least() >= 0 && space.least() < 0.5, "χ² " + space.least());
        assertEquals(0, space.unexplainedDb());
        assertEquals(List.of(Cause.SPACING), space.simplest().get(0).set().causes());
        assertEquals(3, space.simplest().get(0).theta()[0], 0.01);
        assertTrue(
                space.possible()
                        .allMatch(
                                f ->
                                        f.set().index(Cause.SPACING) >= 0
                                                || f.set().index(Cause.THICKNESS) >= 0));
        CauseRange range = space.range(Cause.SPACING);
        assertTrue(range.low() <= 3 && range.high() >= 3 && range.high() < 4, range.toString());
        // one aperture or two and four kinds of amplifier can each be left out
        long alone =
                space.fits().stream()
                        .filter(f -> f.set().causes().equals(List.of(Cause.SPACING)))
                        .count();
        assertEquals(2 * 4, alone);
    }

    /**
     * A wave of 0.3 dB that no cause makes, 0.21 dB rms: so much unevenness is taken in that what
     * is left is what chance makes, as many squares as there are points less what was fitted.
     */
    @Test
    void whatNoCauseExplainsIsTakenForUnevenness() {
        Weighing uneven = weighed(hz -> SPACE.db(3, hz) + 0.3 * Math.sin(9 * Math.log(hz)));
        assertTrue(
                uneven.unexplainedDb() > 0.1 && uneven.unexplainedDb() < 0.4,
                "unexplained " + uneven.unexplainedDb());
        double freedom = 61 - 6;
        assertTrue(
                uneven.least() < freedom + 3 * Math.sqrt(2 * freedom)
                        && uneven.least() > freedom - 3 * Math.sqrt(2 * freedom),
                "χ² " + uneven.least());
    }

    /**
     * χ² of n points less n fitted values is n on average and scatters by √(2n): an unevenness is
     * taken in from three of those on, 55 + 3 · 10.5 = 87 with six fitted values of 61 to 59 + 3 ·
     * 10.9 = 92 with two, and so much of it that n is left. χ² goes with the square of what is
     * over.
     */
    @Test
    void chanceIsNoUnevenness() {
        DoubleUnaryOperator wave = hz -> 1e-3 * Math.sin(9 * Math.log(hz));
        double unit = weighed(hz -> SPACE.db(3, hz) + wave.applyAsDouble(hz)).least();
        for (double wanted : new double[] {80, 98}) {
            double times = Math.sqrt(wanted / unit);
            Weighing found = weighed(hz -> SPACE.db(3, hz) + times * wave.applyAsDouble(hz));
            assertEquals(wanted > 92, found.unexplainedDb() > 0, "χ² " + found.least());
            // points less what was fitted: a whole number
            double left = wanted > 92 ? Math.rint(found.least()) : wanted;
            assertEquals(left, found.least(), 0.1);
            assertTrue(wanted < 92 || left >= 61 - 6 && left <= 61 - 2, "χ² " + left);
        }
    }

    /** A family's sets are thinned as long as they come near the best that is known. */
    @Test
    void setsThatMissAreNotThinnedFurther() {
        LossCurve curve = curve(hz -> SPACE.db(3, hz));
        SetFitter fitter = new SetFitter(curve, Covariance.of(curve, 0), List.of(), null);
        Family family =
                Family.all(190.5, 48_000, null).stream()
                        .filter(f -> f.shelf() == null && f.isUsual())
                        .findFirst()
                        .orElseThrow();
        FamilyFits fits = new FamilyFits(family, fitter);
        List<SetFit> all = fits.parts(Double.POSITIVE_INFINITY);
        assertTrue(fits.shelf().isEmpty());
        assertTrue(all.stream().allMatch(f -> f.misfit() >= fits.bound()));
        assertTrue(all.stream().anyMatch(f -> f.set().causes().equals(List.of(Cause.SPACING))));
        assertTrue(all.stream().noneMatch(f -> f.set().causes().isEmpty()));
        assertEquals(List.of(), fits.parts(fits.bound() - 0.1));
        // no set of the family fits better than all causes together, give or take a valley
        double whole =
                all.stream()
                        .filter(f -> f.set().terms().size() == 4)
                        .mapToDouble(SetFit::misfit)
                        .min()
                        .orElseThrow();
        assertEquals(whole - 3, fits.bound(), 0.5);
        assertTrue(all.stream().noneMatch(f -> f.misfit() < whole - 3));
        for (SetFit thinned : all) {
            List<Cause> more = new ArrayList<>(all.get(0).set().causes());
            more.removeAll(thinned.set().causes());
            for (Cause cause : more) {
                assertTrue(
                        all.stream()
                                .filter(f -> isThinned(f, thinned, cause))
                                .anyMatch(f -> f.misfit() - 3 <= whole + 6),
                        thinned.set().causes() + " is part of what misses with " + cause);
            }
        }
    }

    /** Whether a fit without one of its causes is another one. */
    private static boolean isThinned(SetFit fit, SetFit other, Cause cause) {
        Set<Cause> causes = EnumSet.of(cause);
        causes.addAll(other.set().causes());
        return causes.equals(Set.copyOf(fit.set().causes()));
    }
}
