package offtape.report.measure.noise;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import java.util.Random;
import java.util.stream.IntStream;
import offtape.report.result.HumLine;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class HumSearchTest {

    private static final int RATE = 48_000;

    /** Mean square of a reference tone of peak 0.1. */
    private static final double REFERENCE = 0.005;

    /** Lines of peak a are 20·lg(a / 0.1) re reference: −40, −60 and −50.46 dB. */
    @ParameterizedTest
    @CsvSource({"50, 10", "60, 10", "50, 4", "60, 4", "50.05, 10", "59.95, 10"})
    void linesAreFoundWithTheirLevels(double mainsHz, double seconds) {
        double[] x = noise(1e-4, seconds, 1);
        add(x, mainsHz, 1e-3);
        add(x, 2 * mainsHz, 1e-4);
        add(x, 3 * mainsHz, 3e-4);
        List<HumLine> lines = HumSearch.find(x, RATE, REFERENCE);
        assertEquals(
                List.of(1L, 2L, 3L),
                lines.stream().map(l -> Math.round(l.frequencyHz() / mainsHz)).toList());
        assertEquals(-40, lines.get(0).levelDb(), 0.1);
        assertEquals(-60, lines.get(1).levelDb(), 0.5);
        assertEquals(-50.46, lines.get(2).levelDb(), 0.2);
    }

    @Test
    void hissHasNoLines() {
        for (int seed = 0; seed < 10; seed++) {
            assertEquals(List.of(), HumSearch.find(noise(1e-3, 4, seed), RATE, REFERENCE));
        }
        assertEquals(List.of(), HumSearch.find(new double[4 * RATE], RATE, REFERENCE));
    }

    /** A motor's line at 23.8 Hz and a whistle at 15.6 kHz are not the mains. */
    @Test
    void otherLinesAreNotTaken() {
        double[] x = noise(1e-4, 10, 2);
        add(x, 23.8, 1e-3);
        add(x, 15_625, 1e-2);
        assertEquals(List.of(), HumSearch.find(x, RATE, REFERENCE));
    }

    /** 300 Hz belongs to both systems; the rest decides. */
    @Test
    void theSystemThatExplainsMoreIsTaken() {
        double[] x = noise(1e-5, 10, 3);
        add(x, 300, 1e-3);
        add(x, 180, 2e-4);
        assertEquals(
                List.of(180.0, 300.0),
                HumSearch.find(x, RATE, REFERENCE).stream().map(HumLine::frequencyHz).toList());
    }

    private static double[] noise(double rms, double seconds, long seed) {
        Random random = new Random(seed);
        return IntStream.range(0, (int) (seconds * RATE))
                .mapToDouble(i -> rms * random.nextGaussian())
                .toArray();
    }

    private static void add(double[] x, double hz, double peak) {
        for (int i = 0; i < x.length; i++) {
            x[i] += peak * Math.sin(2 * Math.PI * hz * i / RATE + hz);
        }
    }
}
