package offtape.report.measure;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.Random;
import java.util.function.IntToDoubleFunction;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class ClippingScanTest {

    private static final int RATE = 48_000;
    private static final int RUN = 4;

    /**
     * A sine of peak 1.2 at 100 Hz cut at ±0.9 stays there from arcsin ¾ to π − arcsin ¾ of every
     * half turn: 20 times in a tenth of a second. The first time begins at 0.13497 of a period of
     * 480 samples, 64.8, so at sample 65, and counts from its fourth sample on, 68.
     */
    @ParameterizedTest
    @ValueSource(ints = {4800, 70, 1})
    void aCutSineIsFoundWithPlaceAndLevel(int block) {
        double[] x = samples(i -> clip(1.2 * sine(100, i), 0.9), 4800);
        ClippingScan scan = new ClippingScan(1, RUN);
        for (int n = 0; n < x.length; n += block) {
            double[] part = Arrays.copyOfRange(x, n, Math.min(n + block, x.length));
            scan.add(new double[][] {part}, n);
        }
        assertEquals(20, scan.runs(0));
        assertEquals(68, scan.firstFrame(0));
        assertEquals(0.9, scan.level(0), 1e-12);
    }

    @ParameterizedTest
    @ValueSource(doubles = {997, 1000, 3150, 6000, 10_000, 16_000})
    void aWholeSineAtFullScaleIsNotClipped(double hz) {
        assertEquals(0, scan(i -> sine(hz, i), RATE).runs(0));
        assertEquals(0, scan(i -> Math.rint(sine(hz, i) * 0x7FFFFF) / 0x800000, RATE).runs(0));
    }

    @Test
    void noiseAndSilenceAreNotClipped() {
        Random random = new Random(4);
        assertEquals(0, scan(i -> 0.1 * random.nextGaussian(), RATE).runs(0));
        assertEquals(0, scan(i -> 0, RATE).runs(0));
        assertEquals(0, scan(i -> 0.3, 0).runs(0));
    }

    /** What is cut below a twentieth of full scale was no converter's doing. */
    @Test
    void quietPlateausAreNotClipping() {
        assertEquals(0, scan(i -> clip(sine(100, i), 0.04), 4800).runs(0));
        assertTrue(scan(i -> clip(sine(100, i), 0.06), 4800).runs(0) > 0);
    }

    /** Of a square wave each half turn is flat from its first sample on. */
    @Test
    void aHalfTurnOfASquareWaveIsFlatThroughout() {
        ClippingScan scan = scan(i -> i / RUN % 2 == 0 ? 0.9 : -0.9, 4 * RUN);
        assertEquals(4, scan.runs(0));
        assertEquals(RUN - 1, scan.firstFrame(0));
        assertEquals(0, scan(i -> i / 3 % 2 == 0 ? 0.9 : -0.9, 4 * RUN).runs(0));
    }

    /** A twentieth of full scale counts; what lies within a millionth of a level is flat. */
    @Test
    void limitsBelongToClipping() {
        assertEquals(1, scan(i -> 0.05, RUN).runs(0));
        assertEquals(1, scan(i -> i < RUN - 1 ? 1 : 1 + 1e-6, RUN).runs(0));
        assertEquals(1, scan(i -> i < RUN - 1 ? 1 : 1 - 1e-6, RUN).runs(0));
        assertEquals(0, scan(i -> i < RUN - 1 ? 1 : 1 + 1.1e-6, RUN).runs(0));
        assertEquals(0, scan(i -> i < RUN - 1 ? 1 : 1 - 1.1e-6, RUN).runs(0));
    }

    /** One louder sample shows that the plateau was not the limit. */
    @Test
    void aLouderSampleLiftsTheLimit() {
        ClippingScan scan = scan(i -> i == 4000 ? 0.95 : clip(1.2 * sine(100, i), 0.9), 4200);
        assertEquals(0, scan.runs(0));
        assertEquals(0.95, scan.level(0), 0);
    }

    /** arcsin ½ is a twelfth of a turn: the second channel is cut from sample 40 on. */
    @Test
    void channelsAreToldApart() {
        double[] whole = samples(i -> sine(100, i), 4800);
        double[] cut = samples(i -> clip(sine(100, i), 0.5 - 1e-9), 4800);
        ClippingScan scan = new ClippingScan(2, RUN);
        scan.add(new double[][] {whole, cut}, 1_000_000);
        assertEquals(0, scan.runs(0));
        assertEquals(1, scan.level(0), 1e-12);
        assertEquals(20, scan.runs(1));
        assertEquals(1_000_043, scan.firstFrame(1));
    }

    private static double sine(double hz, int i) {
        return Math.sin(2 * Math.PI * hz * i / RATE);
    }

    private static double clip(double x, double limit) {
        return Math.max(-limit, Math.min(limit, x));
    }

    private static double[] samples(IntToDoubleFunction sound, int n) {
        return IntStream.range(0, n).mapToDouble(sound).toArray();
    }

    private static ClippingScan scan(IntToDoubleFunction sound, int n) {
        ClippingScan scan = new ClippingScan(1, RUN);
        scan.add(new double[][] {samples(sound, n)}, 0);
        return scan;
    }
}
