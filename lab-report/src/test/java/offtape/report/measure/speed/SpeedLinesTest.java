package offtape.report.measure.speed;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.List;
import java.util.Random;
import java.util.stream.IntStream;
import offtape.core.standard.FlutterBand;
import offtape.report.measure.line.FoundLine;
import offtape.report.result.SpeedComponent;
import offtape.report.result.SpeedSpectrum;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

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

    /** 16384 values at 1024 a second, padded to twice as many: 10 Hz is bin 320, at its height. */
    @Test
    void theSpectrumIsOfAmplitudesFromFifteenHundredthsOfAHertzToTwoHundred() {
        double[] x = new double[16_384];
        Arrays.setAll(
                x,
                i ->
                        0.1 * Math.sin(2 * Math.PI * 10 * i / 1024)
                                + 0.3 * Math.sin(2 * Math.PI * 230 * i / 1024));
        SpeedSpectrum spectrum = new SpeedLines(x, 1024).spectrum();
        double[] hz = spectrum.frequencyHz();
        double[] percent = spectrum.peakPercent();
        // The first of the bins, 1/32 Hz apart, from 0.15 Hz on; the last below 200 Hz.
        assertEquals(5 / 32.0, hz[0]);
        assertTrue(hz[hz.length - 1] < 200 && hz[hz.length - 1] > 195);
        for (int i = 1; i < hz.length; i++) {
            assertTrue(hz[i] > hz[i - 1]);
        }
        int at = Arrays.binarySearch(hz, 10);
        assertEquals(0.1, percent[at], 1e-6);
        assertEquals(0.1, Arrays.stream(percent).max().orElseThrow(), 1e-6);
        assertEquals(0, percent[at + 9], 1e-5, "12 Hz");
    }

    /** Of a longer one, ten minutes: here at ten values a second, with a line after them. */
    @Test
    void whatComesAfterTenMinutesIsLeftOut() {
        double[] x = new double[7000];
        for (int i = 6000; i < 7000; i++) {
            x[i] = Math.sin(2 * Math.PI * i / 10);
        }
        double[] percent = new SpeedLines(x, 10).spectrum().peakPercent();
        assertEquals(0, Arrays.stream(percent).max().orElseThrow(), 1e-12);
    }

    /**
     * The bins of a line of 200 Hz, padded to twice as many, have three times the power of the
     * highest; of those a sharp edge passes one and half of the others, two thirds of all, and ours
     * a half. So they differ by a sixth of twice ours, as 2/√3.
     */
    @Test
    void theDoubtOfOtherMetersReachesPastTheBands() {
        double[] x = new double[16_384];
        Arrays.setAll(x, i -> 0.1 * Math.sin(2 * Math.PI * 200 * i / 1024));
        MeterDoubt doubt = new SpeedLines(x, 1024).meterDoubt();
        assertEquals(2 / Math.sqrt(3) / 6, doubt.share(FlutterBand.FLUTTER), 0.001);
        // A line of 250 Hz: ours has 1/(1 + 1.25²⁰) = 0.0114, a blunt one 1/(1 + 1.25¹²) = 0.0643.
        Arrays.setAll(x, i -> 0.1 * Math.sin(2 * Math.PI * 250 * i / 1024));
        double share = new SpeedLines(x, 1024).meterDoubt().share(FlutterBand.FLUTTER);
        assertEquals((0.06428 / 0.011399 - 1) / 2 * 2 / Math.sqrt(3), share, 0.02);
    }

    /** Hz a second are sixty a minute; 50 ppm of the recorder's clock go with the rate. */
    @Test
    void aFoundLineIsToldInTheUnitsOfTheResults() {
        FoundLine line = new FoundLine(80, 80.2, 0.003, 0.12, 0.01, 0.002, 0.0004);
        SpeedComponent told = new SpeedLines(ramp(0), RATE).components(List.of(line)).get(0);
        assertEquals(80, told.frequencyHz());
        assertEquals(0.005, told.frequencyUncertaintyHz(), 1e-12, "0.003 and 0.004");
        assertEquals(80.2, told.endFrequencyHz());
        assertEquals(0.12, told.frequencyChangeHzPerMinute(), 1e-12);
        assertEquals(0.024, told.frequencyChangeUncertaintyHzPerMinute(), 1e-12);
        assertEquals(0.12, told.peakPercent());
        assertEquals(0.01, told.peakUncertaintyPercent());
        FoundLine still = new FoundLine(2, 2, 0.003, 0.12, 0.01, 0, 0.0004);
        SpeedComponent steady = new SpeedLines(ramp(0), RATE).components(List.of(still)).get(0);
        assertNull(steady.endFrequencyHz());
        assertNull(steady.frequencyChangeHzPerMinute());
        assertNull(steady.note());
        assertEquals(0.024, steady.frequencyChangeUncertaintyHzPerMinute(), 1e-12);
        FoundLine fast = new FoundLine(50, 50, 0.003, 0.12, 0.01, 0, 0);
        SpeedComponent untried = new SpeedLines(ramp(0), RATE).components(List.of(fast)).get(0);
        assertNull(untried.frequencyChangeUncertaintyHzPerMinute());
    }

    /** With a drift of 0.2 % a line within 2 · 0.2 % + 0.03 % goes with the tape. */
    @ParameterizedTest
    @CsvSource({
        "0.0042, 0.2, Moves with the speed of the tape.",
        "0.0044, 0.2, 'Gets faster, as a supply reel does while it empties.'",
        "-0.0042, 0.2, Moves with the speed of the tape.",
        "-0.0044, 0.2, 'Gets slower, as a take-up reel does while it fills.'",
        "0.0042, -0.2, Moves with the speed of the tape.",
        "0.0044, -0.2, 'Gets faster, as a supply reel does while it empties.'",
        "0.0002, 0, Moves with the speed of the tape.",
        "0.0004, 0, 'Gets faster, as a supply reel does while it empties.'"
    })
    void aReelMovesMoreThanTheTapeDoes(double change, double driftPercent, String note) {
        FoundLine line = new FoundLine(2, 2 * (1 + change), 1e-4, 0.1, 0.01, 1e-5, 1e-6);
        SpeedLines lines = new SpeedLines(ramp(driftPercent), RATE);
        assertEquals(note, lines.components(List.of(line)).get(0).note());
    }

    /** A deviation that rises by so much from its beginning to its end. */
    private static double[] ramp(double percent) {
        double[] x = new double[2000];
        Arrays.setAll(x, i -> percent * ((double) i / x.length - 0.5));
        return x;
    }

    @Test
    void twelveLinesAreEnough() {
        double[] x = new double[20_000];
        for (int k = 0; k < 14; k++) {
            add(x, 10 + 9 * k, 0.1 - 0.005 * k);
        }
        List<FoundLine> found = new SpeedLines(x, RATE).found();
        assertEquals(12, found.size());
        assertEquals(10, found.get(0).startHz(), 0.01);
        assertEquals(0.045, found.get(11).peakPercent(), 0.001);
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
