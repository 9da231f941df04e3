package offtape.report.measure.speed;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Random;
import java.util.stream.IntStream;
import offtape.report.result.SpeedComponent;
import offtape.report.result.SpeedSpectrum;
import org.junit.jupiter.api.Test;

class SpeedLinesTest {

    private static final double RATE = 1000;

    /** In noise of 0.02 % rms over 500 Hz; 60 s resolve 1/30 Hz. */
    @Test
    void linesAreFoundWithFrequencyAndHeight() {
        double[] x = noise(0.02, 60, 1);
        add(x, 0.53, 0.12);
        add(x, 9.547, 0.05);
        add(x, 50.03, 0.011);
        List<SpeedComponent> lines = new SpeedLines(x, RATE).components();
        assertEquals(3, lines.size());
        check(lines.get(0), 0.53, 0.12);
        check(lines.get(1), 9.547, 0.05);
        check(lines.get(2), 50.03, 0.011);
    }

    @Test
    void aLineMayLieBetweenTheBins() {
        for (double hz = 10; hz < 10.02; hz += 0.0017) {
            double[] x = new double[60_000];
            add(x, hz, 0.1);
            SpeedComponent line = new SpeedLines(x, RATE).components().get(0);
            assertEquals(hz, line.frequencyHz(), 0.0005);
            assertEquals(0.1, line.peakPercent(), 0.0002);
        }
    }

    /**
     * The magnitude of noise in a bin exceeds r times its median with a probability of 2^(−r²): for
     * r = 4.5 that is 8e-7, and 20 draws have 20 · 4000 independent bins below 200 Hz.
     */
    @Test
    void noiseHasNoLines() {
        assertEquals(List.of(), new SpeedLines(new double[20_000], RATE).components());
        int found = 0;
        for (int seed = 0; seed < 20; seed++) {
            found += new SpeedLines(noise(0.05, 20, seed), RATE).components().size();
        }
        assertTrue(found <= 1, found + " lines in noise");
    }

    /** The highest bin lies within a quarter of Hann's bin of the top, where its lobe is 0.96. */
    @Test
    void theSpectrumShowsTheLineAtItsHeight() {
        double[] x = new double[60_000];
        add(x, 10, 0.1);
        SpeedSpectrum spectrum = new SpeedLines(x, RATE).spectrum();
        int best = 0;
        for (int i = 0; i < spectrum.frequencyHz().length; i++) {
            best = spectrum.peakPercent()[i] > spectrum.peakPercent()[best] ? i : best;
        }
        assertEquals(10, spectrum.frequencyHz()[best], 0.02);
        assertEquals(0.098, spectrum.peakPercent()[best], 0.0021);
        assertTrue(spectrum.frequencyHz().length <= 361);
    }

    private static void check(SpeedComponent line, double hz, double percent) {
        assertEquals(hz, line.frequencyHz(), 0.005);
        assertEquals(percent, line.peakPercent(), 0.04 * percent);
    }

    private static double[] noise(double rms, double seconds, long seed) {
        Random random = new Random(seed);
        return IntStream.range(0, (int) (seconds * RATE))
                .mapToDouble(i -> rms * random.nextGaussian())
                .toArray();
    }

    private static void add(double[] x, double hz, double peak) {
        for (int i = 0; i < x.length; i++) {
            x[i] += peak * Math.sin(2 * Math.PI * hz * i / RATE + 0.4);
        }
    }
}
