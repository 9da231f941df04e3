package offtape.report.measure.line;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Comparator;
import java.util.List;
import java.util.Random;
import java.util.function.DoubleUnaryOperator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class BandSearchTest {

    private static final double RATE = 51.2;

    /** Samples of 20 s, in which a bin is 0.05 Hz. */
    private static final int COUNT = 1024;

    private static final double SECONDS = 20;
    private static final double BIN = 0.05;
    private static final double CHANCE = 0.005;
    private static final double LEAST = 0.01;

    private static Stretch stretch(DoubleUnaryOperator x) {
        Stretch s = new Stretch(new double[COUNT], RATE);
        for (int i = 0; i < COUNT; i++) {
            s.samples()[i] = x.applyAsDouble(s.at(i));
        }
        return s;
    }

    private static double sine(double t, double hz) {
        return Math.cos(2 * Math.PI * hz * t + 1);
    }

    /** Steady lines from 1 to 10 Hz, the slowest first. */
    private static List<FoundLine> steady(Stretch stretch) {
        BendGrid grid = new BendGrid(1, 10, new double[] {0});
        return new BandSearch(stretch, List.of(grid), CHANCE, LEAST)
                .find().stream().sorted(Comparator.comparingDouble(FoundLine::startHz)).toList();
    }

    /** In no noise a peak is known within 0.1 % and a frequency within 0.0002 bins. */
    @Test
    void aLineInNoNoiseHasTheSmallestUncertainty() {
        FoundLine line = steady(stretch(t -> 0.1 * sine(t, 3.01))).get(0);
        assertEquals(3.01, line.startHz(), 1e-7);
        assertEquals(3.01, line.endHz(), 1e-7);
        assertEquals(0.1, line.peakPercent(), 1e-7);
        assertEquals(1e-4, line.peakUncertainty(), 1e-7);
        assertEquals(1e-5, line.hzUncertainty(), 1e-7);
        assertEquals(0, line.changeHzPerS(), 0);
        assertEquals(0, line.changeUncertainty(), 0);
    }

    @Test
    void whatIsSmallerThanMattersIsLeftOut() {
        assertEquals(1, steady(stretch(t -> 0.0101 * sine(t, 3))).size());
        assertEquals(0, steady(stretch(t -> 0.0099 * sine(t, 3))).size());
    }

    /** Lines on the very edges of the band belong to it, those beyond do not. */
    @ParameterizedTest
    @CsvSource({"1, 1", "1.012, 1", "10, 1", "9.988, 1", "0.9, 0", "10.1, 0"})
    void theBandHasEdges(double hz, int lines) {
        assertEquals(lines, steady(stretch(t -> 0.1 * sine(t, hz))).size());
    }

    /** Within four bins of a strong line only what has 0.3 of its peak is a line of its own. */
    @ParameterizedTest
    @CsvSource({
        "3.5, 0.28, false",
        "3.5, 0.32, true",
        "-3.5, 0.28, false",
        "-3.5, 0.32, true",
        "4.5, 0.15, true",
        "-4.5, 0.15, true"
    })
    void whatIsNearAStrongLineIsItsOwnUnrest(double bins, double share, boolean found) {
        double other = 5 + bins * BIN;
        List<FoundLine> lines =
                steady(stretch(t -> 0.1 * sine(t, 5) + 0.1 * share * sine(t, other)));
        assertEquals(found ? 2 : 1, lines.size(), lines.toString());
        assertTrue(lines.stream().anyMatch(l -> Math.abs(l.startHz() - 5) < 0.01));
        assertEquals(found, lines.stream().anyMatch(l -> Math.abs(l.startHz() - other) < 0.01));
    }

    /**
     * Lines five bins apart show in each other's place: Hann's window lets sin(πx)/(πx·(1 − x²)) =
     * 0.0018 of a peak through at 5.3 bins. Once each is fitted without the others, nothing of that
     * is left.
     */
    @Test
    void closeLinesDoNotBendEachOther() {
        List<FoundLine> lines =
                steady(
                        stretch(
                                t ->
                                        0.1 * sine(t, 5)
                                                + 0.08 * sine(t, 5 + 5.3 * BIN)
                                                + 0.09 * sine(t, 5 - 5.4 * BIN)));
        assertEquals(3, lines.size(), lines.toString());
        double[] hz = {5 - 5.4 * BIN, 5, 5 + 5.3 * BIN};
        double[] peak = {0.09, 0.1, 0.08};
        for (int i = 0; i < 3; i++) {
            assertEquals(hz[i], lines.get(i).startHz(), 1e-8);
            assertEquals(peak[i], lines.get(i).peakPercent(), 1e-7);
        }
    }

    /**
     * A line that swells by 30 % in the middle leaves lines one bin beside it: 0.3·cos(2πt/T) is
     * 0.15 at ±1 bin, and the fit takes 0.3·∫w·cos/∫w = 0.15 of it for the line. Seen through
     * Hann's window (1 in its place, ½ a bin beside) that leaves ½·0.15 at ±1 and at ±2 bins,
     * nothing at 0 and ±3, a mean power of 4·(0.075·A)²/7 over the seven. The peak is 1.15·A.
     */
    @Test
    void whatALineLeavesBehindIsItsUncertainty() {
        List<FoundLine> lines =
                steady(
                        stretch(
                                t ->
                                        0.1
                                                * (1 + 0.3 * Math.cos(2 * Math.PI * t / SECONDS))
                                                * sine(t, 5)));
        assertEquals(1, lines.size());
        FoundLine line = lines.get(0);
        assertEquals(0.115, line.peakPercent(), 1e-5);
        double left = 4 * 0.0075 * 0.0075 / 7;
        assertEquals(2 * Math.sqrt(left / 2), line.peakUncertainty(), 1e-4);
        // noise of the density S leaves 3·S/T; the bound with Hann's window (LineFitTest), k = 2
        double density = left * SECONDS / 3;
        double bound = bound(0.115, density);
        assertEquals(2 * 1.5306 * bound, line.hzUncertainty(), 0.01 * bound);
    }

    /**
     * White noise of standard deviation σ shows as 6·σ²/n; a peak is off by √(half of that), a
     * frequency by the bound with Hann's window. At 60 Hz noise is read from the medians of 51
     * places to either side: ten draws together are known within 1.44/√1020 = 4.5 %, their root
     * within 2.3 %.
     */
    @Test
    void noiseIsToldAsUncertainty() {
        double sigma = 0.05;
        double peak = 0;
        double hz = 0;
        for (int seed = 0; seed < 10; seed++) {
            double[] x = Deviations.noise(sigma, SECONDS, 204.8, seed).line(60, 0.1, 1).samples();
            BendGrid grid = new BendGrid(20, 90, new double[] {0});
            Stretch s = new Stretch(x, 204.8);
            FoundLine line = new BandSearch(s, List.of(grid), CHANCE, LEAST).find().get(0);
            peak += Math.pow(line.peakUncertainty(), 2) / 10;
            hz += Math.pow(line.hzUncertainty(), 2) / 10;
        }
        double shown = 6 * sigma * sigma / 4096;
        assertEquals(2 * Math.sqrt(shown / 2), Math.sqrt(peak), 0.05 * Math.sqrt(peak));
        double bound = bound(0.1, shown * SECONDS / 3);
        assertEquals(2 * 1.5306 * bound, Math.sqrt(hz), 0.05 * Math.sqrt(hz));
    }

    /** Standard deviation of the frequency of a sine in noise of a density under a flat window. */
    private static double bound(double peak, double density) {
        return Math.sqrt(12 * density / (peak * peak * SECONDS)) / (2 * Math.PI * SECONDS);
    }

    /** A reel's line about 2 Hz in noise, whose bend is so many of its standard deviations. */
    private static FoundLine reel(double deviations, int seed) {
        double bend = deviations * BEND_DEVIATION;
        Random random = new Random(seed);
        Stretch s =
                stretch(
                        t ->
                                SIGMA * random.nextGaussian()
                                        + PEAK * Math.cos(2 * Math.PI * 2 * Line.turned(t, bend)));
        List<FoundLine> lines =
                new BandSearch(s, BendGrid.octaves(0.5, 4, SECONDS), CHANCE, LEAST).find();
        assertEquals(1, lines.size());
        return lines.get(0);
    }

    private static final double SIGMA = 0.02;
    private static final double PEAK = 0.2;

    /** As {@link LineFitTest} works it out: σ·√(2/n)/A·23.1969/T²/(π·f/2). */
    private static final double BEND_DEVIATION =
            SIGMA * Math.sqrt(2.0 / COUNT) / PEAK * 23.1969 / (SECONDS * SECONDS) / Math.PI;

    /** A bend within four standard deviations of none is none. */
    @ParameterizedTest
    @ValueSource(ints = {1, 2, 3})
    void aLineMovesIfItsBendIsSure(int seed) {
        FoundLine steady = reel(1.5, seed);
        assertFalse(steady.moves());
        assertEquals(steady.startHz(), steady.endHz(), 0);
        assertTrue(reel(7, seed).moves());
        assertTrue(reel(-7, seed).moves());
    }

    /**
     * The frequency of a line with bend b runs from f₀/√(1 − b·T/2) to f₀/√(1 + b·T/2). It changes
     * by −f₀·b/2 in a second, so that is uncertain by f₀/2 times what b is, and the ends by half
     * the length times as much beside what the middle is.
     */
    @Test
    void bothEndsOfAMovingLineAreTold() {
        FoundLine line = reel(-12, 4);
        double bend = -12 * BEND_DEVIATION;
        assertEquals(2 / Math.sqrt(1 - bend * 10), line.startHz(), line.hzUncertainty());
        assertEquals(2 / Math.sqrt(1 + bend * 10), line.endHz(), line.hzUncertainty());
        assertTrue(line.endHz() > line.startHz());
        assertEquals((line.endHz() - line.startHz()) / SECONDS, line.changeHzPerS(), 1e-9);
        assertEquals(-bend, line.changeHzPerS(), line.changeUncertainty());
        // noise is read from thirty places, whose medians leave its root uncertain by 13 %
        double change = 2 * BEND_DEVIATION * 2 / 2;
        assertEquals(change, line.changeUncertainty(), 0.3 * change);
        double steady = 2 * 1.5306 * bound(PEAK, 2 * SIGMA * SIGMA / RATE);
        double ofChange = line.changeUncertainty() / change;
        double end = Math.hypot(steady, 10 * change);
        assertEquals(end * ofChange, line.hzUncertainty(), 0.01 * end, "in the same noise");
        FoundLine unmoved = reel(1, 4);
        double share = unmoved.changeUncertainty() / change;
        assertEquals(1, share, 0.3);
        assertEquals(steady * share, unmoved.hzUncertainty(), 0.01 * steady);
    }

    /**
     * A reel from 3/√0.85 = 3.254 Hz down to 3/√1.15 = 2.797 Hz: a weak line anywhere between, or
     * within four bins of either end, is its own unrest; beyond it is another line.
     */
    @ParameterizedTest
    @CsvSource({
        "3.20, false",
        "3.00, false",
        "2.85, false",
        "3.43, false",
        "2.62, false",
        "3.52, true",
        "2.53, true"
    })
    void whatAReelPassesIsItsOwn(double weakHz, boolean found) {
        Stretch s =
                stretch(
                        t ->
                                0.1 * Math.cos(2 * Math.PI * 3 * Line.turned(t, 0.015))
                                        + 0.02 * sine(t, weakHz));
        List<FoundLine> lines =
                new BandSearch(s, BendGrid.octaves(0.5, 4, SECONDS), CHANCE, LEAST).find();
        assertEquals(found ? 2 : 1, lines.size(), lines.toString());
        // its unrest may move the reel by half a bin
        double within = found ? 1e-4 : BIN / 2;
        assertEquals(3 / Math.sqrt(0.85), lines.get(0).startHz(), within);
        assertEquals(3 / Math.sqrt(1.15), lines.get(0).endHz(), within);
    }

    @Test
    void noiseAloneIsNoLine() {
        Random random = new Random(5);
        assertEquals(List.of(), steady(stretch(t -> 0.1 * random.nextGaussian())));
    }
}
