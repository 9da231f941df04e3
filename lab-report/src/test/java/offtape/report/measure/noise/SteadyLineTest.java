package offtape.report.measure.noise;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.function.DoubleUnaryOperator;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Lines near 100 Hz in stretches of 4 s, whose lines lie a quarter of a hertz apart. */
class SteadyLineTest {

    private static final int RATE = 1024;
    private static final double HZ = 100;

    private static boolean steady(double seconds, double noise, DoubleUnaryOperator sound) {
        double[] x = new double[(int) (seconds * RATE)];
        for (int i = 0; i < x.length; i++) {
            x[i] = sound.applyAsDouble((double) i / RATE);
        }
        return SteadyLine.is(new LineSpectrum(x, RATE), HZ, noise);
    }

    private static double sine(double turns) {
        return 0.2 * Math.sin(2 * Math.PI * turns);
    }

    /**
     * A steady sine is, if it lies within 0.6 lines of its place, however much noise there is in
     * which it may seem wider.
     */
    @ParameterizedTest
    @CsvSource({
        "0, 0, true",
        "0.45, 0, true",
        "-0.45, 0, true",
        "0.8, 0, false",
        "-0.8, 0, false",
        "0.45, 4e-4, true",
        "0.8, 4e-4, false"
    })
    void aLineLiesInItsPlace(double lines, double noise, boolean steady) {
        assertEquals(steady, steady(4, noise, t -> sine((HZ + lines * 0.25) * t)));
    }

    /**
     * In one second lines of a times its power two lines to either side, of each of which 0.8605
     * lie at the 21 points, a quarter of a line apart, up to 2½ lines of it: 1 + 1.721·a less 3.333
     * times the noise of a twentieth may be 1.4 and 4·√(0.1 + 0.0083) = 1.317, so that a is 1.094
     * at most.
     */
    @ParameterizedTest
    @CsvSource({"1.06, true", "1.13, false"})
    void aLineInNoiseMaySeemWider(double times, boolean steady) {
        double peak = 0.2 * Math.sqrt(times);
        assertEquals(
                steady,
                steady(
                        1,
                        0.001,
                        t ->
                                sine(HZ * t)
                                        + peak * Math.cos(2 * Math.PI * (HZ - 2) * t)
                                        + peak * Math.cos(2 * Math.PI * (HZ + 2) * t)));
    }

    /**
     * One block of eight may have eight times the mean m = 0.0025 where noise allows for 6·m: of n,
     * a block holds 8·n, and 4·√(2·m·8n + (8n)²) is 6·m at 8n = 0.803·m, n = 2.5·10⁻⁴.
     */
    @ParameterizedTest
    @CsvSource({"2.4e-4, false", "2.6e-4, true"})
    void aBlockInNoiseMayBeLouder(double noise, boolean steady) {
        assertEquals(steady, steady(4, noise, t -> t >= 1.5 && t < 2 ? sine(HZ * t) : 0));
    }

    /** Half a second apart it must be seen twice. */
    @ParameterizedTest
    @CsvSource({"0.98, false", "1, true"})
    void aLineIsSeenTwice(double seconds, boolean steady) {
        assertEquals(steady, steady(seconds, 0, t -> sine(HZ * t)));
    }

    /**
     * A line that is weaker in its second half: of powers 1 and a² each must lie within a factor of
     * 2 of the mean (1 + a²)/2, so a² over a third. With noise, of which a block holds eight times
     * as much, it may stray by four deviations more: of powers 0.02 and 0.0056 the latter lies
     * 0.0008 under half the mean, which 4·√(2·0.0128·8n) reaches at n = 2·10⁻⁷.
     */
    @ParameterizedTest
    @CsvSource({
        "0.62, 0, true",
        "0.53, 0, false",
        "0.53, 1e-5, true",
        "0.53, 1e-7, false",
        "0.53, 4e-7, true"
    })
    void aLineHoldsItsPower(double second, double noise, boolean steady) {
        assertEquals(steady, steady(4, noise, t -> (t < 2 ? 1 : second) * sine(HZ * t)));
    }

    /** One that sounds for an eighth of the time only: eight times its mean. */
    @ParameterizedTest
    @CsvSource({"0, true", "1, false"})
    void aLineDoesNotSwell(double swell, boolean steady) {
        assertEquals(steady, steady(4, 0, t -> (t >= 1.5 && t < 2 ? 1 + swell : 1) * sine(HZ * t)));
    }

    /**
     * A frequency that trembles by a share of itself, rms, five times a second: 0.6 % is the limit.
     * A phase of (√2·share·hz/5)·sin(2π·5t) has that deviation.
     */
    @ParameterizedTest
    @CsvSource({
        "0.57, 5, true",
        "0.63, 5, false",
        "0.57, 7, true",
        "0.63, 7, false",
        "0.9, 9, true"
    })
    void aLineDoesNotTremble(double percent, double rateHz, boolean steady) {
        double turns = Math.sqrt(2) * percent / 100 * HZ / rateHz / (2 * Math.PI);
        assertEquals(
                steady,
                steady(4, 0, t -> sine(HZ * t + turns * Math.sin(2 * Math.PI * rateHz * t))));
    }

    /**
     * Trembling that is no more than noise may bring about does not count: of 0.65 % the squares
     * are 0.00845 where 0.0072 is the limit. Noise n takes 2n·Σd²/1.5 = 910n off, the distances d
     * being every quarter from 0.75 to 8 Hz, and four deviations 4·2n·√Σd⁴ = 1295n: n = 5.7·10⁻⁷.
     */
    @ParameterizedTest
    @CsvSource({"1e-7, false", "4e-7, false", "8e-7, true", "1e-4, true"})
    void noiseMaySeemToTremble(double noise, boolean steady) {
        double turns = Math.sqrt(2) * 0.0065 * HZ / 5 / (2 * Math.PI);
        assertEquals(
                steady,
                steady(4, noise, t -> sine(HZ * t + turns * Math.sin(2 * Math.PI * 5 * t))));
    }

    /** Another line on one side is no trembling. */
    @ParameterizedTest
    @CsvSource({"105", "95", "106.5"})
    void anotherLineBesideIsNone(double other) {
        assertEquals(true, steady(4, 0, t -> sine(HZ * t) + 0.5 * sine(other * t)));
    }

    /** Drift by eight lines of the spectrum spreads the line over them. */
    @ParameterizedTest
    @CsvSource({"0.5, true", "8, false"})
    void aLineDoesNotDrift(double lines, boolean steady) {
        double slope = lines * 0.25 / 4;
        assertEquals(steady, steady(4, 0, t -> sine(HZ * t + slope * (t - 2) * (t - 2) / 2)));
    }
}
