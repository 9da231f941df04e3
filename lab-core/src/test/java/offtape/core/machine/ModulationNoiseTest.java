package offtape.core.machine;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertThrows;

import offtape.core.fault.UnusableInputException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class ModulationNoiseTest {

    private static final int RATE_HZ = 48_000;

    /** The period of 2^18 samples of the fluctuation. */
    private static final double PERIOD_SECONDS = 262_144.0 / RATE_HZ;

    /**
     * A steady value of 1 cannot pass a tape, but a tone can: over a whole period of the
     * fluctuation the mean square of A·(1 + m)·sin is A²/2·(1 + m²), as the products of m, its
     * square and the doubled tone average to nothing but for some 1e-4. For −30 dB that is 0.1 % of
     * the power.
     */
    @Test
    void theFluctuationHasItsLevel() {
        double[][] out =
                Bench.play(
                        Bench.machine("'modulationNoise':{'levelDb':-30,'lowHz':10,'highHz':500}"),
                        RATE_HZ,
                        1 + PERIOD_SECONDS,
                        Bench.sine(6000, 0));
        for (double[] x : out) {
            double sum = 0;
            int points = (int) Math.round(PERIOD_SECONDS * RATE_HZ);
            for (int i = 0; i < points; i++) {
                double v = x[RATE_HZ / 2 + i] / Bench.REFERENCE_PEAK;
                sum += 2 * v * v / points;
            }
            assertEquals(1e-3, sum - 1, 1e-4);
        }
    }

    /** What is not recorded does not fluctuate, and a perfect machine has no such noise. */
    @Test
    void silenceStaysSilent() {
        double[][] out =
                Bench.play(
                        Bench.machine("'modulationNoise':{'levelDb':-30}"), RATE_HZ, 0.3, t -> 0);
        for (double v : out[0]) {
            assertEquals(0, v, 0);
        }
        assertNull(
                Bench.run(Bench.machine(""), RATE_HZ, 1).truth().noise().get(0).modulationNoise());
    }

    /** Of a flat density from 5 to 2000 Hz, 990 of 1995 Hz lie in the band of the truth. */
    @Test
    void theTruthIsTheShareInTheBand() {
        double truth =
                Bench.run(Bench.machine("'modulationNoise':{'levelDb':-40}"), RATE_HZ, 1)
                        .truth()
                        .noise()
                        .get(1)
                        .modulationNoise();
        assertEquals(-40 + 10 * Math.log10(990 / 1995.0), truth, 1e-9);
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "{}",
                "{'levelDb':-10}",
                "{'levelDb':-40,'lowHz':100,'highHz':90}",
                "{'levelDb':-40,'highHz':9000}"
            })
    void whatCannotBeIsRefused(String json) {
        assertThrows(
                UnusableInputException.class, () -> Bench.machine("'modulationNoise':" + json));
    }
}
