package offtape.report.measure.transport;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.Locale;
import java.util.Map;
import offtape.core.dsp.RealFft;
import offtape.core.standard.FlutterBand;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/**
 * Ways to undo the comb, on the same returns of 20 s with hiss at −58 dB and the delay out by 20
 * µs: weighted rms of what each gets wrong, as a share of the motion's weighted rms. Prints the
 * table for the documentation.
 */
@Tag("study")
class EstimatorComparisonTest {

    private static final double SECONDS = 20;
    private static final double SIGMA = 20e-6;
    private static final double[] DELAYS = {0.01, 0.02, 0.157, 0.7};

    private static final String LINES =
            """
            "components": [
              {"frequencyHz": 0.83, "peakPercent": 0.03}, {"frequencyHz": 2.1, "peakPercent": 0.05},
              {"frequencyHz": 4.77, "peakPercent": 0.06}, {"frequencyHz": 9.55, "peakPercent": 0.04},
              {"frequencyHz": 25, "peakPercent": 0.02}]
            """;

    private static final String RANDOM =
            "\"randomFlutter\": {\"rmsPercent\": 0.08, \"lowHz\": 0.5, \"highHz\": 120}";

    private static final String SLOW =
            """
            "driftPercentPerMinute": 0.2,
            "reels": {"supply": {"radiusMm": 50, "peakPercent": 0.1},
                      "takeUp": {"radiusMm": 90, "peakPercent": 0.08},
                      "tapeThicknessMicrometres": 35}
            """;

    private static Map<String, String> motions(double delay) {
        Map<String, String> m = new LinkedHashMap<>();
        m.put("lines", LINES);
        m.put("random, 0.5 to 120 Hz", RANDOM);
        m.put(
                "random, a line 0.15 Hz beside a zero",
                RANDOM
                        + ", \"components\": [{\"peakPercent\": 0.05, \"frequencyHz\": "
                        + (1 / delay + 0.15)
                        + "}]");
        m.put("random, lines, reels, drift", RANDOM + ", " + LINES + ", " + SLOW);
        for (String name : new String[] {"transport-a", "transport-b", "transport-c"}) {
            m.put(name, "\"motion\": {\"recorded\": \"" + name + "\", \"scale\": 1}");
        }
        return m;
    }

    @Test
    void leastSquaresAlongTheLatticeWin() {
        double[] sums = new double[3];
        for (String name : motions(1).keySet()) {
            StringBuilder row = new StringBuilder("| " + name + " |");
            for (double delay : DELAYS) {
                MadeReturn made =
                        MadeReturn.of(motions(delay).get(name), delay, SECONDS, MadeReturn.HISS, 4);
                Comb comb = new Comb(made.delaySeconds() + SIGMA, SIGMA);
                double[][] got = {
                    WienerInverse.undo(made.heard(), comb, false),
                    WienerInverse.undo(made.heard(), comb, true),
                    TransportDeviation.of(made.heard(), comb).percent()
                };
                double[] error = new double[got.length];
                for (int e = 0; e < got.length; e++) {
                    double[] x = got[e];
                    Arrays.setAll(x, i -> x[i] - made.own()[i]);
                    error[e] = weighted(x) / weighted(made.own());
                    sums[e] += error[e];
                }
                row.append(
                        String.format(
                                Locale.ROOT,
                                " %.1f / %.1f / %.1f |",
                                100 * error[0],
                                100 * error[1],
                                100 * error[2]));
            }
            System.out.println(row);
        }
        assertTrue(sums[2] < 0.5 * sums[1] && sums[2] < 0.5 * sums[0], Arrays.toString(sums));
    }

    private static double weighted(double[] x) {
        RealFft fft = RealFft.ofSize(RealFft.nextPowerOfTwo(2 * x.length));
        double binHz = MadeReturn.RATE_HZ / fft.size();
        double[] y =
                fft.inverse(
                        fft.forward(x)
                                .times(k -> k == 0 ? 0 : FlutterBand.WEIGHTED.gain(k * binHz)));
        int from = (int) (3 * MadeReturn.RATE_HZ);
        int to = x.length - (int) (1.5 * MadeReturn.RATE_HZ);
        return Math.sqrt(Arrays.stream(y, from, to).map(v -> v * v).average().orElseThrow());
    }
}
