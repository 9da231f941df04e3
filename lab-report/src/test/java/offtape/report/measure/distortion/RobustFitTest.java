package offtape.report.measure.distortion;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNull;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Which steps are left out of a curve. */
class RobustFitTest {

    private record Point(double place, double value, double deviation) {}

    private static RobustFit fit(List<Point> points) {
        return RobustFit.of(
                points, Point::place, Point::value, Point::deviation, SmoothCurve.STIFFNESS);
    }

    /** Values of 0 ± 0.01 dB every 2 dB, but for some that are off by so much and known to 1 dB. */
    private static List<Point> flat(int count, double off, int... which) {
        List<Point> points = flat(count, 0.01, 0, which);
        for (int at : which) {
            points.set(at, new Point(2 * at, off, 1));
        }
        return points;
    }

    /** Values of 0 every 2 dB, all equally well known, but for some that are off by so much. */
    private static List<Point> flat(int count, double deviation, double off, int... which) {
        List<Point> points = new ArrayList<>();
        for (int i = 0; i < count; i++) {
            int at = i;
            boolean strays = IntStream.of(which).anyMatch(w -> w == at);
            points.add(new Point(2 * i, strays ? off : 0, deviation));
        }
        return points;
    }

    /** A curve needs two places half a decibel apart. */
    @ParameterizedTest
    @CsvSource({"0.5, true", "0.49, false"})
    void stepsCloseTogetherMakeNoCurve(double span, boolean made) {
        RobustFit found = fit(List.of(new Point(1, 0, 0.1), new Point(1 + span, 1, 0.1)));
        assertEquals(made, found != null);
        assertNull(fit(List.of(new Point(1, 0, 0.1))));
        assertNull(fit(List.of()));
    }

    /** What is known to a ten-thousandth may all the same stray by 0.15 dB before it stands off. */
    @ParameterizedTest
    @CsvSource({"0.16, true", "0.14, false", "-0.16, true", "-0.14, false"})
    void smallStraysStay(double off, boolean out) {
        RobustFit found = fit(flat(21, 1e-4, off, 10));
        assertEquals(out ? List.of(10) : List.of(), found.strays());
        assertEquals(out ? 0 : off, found.curve().at(20), 1e-3);
    }

    /** Of five steps one may be left out, of ten two, of fourteen still two. */
    @ParameterizedTest
    @CsvSource({"14, 2", "15, 3", "19, 3"})
    void onlySomeMayBeLeftOut(int count, int most) {
        assertEquals(most, fit(flat(count, 20, 2, 7, 11)).strays().size());
    }

    @Test
    void ofFourNoneIsLeftOut() {
        assertEquals(List.of(), fit(flat(4, 20, 1)).strays());
        assertEquals(List.of(2), fit(flat(5, 20, 2)).strays());
    }

    /** The worst goes first, and those left out are told in order of place. */
    @Test
    void straysAreTheNumbersGiven() {
        List<Point> points = flat(20, 20, 15);
        points.set(5, new Point(10, 15, 1));
        assertEquals(List.of(5, 15), fit(points).strays());
    }

    /**
     * Where the others scatter more than their noise lets expect, here ten times, a step stands off
     * by five deviations of that scatter: 0.4 dB is four of them and stays though it is forty
     * deviations of the noise, 1.2 dB goes.
     */
    @ParameterizedTest
    @CsvSource({"0.4, false", "1.2, true"})
    void theScatterOfTheOthersCounts(double off, boolean out) {
        Random random = new Random(7);
        List<Point> points = new ArrayList<>();
        for (int i = 0; i < 41; i++) {
            points.add(new Point(0.5 * i, 0.1 * random.nextGaussian(), 0.01));
        }
        points.set(20, new Point(10, off, 0.01));
        List<Integer> strays = fit(points).strays();
        assertEquals(out, strays.contains(20));
        assertFalse(strays.stream().anyMatch(i -> i != 20));
    }

    /**
     * One step a decibel off among few that are known well, at any place but the ends: it pulls the
     * curve with it, so that its neighbours stray too until it is gone.
     */
    @ParameterizedTest
    @CsvSource({"8, 1", "8, 3", "8, 6", "9, 4", "11, 5", "11, 9"})
    void ofFewStepsTheOneThatStraysIsFound(int count, int which) {
        assertEquals(List.of(which), fit(flat(count, 0.003, -1.0, which)).strays());
    }

    /** A tape that saturates, in steps of 3 dB: tanh bends by no more than 0.12 dB/dB². */
    @ParameterizedTest
    @CsvSource({"8", "10", "12"})
    void saturationIsNoStray(int count) {
        List<Point> points = new ArrayList<>();
        for (int i = 0; i < count; i++) {
            points.add(new Point(3 * i - 12, tanhGainDb(3 * i - 12), 0.003));
        }
        assertEquals(List.of(), fit(points).strays());
    }

    /** Gain of the fundamental of tanh(a·sin φ)/a, a being 1 at 6 dB; the mean over a period. */
    private static double tanhGainDb(double db) {
        double a = Math.pow(10, (db - 6) / 20);
        double sum =
                IntStream.range(0, 256)
                        .mapToDouble(i -> Math.sin(2 * Math.PI * i / 256))
                        .map(s -> Math.tanh(a * s) * s)
                        .sum();
        return 20 * Math.log10(sum / 128 / a);
    }

    /** Noise of 0.2 dB that is stated as such: what strays by three of its deviations stays. */
    @Test
    void noiseThatIsStatedIsNoStray() {
        assertEquals(List.of(), fit(flat(21, 0.2, 0.6, 10)).strays());
    }

    /** Without the only step elsewhere there is no curve to hold it against: it stays. */
    @ParameterizedTest
    @ValueSource(ints = {4, 5, 9, 12})
    void theOnlyStepElsewhereStays(int together) {
        List<Point> points = new ArrayList<>();
        for (int i = 0; i < together; i++) {
            points.add(new Point(0, 0.001 * (i % 2), 0.003));
        }
        points.add(new Point(6, -2, 0.003));
        RobustFit found = fit(points);
        assertEquals(List.of(), found.strays());
        assertEquals(-2, found.curve().at(6), 0.01);
        assertEquals(0, found.curve().at(0), 0.01);
    }

    /** Several steps at one place, in any number, are one place for the curve. */
    @Test
    void stepsAtOnePlaceShareIt() {
        List<Point> points = new ArrayList<>();
        for (double place : new double[] {0, 0, 0, 3, 3, 6, 6, 6}) {
            points.add(new Point(place, 2 * place, 0.01));
        }
        RobustFit found = fit(points);
        assertEquals(6, found.curve().at(3), 0.01);
        assertEquals(10, found.curve().at(5), 0.01);
        assertEquals(List.of(), found.strays());
    }
}
