package offtape.report.measure.speed;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Random;
import java.util.stream.IntStream;
import offtape.report.result.SpeedComponent;
import offtape.report.result.SpeedSpectrum;
import org.junit.jupiter.api.Test;

class SpeedLinesTest {

    private static final double RATE = 1000;

    @Test
    void linesAreFoundLargestFirstWithoutNames() {
        double[] x = noise(0.02, 60, 1);
        add(x, 0.53, 0.12);
        add(x, 9.547, 0.05);
        add(x, 50.03, 0.011);
        List<SpeedComponent> lines = components(x);
        assertEquals(3, lines.size());
        check(lines.get(0), 0.53, 0.12);
        check(lines.get(1), 9.547, 0.05);
        check(lines.get(2), 50.03, 0.011);
    }

    /**
     * A line of 2 Hz that follows a speed which rises by 0.2 % in 60 s ends 0.004 Hz higher: it
     * moves, but not as a reel does.
     */
    @Test
    void aLineThatFollowsTheSpeedIsToldFromAReel() {
        double[] x = noise(0.01, 60, 2);
        for (int i = 0; i < x.length; i++) {
            double t = i / RATE;
            double share = 0.002 * (t / 60 - 0.5);
            x[i] +=
                    100 * share
                            + 0.2 * Math.sin(2 * Math.PI * 2 * (t + 0.002 * (t * t / 120 - t / 2)));
        }
        SpeedComponent line = components(x).get(0);
        assertEquals(0.004, line.endFrequencyHz() - line.frequencyHz(), 0.0004);
        assertEquals("Moves with the speed of the tape.", line.note());
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
        assertEquals(hz, line.frequencyHz(), 0.001);
        assertEquals(percent, line.peakPercent(), 0.001);
        assertEquals(percent, line.peakPercent(), 2 * line.peakUncertaintyPercent());
        assertNull(line.part());
        assertNull(line.endFrequencyHz());
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

    private static List<SpeedComponent> components(double[] x) {
        SpeedLines lines = new SpeedLines(x, RATE);
        return lines.components(lines.found());
    }
}
