package offtape.report.measure.loss;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.List;
import java.util.function.DoubleUnaryOperator;
import java.util.stream.IntStream;
import offtape.core.unit.Quantity;
import offtape.report.result.Response;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Responses at each twenty-fourth of an octave from 250 Hz to 32 kHz. */
class LossCurveTest {

    private static final double STEP = Math.pow(2, 1.0 / 24);

    private static double[] grid(int perOctave) {
        return IntStream.rangeClosed(-2 * perOctave, 5 * perOctave)
                .mapToDouble(k -> 1000 * Math.pow(2, (double) k / perOctave))
                .toArray();
    }

    private static Response response(
            double[] hz, DoubleUnaryOperator db, DoubleUnaryOperator uncertaintyDb) {
        Quantity no = Quantity.unknown("Not asked for.");
        return new Response(
                "left",
                -20,
                hz,
                Arrays.stream(hz).map(db).toArray(),
                Arrays.stream(hz).map(uncertaintyDb).toArray(),
                no,
                no,
                no,
                0,
                0,
                List.of(),
                List.of(),
                null,
                List.of());
    }

    private static LossCurve of(DoubleUnaryOperator db, DoubleUnaryOperator uncertaintyDb) {
        return LossCurve.of(response(grid(24), db, uncertaintyDb), 30_000);
    }

    /**
     * From 500 Hz on each twelfth of an octave, but not 1 kHz; its next neighbour in its place
     * moves the others. 500 Hz · 2^(63/12) is 19 027 Hz, the last below 20 kHz but one step.
     */
    @Test
    void everySecondPointIsTakenExceptOneKilohertz() {
        LossCurve curve = of(hz -> hz / 1000, hz -> 0.1);
        assertEquals(500, curve.hz()[0], 1e-9);
        assertEquals(500 * Math.pow(STEP, 2), curve.hz()[1], 1e-6);
        assertEquals(1000 / Math.pow(STEP, 2), curve.hz()[11], 1e-6);
        assertEquals(1000 * STEP, curve.hz()[12], 1e-6);
        assertEquals(1000 * Math.pow(STEP, 103), curve.toHz(), 1e-6);
        // 12 points below 1 kHz and the odd ones of 1 to 103 above
        assertEquals(12 + 52, curve.size());
        for (int i = 0; i < curve.size(); i++) {
            assertEquals(curve.hz()[i] / 1000, curve.db()[i], 1e-12);
        }
    }

    /** The recorder's limit counts if it is below 20 kHz, and a point on it does. */
    @ParameterizedTest
    @CsvSource({"8000, 8000", "7999, 7551", "16000, 16000", "30000, 19027", "20000, 19027"})
    void itEndsWhereTheRecorderDoes(double limitHz, double lastHz) {
        LossCurve curve = LossCurve.of(response(grid(12), hz -> 0, hz -> 0.1), limitHz);
        assertEquals(lastHz, curve.toHz(), 1);
    }

    /** What is known worse than 1.5 dB or lies under −30 dB ends it, from 1 kHz on. */
    @ParameterizedTest
    @CsvSource({
        "0, 1.5, true",
        "0, 1.49, false",
        "-30, 0.1, true",
        "-29.9, 0.1, false",
    })
    void itEndsInTheNoise(double db, double uncertaintyDb, boolean ends) {
        double[] hz = grid(12);
        double lost = 8000;
        LossCurve curve =
                LossCurve.of(
                        response(
                                hz,
                                f -> Math.abs(f - lost) < 1 ? db : 0,
                                f -> Math.abs(f - lost) < 1 ? uncertaintyDb : 0.1),
                        30_000);
        assertEquals(ends ? 7551 : 19_027, curve.toHz(), 1);
    }

    /** Below 1 kHz a point that hum spoils is passed over. */
    @Test
    void aBadPointOfTheLowMidsIsPassedOver() {
        DoubleUnaryOperator doubt = f -> f > 590 && f < 600 ? 2 : 0.1;
        LossCurve curve = LossCurve.of(response(grid(12), f -> 0, doubt), 30_000);
        assertTrue(Arrays.stream(curve.hz()).noneMatch(f -> f > 590 && f < 600));
        assertEquals(12 + 51 - 1, curve.size());
    }

    /** Sixteen points up to 4 kHz. */
    @Test
    void itMustReachFourKilohertz() {
        double[] hz = grid(12);
        assertNull(LossCurve.of(response(hz, f -> 0, f -> 0.1), 3999));
        assertNotNull(LossCurve.of(response(hz, f -> 0, f -> 0.1), 4000.001));
        double[] few = IntStream.range(0, 16).mapToDouble(k -> 1100 + 400 * k).toArray();
        assertEquals(16, LossCurve.of(response(few, f -> 0, f -> 0.1), 30_000).size());
        double[] fewer = Arrays.copyOf(few, 15);
        assertNull(LossCurve.of(response(fewer, f -> 0, f -> 0.1), 30_000));
    }

    /**
     * A value known within 0.2 dB (k = 2) has a variance of 0.01 dB², less 0.0001 of what filters
     * leave. Where third differences are none at all, nearly all of it is common (19 of 20 parts,
     * the last of those that are tried).
     */
    @Test
    void whatIsCommonToAllIsNoNoise() {
        LossCurve level = of(hz -> 0, hz -> 0.2);
        double[] wanted = new double[level.size()];
        Arrays.fill(wanted, Math.sqrt(0.0099 / 20));
        assertArrayEquals(wanted, level.noiseDb(), 1e-9);
    }

    /**
     * Values that go up and down by a have third differences of 8·a; of noise of the variance v
     * their square is 20·v, so v is likeliest at 64·a²/20.
     */
    @ParameterizedTest
    @CsvSource({"1", "0.5", "0.25", "1.5"})
    void thirdDifferencesTellWhatIsCommon(double share) {
        double variance = 0.0099 * share;
        double a = Math.sqrt(20 * variance / 64);
        double[] hz = grid(12);
        // of the grid without 1 kHz each point has the other sign than the one before it
        DoubleUnaryOperator db =
                f -> {
                    long k = Math.round(12 * Math.log(f / 1000) / Math.log(2));
                    return (k > 0 ? k + 1 : k) % 2 == 0 ? a : -a;
                };
        LossCurve curve = LossCurve.of(response(hz, db, f -> 0.2), 30_000);
        double wanted = Math.sqrt(Math.min(1, share) * 0.0099);
        for (double noise : curve.noiseDb()) {
            assertEquals(wanted, noise, 1e-9);
        }
    }

    /** What is hardly known to be noisy is taken for 0.003 dB. */
    @Test
    void noCurveIsExact() {
        for (double doubt : new double[] {0, 0.02, 0.0201}) {
            LossCurve curve = of(hz -> 0, hz -> doubt);
            assertEquals(0.003, Arrays.stream(curve.noiseDb()).max().orElseThrow(), 1e-12);
        }
    }

    /**
     * One point of twenty an octave known within 2 · √(0.3 + 0.0001) dB has a variance of 0.3 dB²;
     * it counts for those within a third of an octave, six steps to either side, of which each has
     * 13 such neighbours. What lies within that of 1 kHz has 12, for 1 kHz itself does not count.
     */
    @ParameterizedTest
    @CsvSource({"40", "4", "-3"})
    void neighboursShareTheirNoise(int noisy) {
        double doubt = 2 * Math.sqrt(0.3 + 0.0001);
        double[] hz = grid(20);
        double at = hz[40 + noisy];
        LossCurve curve = LossCurve.of(response(hz, f -> 0, f -> f == at ? doubt : 0.02), 30_000);
        for (int i = 0; i < curve.size(); i++) {
            double steps = 20 * Math.log(curve.hz()[i] / 1000) / Math.log(2);
            double count = Math.abs(steps) < 6.5 ? 12 : 13;
            double wanted = Math.abs(steps - noisy) < 6.5 ? Math.sqrt(0.3 / count) : 0.003;
            assertEquals(wanted, curve.noiseDb()[i], 1e-9);
        }
    }
}
