package offtape.report.measure.speed;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Arrays;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Powers of sines in a band of 200 to 400 Hz, at 5120 values a second: 0.2 s and a fifth more hold
 * a transform of 1024 values, whose bins lie 5 Hz apart. Hann's window shares a sine on a bin among
 * three bins as ¼ : 1 : ¼ of 1.5.
 */
class FastBlocksTest {

    private static final double RATE = 5120;
    private static final ScrapeBand BAND = new ScrapeBand(200, 400, 700);

    private static double[] sine(double peak, double hz) {
        double[] x = new double[1024];
        Arrays.setAll(x, i -> 3 + peak * Math.sin(2 * Math.PI * hz * i / RATE + 0.3));
        return x;
    }

    private static FastBlocks of(double[]... pairs) {
        FastBlocks blocks = new FastBlocks(BAND, RATE);
        for (int i = 0; i < pairs.length; i += 2) {
            blocks.add(pairs[i], pairs[i + 1], 0);
        }
        return blocks;
    }

    @Test
    void aBlockIsAFifthOfASecondAtLeast() {
        assertEquals(1024, of().length());
        assertEquals(2048, new FastBlocks(BAND, 8600).length());
        assertEquals(1024, new FastBlocks(BAND, 8500).length());
    }

    /** A sine of peak 2 has the power 2; on an edge half of it counts, a bin off ⅞ of 1.5 : 1.5. */
    @ParameterizedTest
    @CsvSource({
        "300, 2",
        "200, 1",
        "400, 1",
        "205, 1.8333333",
        "395, 1.8333333",
        "190, 0",
        "410, 0"
    })
    void whatLiesInTheBandCounts(double hz, double power) {
        FastBlocks blocks = of(sine(2, hz), sine(1, hz));
        assertEquals(power, blocks.ofFirst().power(), 1e-6);
        assertEquals(power / 4, blocks.ofSecond().power(), 1e-6);
        assertEquals(power * 5 / 8, blocks.ofBoth().power(), 1e-6);
    }

    /**
     * The density P/(1.5·5 Hz) · (¼, 1, ¼) of a sine has ∫G² df = P²/(2·5 Hz), and n blocks that
     * overlap by half last (n + 1)/(2·5 Hz): the variance is P²/(n + 1). Two series last twice as
     * long.
     */
    @Test
    void moreBlocksAreSurer() {
        double[] x = sine(2, 300);
        FastBlocks one = of(x, x);
        assertEquals(4 / 2.0, one.ofFirst().variance(), 1e-5);
        assertEquals(4 / 4.0, one.ofBoth().variance(), 1e-5);
        FastBlocks three = of(x, x, x, x, x, x);
        assertEquals(4 / 4.0, three.ofFirst().variance(), 1e-5);
        assertEquals(4 / 4.0, three.ofSecond().variance(), 1e-5);
        assertEquals(4 / 8.0, three.ofBoth().variance(), 1e-5);
    }

    /** Second series of powers ½·(3.1, 1, 1, 2.9, 1): the first is over three times the median. */
    @Test
    void struckBlocksAreLeftOutOfBothSeries() {
        double[] calm = sine(1, 300);
        double[] lively = sine(Math.sqrt(2.9), 300);
        double[] struck = sine(Math.sqrt(3.1), 300);
        FastBlocks blocks =
                of(sine(9, 300), struck, calm, calm, calm, calm, calm, lively, calm, calm);
        assertEquals(5, blocks.size());
        blocks.dropStruck();
        assertEquals(4, blocks.size());
        assertEquals(0.5, blocks.ofFirst().power(), 1e-6);
        assertEquals(0.5 * (3 + 2.9) / 4, blocks.ofSecond().power(), 1e-6);
        FastBlocks none = of();
        none.dropStruck();
        assertEquals(0, none.size());
    }

    @Test
    void aBlockIsReadFromItsPlace() {
        double[] x = new double[1200];
        System.arraycopy(sine(2, 300), 0, x, 100, 1024);
        FastBlocks blocks = new FastBlocks(BAND, RATE);
        blocks.add(x, x, 100);
        assertEquals(2, blocks.ofFirst().power(), 1e-6);
    }
}
