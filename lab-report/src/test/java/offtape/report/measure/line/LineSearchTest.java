package offtape.report.measure.line;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import offtape.core.machine.SimulatedMachine;
import offtape.core.machine.TimeMap;
import offtape.core.machine.spec.MachineSpec;
import offtape.reference.Source;
import offtape.reference.TransportMotion;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class LineSearchTest {

    /** 95 % of many trials, within 4 % as 240 trials allow (two standard deviations are 2.8 %). */
    private static void assertCovered(int inside, int trials, String what) {
        assertEquals(0.95, (double) inside / trials, 0.04, what + ", " + trials + " trials");
    }

    @Test
    void uncertaintiesCoverTheTruth() {
        int trials = 0;
        int hz = 0;
        int peak = 0;
        for (int seed = 0; seed < 240; seed++) {
            Random random = new Random(1000 + seed);
            double f = 0.5 + 45 * random.nextDouble() * random.nextDouble();
            double a = 0.012 * Math.exp(2.5 * random.nextDouble());
            double[] x =
                    Deviations.noise(0.05, 20, 120, seed)
                            .line(f, a, 2 * Math.PI * random.nextDouble())
                            .samples();
            List<FoundLine> lines = LineSearch.find(x, 120);
            if (!lines.isEmpty()) {
                FoundLine line = lines.get(0);
                trials++;
                hz += Math.abs(line.middleHz() - f) <= line.hzUncertainty() ? 1 : 0;
                peak += Math.abs(line.peakPercent() - a) <= line.peakUncertainty() ? 1 : 0;
            }
        }
        assertTrue(trials > 200, trials + " found");
        assertCovered(hz, trials, "frequency");
        assertCovered(peak, trials, "peak");
    }

    /** Below 4 Hz reels are looked for, above they are not; a line there belongs to one side. */
    @ParameterizedTest
    @ValueSource(doubles = {3.95, 3.99979, 3.99999, 4, 4.00001, 4.03})
    void aLineOnTheEdgeOfTheReelsIsFoundOnce(double hz) {
        for (int seed = 0; seed < 8; seed++) {
            double[] x = Deviations.noise(0.003, 16, 500, seed).line(hz, 0.1, seed).samples();
            List<FoundLine> lines = LineSearch.find(x, 500);
            assertEquals(1, lines.size(), lines.toString());
            assertEquals(hz, lines.get(0).middleHz(), lines.get(0).hzUncertainty() * 1.5);
        }
    }

    /** A supply reel of 60 mm at 19.05 cm/s: 0.505 Hz, faster by 0.9 % over a minute. */
    @Tag("study")
    @Test
    void uncertaintiesCoverTheTruthOfAMovingLine() {
        int trials = 240;
        int start = 0;
        int end = 0;
        int peak = 0;
        double startHz = 190.5 / (2 * Math.PI * 60);
        double endHz = 190.5 / (2 * Math.PI * Deviations.radius(60, -0.035, 190.5, 60));
        for (int seed = 0; seed < trials; seed++) {
            double[] x =
                    Deviations.noise(0.01, 60, 20, seed)
                            .reel(60, -0.035, 190.5, 0.08, seed)
                            .samples();
            FoundLine line = LineSearch.find(x, 20).get(0);
            assertTrue(line.moves(), "seed " + seed);
            start += Math.abs(line.startHz() - startHz) <= line.hzUncertainty() ? 1 : 0;
            end += Math.abs(line.endHz() - endHz) <= line.hzUncertainty() ? 1 : 0;
            peak += Math.abs(line.peakPercent() - 0.08) <= line.peakUncertainty() ? 1 : 0;
        }
        assertCovered(start, trials, "frequency at the beginning");
        assertCovered(end, trials, "frequency at the end");
        assertCovered(peak, trials, "peak");
    }

    /**
     * The bound for a sine of peak A in white noise of one-sided density S over T seconds: σ(A) =
     * √(S/T), σ(f) = √(12·S/(A²·T))/(2π·T). No estimate without bias can scatter less. Hann's
     * window w costs √(∫w²)/∫w = √1.5 for the peak, and √(∫w²t²/12)/∫wt² = √(0.00750/12)/0.01634 =
     * 1.53 for the frequency.
     */
    @Test
    @Source("D. C. Rife, R. R. Boorstyn, IEEE Trans. Inf. Theory 20(5), 1974, bounds (from memory)")
    void theScatterIsThatOfTheBoundTimesTheWindow() {
        double density = 2 * 0.05 * 0.05 / 120;
        double boundHz = Math.sqrt(12 * density / (0.1 * 0.1 * 20)) / (2 * Math.PI * 20);
        double boundPercent = Math.sqrt(density / 20);
        double hz = 0;
        double percent = 0;
        int trials = 200;
        for (int seed = 0; seed < trials; seed++) {
            double[] x = Deviations.noise(0.05, 20, 120, seed).line(17.3, 0.1, seed).samples();
            FoundLine line = LineSearch.find(x, 120).get(0);
            hz += Math.pow(line.startHz() - 17.3, 2) / trials;
            percent += Math.pow(line.peakPercent() - 0.1, 2) / trials;
        }
        // 200 trials leave a standard deviation uncertain by 5 %
        assertEquals(1.53, Math.sqrt(hz) / boundHz, 0.2);
        assertEquals(Math.sqrt(1.5), Math.sqrt(percent) / boundPercent, 0.15);
    }

    /** One recording in a hundred may show a false line: of 400, 4 ± 2; 10 are ruled out. */
    @Test
    void noiseMakesNoLines() {
        int found = 0;
        for (int seed = 0; seed < 200; seed++) {
            found += LineSearch.find(noise(seed).samples(), 200).size();
            found += LineSearch.find(noise(1000 + seed).red(0.97).samples(), 200).size();
        }
        assertTrue(found <= 9, found + " false lines");
        assertEquals(List.of(), LineSearch.find(new double[20_000], 1000));
    }

    private static Deviations noise(long seed) {
        return Deviations.noise(0.3, 20, 200, seed);
    }

    /** Random flutter of the simulated machine, 0.5 to 60 Hz: the band's edges are no lines. */
    @Test
    void randomFlutterMakesNoLines() {
        int found = 0;
        for (int seed = 1; seed <= 40; seed++) {
            found += LineSearch.find(flutter(seed), 200).size();
        }
        assertTrue(found <= 2, found + " false lines");
    }

    private static double[] flutter(int seed) {
        MachineSpec spec =
                MachineSpec.fromJson(
                        """
                        {"format": "offtape-machine", "version": 1, "seed": %d, "transport":
                          {"randomFlutter": {"rmsPercent": 0.05, "lowHz": 0.5, "highHz": 60}}}
                        """
                                .formatted(seed));
        TimeMap map = SimulatedMachine.of(spec).run(8000, 8000 * 31, -18, 8000).timeMap();
        double[] x = new double[30 * 200];
        Arrays.setAll(x, i -> 100 * map.returnDeviation(0.5 + i / 200.0));
        return x;
    }

    @Test
    void aLineInNoNoiseIsExact() {
        for (double hz = 10; hz < 10.02; hz += 0.0031) {
            double[] x = Deviations.noise(0, 60, 500, 1).line(hz, 0.1, 0.4).samples();
            List<FoundLine> lines = LineSearch.find(x, 500);
            assertEquals(1, lines.size());
            assertEquals(hz, lines.get(0).startHz(), 1e-6);
            assertEquals(0.1, lines.get(0).peakPercent(), 1e-5);
        }
    }

    /** 0.1 Hz apart over 60 s, weak beside strong, and the harmonics of one of them. */
    @Test
    void closeLinesAndHarmonicsAreKeptApart() {
        for (int seed = 0; seed < 6; seed++) {
            double[] x =
                    Deviations.noise(0.02, 60, 500, seed)
                            .line(9.5, 0.08, 0.3)
                            .line(9.6, 0.05, seed)
                            .line(19, 0.02, 1)
                            .line(28.5, 0.01, 2)
                            .line(1.516, 0.1, 0.2)
                            .line(1.616, 0.02, seed)
                            .samples();
            List<FoundLine> lines = LineSearch.find(x, 500);
            double[][] truth = {
                {1.516, 0.1}, {9.5, 0.08}, {9.6, 0.05}, {19, 0.02}, {1.616, 0.02}, {28.5, 0.01}
            };
            assertEquals(truth.length, lines.size());
            for (double[] t : truth) {
                FoundLine line =
                        lines.stream()
                                .filter(l -> Math.abs(l.startHz() - t[0]) < 0.03)
                                .findFirst()
                                .orElseThrow();
                assertEquals(t[0], line.startHz(), 2 * line.hzUncertainty());
                assertEquals(t[1], line.peakPercent(), 2 * line.peakUncertainty());
                assertEquals(0, line.changeHzPerS());
            }
        }
    }

    /** Both reels over ten minutes move through 65 and 109 bins among lines that stand still. */
    @Test
    void reelsAreFollowedForTenMinutes() {
        double[] x =
                Deviations.noise(0.02, 600, 80, 3)
                        .reel(62, -0.035, 190.5, 0.09, 0.3)
                        .reel(41, 0.035, 190.5, 0.03, 1)
                        .line(1.516, 0.11, 1)
                        .line(9.5493, 0.085, 0)
                        .samples();
        List<FoundLine> lines = LineSearch.find(x, 80);
        assertEquals(4, lines.size());
        assertReel(lines.get(1), 62, -0.035, 0.09);
        assertReel(lines.get(3), 41, 0.035, 0.03);
    }

    private static void assertReel(FoundLine line, double radius, double thickness, double peak) {
        double end = Deviations.radius(radius, thickness, 190.5, 600);
        assertEquals(190.5 / (2 * Math.PI * radius), line.startHz(), 2e-4);
        assertEquals(190.5 / (2 * Math.PI * end), line.endHz(), 2e-4);
        assertEquals(peak, line.peakPercent(), 0.01 * peak);
    }

    /**
     * The three recordings are of one machine at one speed, so a line that is real is in at least
     * two of them. Over five seconds a line is known within 0.2 Hz, the width of a bin.
     */
    @Test
    @Source("01tot10/neural-tape-modeling, Mikkonen et al., DAFx 2023, recorded motion")
    void linesOfARealMachineAreInMostOfItsRecordings() {
        List<List<FoundLine>> all = new ArrayList<>();
        for (String name : TransportMotion.NAMES) {
            double[] late = TransportMotion.load(name).lateMicroseconds();
            double[] x = new double[late.length - 1];
            for (int i = 0; i < x.length; i++) {
                x[i] = (late[i] - late[i + 1]) * 1e-6 * 100 * 100;
            }
            all.add(LineSearch.find(x, 100));
        }
        int lines = 0;
        int alone = 0;
        for (List<FoundLine> one : all) {
            for (FoundLine line : one) {
                lines++;
                long others =
                        all.stream()
                                .filter(o -> o != one)
                                .filter(o -> o.stream().anyMatch(l -> isSame(l, line)))
                                .count();
                alone += others == 0 ? 1 : 0;
            }
        }
        assertTrue(lines >= 12, lines + " lines");
        assertTrue(alone <= 3, alone + " of " + lines + " lines are in one recording only");
    }

    private static boolean isSame(FoundLine a, FoundLine b) {
        return Math.abs(a.startHz() - b.startHz()) < 0.2;
    }
}
