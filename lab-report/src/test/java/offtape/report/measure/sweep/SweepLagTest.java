package offtape.report.measure.sweep;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Arrays;
import java.util.stream.IntStream;
import offtape.core.machine.ResponseTruth;
import offtape.reference.Source;
import offtape.report.result.Response;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class SweepLagTest {

    private static final double EDGE_HZ = 28;

    private static double[] hz() {
        return hz(-140);
    }

    private static double[] hz(int first) {
        return IntStream.rangeClosed(first, 100)
                .mapToDouble(n -> 1000 * Math.pow(2, n / 24.0))
                .toArray();
    }

    /** Butterworth high-pass: |H|² = 1/(1 + (fc/f)^2n). */
    private static double[] highPass(double[] hz, int order) {
        return Arrays.stream(hz)
                .map(f -> -10 * Math.log10(1 + Math.pow(EDGE_HZ / f, 2 * order)))
                .toArray();
    }

    /**
     * At its edge a high-pass of order n turns the phase by n · 45°. The sum over steps of a
     * twenty-fourth of an octave from 1 Hz up comes within a degree.
     */
    @ParameterizedTest
    @ValueSource(ints = {1, 2, 3})
    @Source("H. W. Bode, Network Analysis and Feedback Amplifier Design, 1945")
    void theLeastPhaseIsThatOfTheFilter(int order) {
        double[] hz = hz(-240);
        SweepLag lag = new SweepLag(hz, highPass(hz, order), 1);
        double phase = lag.phase(Math.log(2 * Math.PI * EDGE_HZ));
        assertEquals(order * Math.PI / 4, phase, Math.PI / 180);
    }

    /**
     * High-pass of second order, x = f/fc: a′ = 2/(1 + x⁴), θ = π − atan2(√2 x, 1 − x²), θ′ = −√2
     * (x + x³)/(1 + x⁴), of which at x = 1 a′ = 1, θ′ = −√2, θ″ = 0: ε = (√2 − 2√2)/(2Lω) = −√2/(2
     * · 1.7 · 2π · 28) = −0.002364, which is −0.02054 dB. An octave up a′ = 2/17, θ′ = −10√2/17 =
     * −0.83189, θ″ = x · dθ′/dx = −√2 · 2 · (13 · 17 − 10 · 32)/17² = 0.96892: ε = (0.96892 +
     * 0.83189 − 0.19574)/(2 · 1.7 · 2π · 56) = 0.0013417 or 0.01165 dB. An octave below the edge a′
     * = 2 · 16/17, θ′ = −10√2/17 again, θ″ = −0.96892: ε = (−0.96892 + 0.83189 − 3.13181)/(2 · 1.7
     * · 2π · 14) = −0.010930 or −0.09494 dB; the curve must go on below.
     */
    @ParameterizedTest
    @CsvSource({"28, -0.02054", "56, 0.01165", "14, -0.09494"})
    void theExcessIsThatOfTheFormula(double at, double expectedDb) {
        double[] hz = hz(at < 20 ? -220 : -140);
        SweepLag lag = new SweepLag(hz, highPass(hz, 2), 1.7);
        double[] excess = lag.excessDb(lag.leastPhase());
        assertEquals(expectedDb, SweepBench.at(hz, excess, at), 0.002);
    }

    /** At the curve's first points what lies below is taken to fall on as it falls there. */
    @Test
    void theFirstPointsAreReadAsIfTheCurveWentOn() {
        double[] hz = hz();
        double[] tilt = Arrays.stream(hz).map(f -> 12 * Math.log(f / 1000) / Math.log(2)).toArray();
        double[] longer = hz(-236);
        double[] same =
                Arrays.stream(longer).map(f -> 12 * Math.log(f / 1000) / Math.log(2)).toArray();
        SweepLag lag = new SweepLag(hz, tilt, 1.7);
        SweepLag whole = new SweepLag(longer, same, 1.7);
        double[] excess = lag.excessDb(lag.leastPhase());
        double[] expected = whole.excessDb(whole.leastPhase());
        for (int i = 0; i < 48; i++) {
            // the sum over steps is coarse at its ends
            assertEquals(expected[96 + i], excess[i], 4e-3, hz[i] + " Hz");
        }
    }

    /** Nothing is late on a level curve. */
    @Test
    void aLevelCurveIsLeftAlone() {
        SweepLag lag = new SweepLag(hz(), new double[hz().length], 1);
        for (double excess : lag.excessDb(lag.leastPhase())) {
            assertEquals(0, excess, 0);
        }
    }

    /** The simulated machine's own truth; without the correction 0.05 to 0.1 dB at the edge. */
    @ParameterizedTest
    @CsvSource({"2, 12", "2, 6", "3, 12"})
    void rollOffsAreReadAsIfTheSweepStoodStill(int order, double seconds) {
        SweepBench bench =
                SweepBench.of(
                        "\"electronics\": {\"lowerEdgeHz\": 28, \"lowerOrder\": "
                                + order
                                + "}, \"hiss\": {\"levelDb\": -90}",
                        seconds,
                        -20);
        ResponseTruth truth = bench.truth(0);
        Response found = bench.response(0, 0);
        for (double f = 28; f < 500; f *= Math.pow(2, 1 / 12.0)) {
            double right = SweepBench.at(truth.frequencyHz(), truth.magnitudeDb(), f);
            double read = SweepBench.at(found.frequencyHz(), found.magnitudeDb(), f);
            assertEquals(right, read, 0.02, f + " Hz");
        }
        assertEquals(truth.lowerEdgeHz(), found.lowerEdge().value(), 0.001 * truth.lowerEdgeHz());
    }
}
