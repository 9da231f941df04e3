package offtape.report.measure.noise;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Arrays;
import java.util.stream.DoubleStream;
import offtape.report.result.HumLine;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Lines in a floor whose power is known exactly: cosines on every second line of the spectrum.
 * Under Hann's window the lines between have half the amplitude of each neighbour, so that all have
 * the same power, ln 2 of what is told of noise whose median that would be. Three hertz about each
 * line of the mains are left empty, where it stands alone; noise is read from 4 Hz on.
 *
 * <p>In T seconds noise exceeds ln(24·T/0.001) times its mean at one of 2·2 Hz·(1 + 2 + 3)·T places
 * once in a thousand silences: 10.779 times in 2 s.
 */
class HumByHandTest {

    private static final int RATE = 2000;
    private static final double NOISE = 1e-6;
    private static final double REFERENCE = 0.01;
    private static final double THRESHOLD = 10.779;

    /** A line that is so many times the noise. */
    private record Sine(double hz, double ratio) {}

    private static Sine sine(double hz, double ratio) {
        return new Sine(hz, ratio);
    }

    /** Cosines of a noise from one frequency to another, by the sum of a geometric series. */
    private static void addFloor(double[] x, double fromHz, double toHz, double noise) {
        double apart = 2.0 * RATE / x.length;
        double first = Math.round(fromHz / apart);
        double last = Math.round(toHz / apart);
        double peak = Math.sqrt(2 * Math.log(2) * noise);
        for (int i = 0; i < x.length; i++) {
            double turn = 2 * Math.PI * (2 * i % x.length) / x.length;
            double ends = Math.sin((last + 0.5) * turn) - Math.sin((first - 0.5) * turn);
            double sum = turn == 0 ? last - first + 1 : ends / (2 * Math.sin(turn / 2));
            x[i] += peak * sum;
        }
    }

    private static void add(double[] x, double hz, double peak) {
        for (int i = 0; i < x.length; i++) {
            x[i] += peak * Math.cos(2 * Math.PI * hz * i / RATE);
        }
    }

    private static double[] silence(int seconds, Sine... lines) {
        double[] x = new double[seconds * RATE];
        addFloor(x, 20, 760, NOISE);
        double apart = 2.0 / seconds;
        for (double hz = 20; hz <= 760; hz += apart) {
            double at = hz;
            if (Arrays.stream(lines).anyMatch(l -> Math.abs(l.hz() - at) < 3)) {
                add(x, hz, -Math.sqrt(2 * Math.log(2) * NOISE));
            }
        }
        for (Sine line : lines) {
            add(x, line.hz(), Math.sqrt(2 * line.ratio() * NOISE));
        }
        return x;
    }

    private static Hum find(double[] x) {
        return HumSearch.find(x, RATE, REFERENCE);
    }

    private static void assertLines(double[] hz, Hum hum) {
        assertArrayEquals(
                hz, hum.lines().stream().mapToDouble(HumLine::frequencyHz).toArray(), 0.05);
    }

    private static double[] multiples(double mainsHz, int... orders) {
        return Arrays.stream(orders).asDoubleStream().map(m -> m * mainsHz).toArray();
    }

    /** One line of low order is enough if it exceeds the threshold, which is told as a level. */
    @ParameterizedTest
    @CsvSource({
        "50, 1.02, true",
        "50, 0.98, false",
        "120, 1.02, true",
        "120, 0.98, false",
        "150, 1.02, true",
        "150, 0.98, false",
        "200, 100, false"
    })
    void aLineMustExceedTheThreshold(double hz, double share, boolean found) {
        Hum hum = find(silence(2, sine(hz, share * THRESHOLD)));
        assertLines(found ? new double[] {hz} : new double[0], hum);
        double level = 10 * Math.log10(THRESHOLD * NOISE / REFERENCE);
        assertEquals(level, hum.threshold().value(), 0.02);
    }

    /** The noisiest of the six low orders tells it: 180 Hz counts, 240 Hz does not. */
    @ParameterizedTest
    @CsvSource({"180, 4", "240, 1"})
    void theThresholdIsThatOfTheNoisiestOrder(double hz, double times) {
        double[] x = silence(2);
        addFloor(x, hz - 13, hz + 13, NOISE);
        double level = 10 * Math.log10(times * THRESHOLD * NOISE / REFERENCE);
        assertEquals(level, find(x).threshold().value(), 0.02);
    }

    /** Lines up to the twelfth order are told, however many. */
    @Test
    void twelveOrdersAreTold() {
        int[] orders = {1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12};
        double[] hz = multiples(50, orders);
        Sine[] lines =
                DoubleStream.concat(DoubleStream.of(hz), DoubleStream.of(650))
                        .mapToObj(f -> sine(f, 100))
                        .toArray(Sine[]::new);
        assertLines(hz, find(silence(2, lines)));
        assertLines(multiples(60, 2, 12), find(silence(2, sine(120, 100), sine(720, 100))));
    }

    /**
     * Off the usual frequencies three lines must be plain, ten times the threshold: 107.8 times the
     * noise.
     */
    @ParameterizedTest
    @CsvSource({"111, true", "104, false"})
    void plainLinesAreTenTimesOver(double ratio, boolean found) {
        double[] hz = multiples(49.5, 1, 3, 7);
        double[] x = silence(2, sine(hz[0], 1000), sine(hz[1], 1000), sine(hz[2], ratio));
        assertLines(found ? hz : new double[0], find(x));
    }

    /**
     * Less the noise, a line of R times the noise has R − 1, known to √(2·(R − 1) + 1) of it, one
     * standard deviation.
     */
    @ParameterizedTest
    @CsvSource({"12", "100", "900"})
    void aLineIsToldLessTheNoise(double ratio) {
        HumLine line = find(silence(2, sine(50, ratio))).lines().get(0);
        double power = ratio - 1;
        assertEquals(10 * Math.log10(power * NOISE / REFERENCE), line.levelDb(), 0.01);
        double doubt = 20 * Math.log10(1 + Math.sqrt(2 * power + 1) / power);
        assertEquals(Math.hypot(doubt, 0.02), line.uncertaintyDb(), 0.005);
    }

    /**
     * One of more than a thousand times is told with what lies up to 2½ lines beside it, as where
     * mains wander: 4 % in quadrature at one line, 0.5 Hz, are 0.17 dB. In fainter ones that is
     * noise, but for the quarter that Hann's window brings to the line's own place.
     */
    @ParameterizedTest
    @CsvSource({"100000, 1.04", "900, 1.01"})
    void aClearLineIsToldWithWhatLiesBeside(double ratio, double times) {
        double[] x = silence(2, sine(50, ratio));
        for (int i = 0; i < x.length; i++) {
            double peak = Math.sqrt(2 * 0.04 * ratio * NOISE);
            x[i] += peak * Math.sin(2 * Math.PI * 50.5 * i / RATE);
        }
        double level = 10 * Math.log10(times * ratio * NOISE / REFERENCE);
        assertEquals(level, find(x).lines().get(0).levelDb(), 0.02);
    }

    /**
     * Each line tells the frequency as well as its power allows: R = 10⁵ at 50 Hz counts 10⁵ times,
     * R = 30 at the twelfth order 30·12² times. So if the latter lies 0.15 Hz off its place, the
     * mains are 4320/104 320 of 0.15/12 Hz off 50 Hz, 0.0005 Hz. Were both as good as each other,
     * or the logarithm counted, it were 144/145 of it, 0.0124 Hz, five times what is stated. Power
     * counts over the noise beside it: a hundred times as much of both changes nothing.
     */
    @ParameterizedTest
    @CsvSource({
        "600.15, 1, 50.0005",
        "599.85, 1, 49.9995",
        "600.15, 100, 50.0005",
        "599.85, 100, 49.9995"
    })
    void theLoudestLineTellsTheFrequency(double twelfthHz, double noise, double mainsHz) {
        double[] x = silence(2, sine(50, 1e5), sine(twelfthHz, 30 * noise));
        double more = Math.pow(Math.sqrt(noise) - 1, 2) * NOISE;
        addFloor(x, 580, 597, more);
        addFloor(x, 603, 620, more);
        Hum hum = find(x);
        assertEquals(2, hum.lines().size());
        assertEquals(mainsHz, hum.mainsFrequency().value(), 0.0009);
    }

    /**
     * Known to 2·1.5·√(3/R)/(π·T·m) from a line of order m, and to 50·10⁻⁶ by the recorder's clock:
     * of R = 10⁶ at order 1 0.00083 Hz beside 0.0025; of 100 at order 3 0.0276; of both, the
     * reciprocal squares are added.
     */
    @Test
    void theFrequencyIsAsSureAsItsLines() {
        double loud = 2 * 1.5 * Math.sqrt(3e-6) / (Math.PI * 2);
        double third = 2 * 1.5 * Math.sqrt(3e-2) / (Math.PI * 2 * 3);
        double clock = 50e-6 * 50;
        assertEquals(
                Math.hypot(loud, clock),
                find(silence(2, sine(50, 1e6))).mainsFrequency().uncertainty(),
                2e-5);
        assertEquals(
                Math.hypot(third, clock),
                find(silence(2, sine(150, 100))).mainsFrequency().uncertainty(),
                2e-4);
        double first = 2 * 1.5 * Math.sqrt(3e-2) / (Math.PI * 2);
        double both = 1 / Math.sqrt(1 / (first * first) + 1 / (third * third));
        assertEquals(
                Math.hypot(both, clock),
                find(silence(2, sine(50, 100), sine(150, 100))).mainsFrequency().uncertainty(),
                2e-4);
    }

    /** A loud line that is no hum, twice 49.4 Hz alone, does not hide fainter hum. */
    @Test
    void aLouderLineHidesNoHum() {
        assertLines(new double[] {150}, find(silence(2, sine(98.8, 1e4), sine(150, 60))));
    }

    /** In 4 s the fit looks an eighth of a hertz around, not at 154.5 Hz, which are 3 · 51.5 Hz. */
    @Test
    void theFitStaysNear() {
        Hum hum = find(silence(4, sine(150, 100), sine(154.5, 400)));
        assertLines(new double[] {150}, hum);
        assertEquals(50, hum.mainsFrequency().value(), 0.01);
    }

    /** In 10 s a line is 0.1 Hz wide, and the search steps over none. */
    @Test
    void longSilencesAreSearchedFinely() {
        assertLines(new double[] {150.125}, find(silence(10, sine(150.125, 40))));
    }
}
