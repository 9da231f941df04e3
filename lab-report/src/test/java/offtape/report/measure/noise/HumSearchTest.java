package offtape.report.measure.noise;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.List;
import java.util.Random;
import java.util.stream.IntStream;
import offtape.report.result.HumLine;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class HumSearchTest {

    private static final int RATE = 8000;

    /** Enough for music whose highest partial lies at 1047 Hz. */
    private static final int MUSIC_RATE = 4000;

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
        List<HumLine> lines = HumSearch.find(x, RATE, REFERENCE).lines();
        assertEquals(
                List.of(1L, 2L, 3L),
                lines.stream().map(l -> Math.round(l.frequencyHz() / mainsHz)).toList());
        assertEquals(-40, lines.get(0).levelDb(), 0.1);
        assertEquals(-60, lines.get(1).levelDb(), 0.5);
        assertEquals(-50.46, lines.get(2).levelDb(), 0.2);
    }

    @Test
    void hissHasNoLines() {
        for (int seed = 0; seed < 5; seed++) {
            assertEquals(List.of(), lines(noise(1e-3, 4, seed)));
        }
        assertEquals(List.of(), lines(new double[4 * RATE]));
    }

    /** A motor's line at 23.8 Hz and a whistle at 3.1 kHz are not the mains. */
    @Test
    void otherLinesAreNotTaken() {
        double[] x = noise(1e-4, 10, 2);
        add(x, 23.8, 1e-3);
        add(x, 3125, 1e-2);
        assertEquals(List.of(), lines(x));
    }

    /** 300 Hz belongs to both systems; the rest decides. */
    @Test
    void theSystemThatExplainsMoreIsTaken() {
        double[] x = noise(1e-5, 10, 3);
        add(x, 300, 1e-3);
        add(x, 180, 2e-4);
        double[] hz = lines(x).stream().mapToDouble(HumLine::frequencyHz).toArray();
        assertArrayEquals(new double[] {180, 300}, hz, 0.02);
    }

    /**
     * True mains are seldom exact. Lines of 10 dB over the density of the noise in 1 Hz: with hiss
     * of rms r at 8 kHz the density is r²/4000 a hertz, and a peak a has the mean square a²/2.
     */
    @ParameterizedTest
    @CsvSource({"49.95, 10", "60.02, 10", "49.95, 4", "60.02, 4", "50.2, 10"})
    void faintLinesAreFoundAtTheirFrequency(double mainsHz, double seconds) {
        double rms = 1e-3;
        double peak = Math.sqrt(2 * 10 * rms * rms / 4000);
        int held = 0;
        int found = 0;
        int levels = 0;
        for (int seed = 0; seed < 10; seed++) {
            double[] x = noise(rms, seconds, seed);
            for (int m : new int[] {1, 2, 3}) {
                add(x, m * mainsHz, peak);
            }
            Hum hum = HumSearch.find(x, RATE, REFERENCE);
            assertTrue(hum.mainsFrequency().isKnown(), "seed " + seed);
            double off = Math.abs(hum.mainsFrequency().value() - mainsHz);
            held += off <= hum.mainsFrequency().uncertainty() ? 1 : 0;
            double level = 20 * Math.log10(peak / 0.1);
            for (HumLine line : hum.lines()) {
                found++;
                levels += Math.abs(line.levelDb() - level) <= line.uncertaintyDb() ? 1 : 0;
            }
            double threshold = hum.threshold().value();
            assertTrue(threshold < level, threshold + " against " + level);
        }
        System.out.printf(
                "%.2f Hz in %.0f s: frequency holds in %d of 10, level in %d of %d lines of 30%n",
                mainsHz, seconds, held, levels, found);
        // 19 of 20 are promised; fewer than 26 of 30 then come up once in 300 trials.
        assertTrue(held >= 9 && found >= 27, held + " and " + found);
        assertTrue(levels >= 26, levels + " of " + found);
    }

    /** Noise alone gives hum in one silence of a thousand; of 60 none. */
    @ParameterizedTest
    @CsvSource({"1.1, 20", "4, 20", "10, 10"})
    void noiseAloneIsNoHum(double seconds, int draws) {
        for (int seed = 100; seed < 100 + draws; seed++) {
            assertEquals(List.of(), lines(noise(1e-3, seconds, seed)), "seed " + seed);
        }
    }

    /**
     * Something like music: every half second a chord of decaying notes of a bass in equal
     * temperament (G 49.0, A sharp 58.27, B 61.74 Hz and above) with four partials each, the
     * highest of 1047 Hz, and vibrato.
     */
    @Test
    void musicIsNoHum() {
        for (int seed = 0; seed < 24; seed++) {
            double[] x = noise(1e-5, 6.0 * MUSIC_RATE / RATE, seed);
            Random random = new Random(seed);
            for (double at = 0; at < 6; at += 0.5) {
                for (int voice = 0; voice < 3; voice++) {
                    double hz = 55 * Math.pow(2, (random.nextInt(30) - 2) / 12.0);
                    note(x, MUSIC_RATE, at, hz, 1e-2, 1 + 3 * random.nextDouble(), 0.01);
                }
            }
            assertEquals(
                    List.of(), HumSearch.find(x, MUSIC_RATE, REFERENCE).lines(), "seed " + seed);
        }
    }

    /** Held notes: a steady A of 440 Hz; G of 49 Hz that decays in 4 s or has vibrato. */
    @Test
    void heldNotesAreNoHum() {
        double[] steady = noise(1e-5, 8, 1);
        note(steady, RATE, 0, 440, 1e-2, 0, 0);
        assertEquals(List.of(), lines(steady));
        double[] decaying = noise(1e-5, 8, 2);
        note(decaying, RATE, 0, 49.0, 1e-2, 0.25, 0);
        assertEquals(List.of(), lines(decaying));
        double[] vibrato = noise(1e-5, 8, 3);
        note(vibrato, RATE, 0, 49.4, 1e-2, 0, 0.015);
        assertEquals(List.of(), lines(vibrato));
    }

    /** Hum is found beside music all the same. */
    @Test
    void humBesideMusicIsFound() {
        double[] x = noise(1e-5, 8, 4);
        note(x, RATE, 0, 440, 1e-2, 0, 0);
        note(x, RATE, 1, 110, 1e-2, 1.5, 0.01);
        add(x, 50.03, 1e-3);
        add(x, 150.09, 5e-4);
        Hum hum = HumSearch.find(x, RATE, REFERENCE);
        assertEquals(50.03, hum.mainsFrequency().value(), hum.mainsFrequency().uncertainty());
        assertEquals(2, hum.lines().size());
    }

    /** A tape replayed 1.6 % slow holds its recorded hum at 49.2 Hz: several plain lines count. */
    @Test
    void plainLinesOffTheUsualFrequencyAreFound() {
        double[] x = noise(1e-5, 6, 5);
        for (int m : new int[] {1, 2, 3, 5}) {
            add(x, m * 49.2, 1e-3 / m);
        }
        Hum hum = HumSearch.find(x, RATE, REFERENCE);
        assertEquals(49.2, hum.mainsFrequency().value(), hum.mainsFrequency().uncertainty());
        assertEquals(4, hum.lines().size());
    }

    /**
     * Off the frequencies that mains keep, more than 0.3 Hz from nominal, three plain lines are
     * asked for, two of them of order 1 to 3; within them one of these will do.
     */
    @ParameterizedTest
    @CsvSource({
        "49.75, 1 0 0, 1",
        "49.5, 1 0 0, 0",
        "49.5, 1 2 0, 0",
        "49.5, 1 5 7, 0",
        "49.5, 1 3 7, 3",
        "50, 4 5 7, 0",
        "50, 3 5 7, 3",
        "60.2, 2 0 0, 1",
        "59.5, 1 2 0, 0"
    })
    void whatCountsHangsOnTheFrequency(double mainsHz, String orders, int lines) {
        double[] x = noise(1e-4, 6, 6);
        for (String order : orders.split(" ")) {
            if (!order.equals("0")) {
                add(x, Integer.parseInt(order) * mainsHz, 1e-3);
            }
        }
        assertEquals(lines, lines(x).size());
    }

    /**
     * Hiss of rms 10⁻³ up to 4 kHz has 2.5·10⁻¹⁰ a hertz, so in 10 s under Hann's window lines of
     * 1.5 times a tenth of it. Places are 2·2 Hz·(1 + 2 + 3)·10 s = 240: noise alone exceeds ln(240
     * / 0.001) = 12.39 times the mean at one of them once in a thousand silences. The loudest of
     * six medians counts, which scatter by a tenth.
     */
    @Test
    void theThresholdIsThatOfFewFalseAlarms() {
        Hum hum = HumSearch.find(noise(1e-3, 10, 8), RATE, REFERENCE);
        double expected = 10 * Math.log10(12.39 * 1.5 * 2.5e-11 / REFERENCE);
        assertEquals(expected + 0.5, hum.threshold().value(), 0.8);
        assertEquals(1, hum.threshold().uncertainty());
        assertEquals("dB", hum.threshold().unit());
    }

    /**
     * A line R times its noise of 3.75·10⁻¹¹: with R = 100 its power scatters by √(2/R + 1/R²) =
     * 0.1418, 20·lg 1.1418 = 1.15 dB for k = 2, and its frequency by 2·1.5·√(3/R)/(π·10 s) = 0.0165
     * Hz; with R = 10⁵, read with what lies beside it, by √(2/R) = 0.00447, 0.039 dB.
     */
    @ParameterizedTest
    @CsvSource({"100, 1.15, 0.25, 0.0165, 0.003", "1e5, 0.044, 0.005, 0.0052, 0.0052"})
    void theUncertaintyIsThatOfTheNoiseBeside(
            double over, double levelDb, double withinDb, double hz, double withinHz) {
        double[] x = noise(1e-3, 10, 9);
        add(x, 50, Math.sqrt(2 * over * 3.75e-11));
        Hum hum = HumSearch.find(x, RATE, REFERENCE);
        assertEquals(1, hum.lines().size());
        assertEquals(levelDb, hum.lines().get(0).uncertaintyDb(), withinDb);
        assertEquals(hz, hum.mainsFrequency().uncertainty(), withinHz);
        assertEquals("Hz", hum.mainsFrequency().unit());
    }

    /** A second is enough, a sample less is not. */
    @ParameterizedTest
    @CsvSource({"8000, true", "7999, false"})
    void aSecondIsEnough(int samples, boolean told) {
        double[] x = Arrays.copyOf(noise(1e-3, 1, 1), samples);
        assertEquals(told, HumSearch.find(x, RATE, REFERENCE).threshold().isKnown());
    }

    @Test
    void tooLittleSilenceSaysSo() {
        Hum hum = HumSearch.find(noise(1e-3, 0.9, 1), RATE, REFERENCE);
        assertEquals(
                "The recorded silence is too short to tell hum: 1 s is needed.",
                hum.threshold().reason());
    }

    private static List<HumLine> lines(double[] x) {
        return HumSearch.find(x, RATE, REFERENCE).lines();
    }

    /**
     * A note with four partials of 1/n, vibrato of 5.5 Hz, decaying by e each 1/{@code decay} s.
     */
    private static void note(
            double[] x, int rate, double at, double hz, double peak, double decay, double vibrato) {
        int from = (int) (at * rate);
        double fall = Math.exp(-decay / rate);
        double gain = peak;
        for (int i = from; i < x.length && gain > 1e-8; i++) {
            double t = (double) (i - from) / rate;
            double phase =
                    2
                            * Math.PI
                            * hz
                            * (t
                                    - vibrato
                                            / VIBRATO_TURN
                                            * VIBRATO[RATE / rate * (i - from) % CYCLE]);
            double sin = Math.sin(phase);
            double twice = 2 * Math.cos(phase);
            double last = 0;
            for (int n = 1; n <= 4; n++) {
                x[i] += gain / n * sin;
                // sin (n + 1)φ = 2·cos φ·sin nφ − sin (n − 1)φ
                double next = twice * sin - last;
                last = sin;
                sin = next;
            }
            gain *= fall;
        }
    }

    private static final double VIBRATO_TURN = 2 * Math.PI * 5.5;

    /** Eleven turns of a vibrato of 5.5 Hz. */
    private static final int CYCLE = 2 * RATE;

    private static final double[] VIBRATO =
            IntStream.range(0, CYCLE).mapToDouble(i -> Math.cos(VIBRATO_TURN * i / RATE)).toArray();

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
