package offtape.report.measure.sweep;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Arrays;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * A high-pass of second order at 28 Hz, whose phase is π − atan2(√2 x, 1 − x²) with x = f/28, seen
 * through the motion of the tape.
 */
class PhaseShareTest {

    private static final double[] HZ =
            IntStream.range(0, 160).mapToDouble(i -> 20 * Math.pow(2, i / 24.0)).toArray();

    private static final double[] LEAST =
            Arrays.stream(HZ)
                    .map(f -> f / 28)
                    .map(x -> Math.PI - Math.atan2(Math.sqrt(2) * x, 1 - x * x))
                    .map(p -> p > Math.PI ? p - 2 * Math.PI : p)
                    .toArray();

    /** Motion: late by so many milliseconds, and wow of 0.3 % peak at so many hertz. */
    private static double[] seen(double share, double lateMs, double wowHz, double turn) {
        double[] seen = new double[HZ.length];
        for (int i = 0; i < seen.length; i++) {
            // an octave lasts 1.2 s
            double t = 1.2 * i / 24;
            double wow =
                    wowHz == 0
                            ? 0
                            : 0.003 / (2 * Math.PI * wowHz) * Math.cos(2 * Math.PI * wowHz * t);
            double psi = share * LEAST[i] - 2 * Math.PI * HZ[i] * (lateMs / 1000 + wow) + turn;
            seen[i] = Math.IEEEremainder(psi, 2 * Math.PI);
        }
        return seen;
    }

    @ParameterizedTest
    @CsvSource({
        "1, 0, 0",
        "0, 0, 0",
        "1, 0.5, 0",
        "0, -0.5, 0",
        "1, 0.1, 4",
        "0, 0.1, 4",
        "1, 0, 0.63",
        "0, 0, 0.63",
        "0.5, 0.2, 0"
    })
    void theShareIsFoundThroughMotion(double share, double lateMs, double wowHz) {
        assertEquals(share, PhaseShare.of(24, HZ, seen(share, lateMs, wowHz, 0), LEAST), 1e-6);
        double[] turned = seen(share, lateMs, wowHz, Math.PI);
        assertEquals(share, PhaseShare.of(24, HZ, turned, LEAST), 1e-6);
    }

    /** Where the path turns nothing the answer does not matter, and the usual one is given. */
    @Test
    void withoutSlopesNothingIsTold() {
        double[] none = new double[HZ.length];
        assertEquals(1, PhaseShare.of(24, HZ, none, none), 0);
        Arrays.fill(none, Double.NaN);
        assertEquals(1, PhaseShare.of(24, HZ, none, LEAST), 0);
    }
}
