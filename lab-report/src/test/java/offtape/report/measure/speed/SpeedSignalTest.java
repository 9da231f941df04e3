package offtape.report.measure.speed;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Random;
import java.util.function.DoubleUnaryOperator;
import java.util.stream.IntStream;
import offtape.core.audio.MemoryAudio;
import offtape.core.dsp.PowerDensity;
import offtape.reference.ReferenceTable;
import offtape.reference.Source;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class SpeedSignalTest {

    private static final int RATE = 48_000;
    private static final double TONE = 3150;

    /**
     * A tone of phase 2π·3150·((1 + m)·t − d/(2πf)·cos 2πft) deviates by m + d·sin 2πft. Its level
     * is modulated by 30 % at 7 Hz besides, which must not show.
     */
    @ParameterizedTest
    @CsvSource({"0.5, 0.3", "4, 0.1", "9.55, 0.2", "50, 0.1", "150, 0.05"})
    void deviationIsRecovered(double hz, double percent) {
        double mean = 0.05;
        MemoryAudio audio =
                audio(
                        4,
                        t ->
                                0.1
                                        * (1 + 0.3 * Math.sin(2 * Math.PI * 7 * t))
                                        * Math.sin(phase(t, mean, percent, hz)));
        SpeedSignal signal = SpeedSignal.of(audio, 0.2, 3.8, TONE, TONE * 1.0004);
        double worst = 0;
        for (int k = 0; k < signal.percent().length; k++) {
            double t = signal.firstSeconds() + k / signal.rateHz();
            double expected = mean + percent * Math.sin(2 * Math.PI * hz * t);
            worst = Math.max(worst, Math.abs(signal.percent()[k] - expected));
        }
        System.out.printf("deviation of %.2f %% at %.2f Hz: worst %.1e %%%n", percent, hz, worst);
        // The differentiator's 1e-4, and the filter's 3e-5 of phase at up to 200 Hz over 3150 Hz.
        assertTrue(worst < 1e-4 * percent + 2e-4, "worst " + worst);
    }

    /**
     * White noise of variance σ² beside a tone of peak A: N0 = 2σ²/fs, C = A²/2, and half of the
     * noise turns the phase: one-sided Sφ = N0 / C. As speed it rises with f: its rms from 20 to
     * 200 Hz is 100/3150·√(Sφ·(200³ − 20³)/3) percent. Channels combine as 1/S = 1/S1 + 1/S2.
     */
    @ParameterizedTest
    @CsvSource({"1e-3, 1e-3", "1e-3, 4e-3", "3e-4, 3e-2"})
    @Source("closed form of phase noise from additive white noise; Rife and Boorstyn 1974")
    void noiseIsToldAndWeighed(double left, double right) {
        MemoryAudio audio = noisy(0.1, 12, new double[] {left, right}, 5);
        SpeedSignal signal = SpeedSignal.of(audio, 0.2, 11.8, TONE, TONE);
        double one = 4 * left * left / RATE / 0.01;
        double two = 4 * right * right / RATE / 0.01;
        double density = 1 / (1 / one + 1 / two);
        assertEquals(density, signal.noiseDensity(), 0.1 * density);
        double expected = 100 / TONE * Math.sqrt(density * (200 * 200 * 200 - 20 * 20 * 20) / 3);
        double[] m = signal.modulation();
        double rms = Math.sqrt(PowerDensity.of(m, signal.rateHz(), 1024).power(20, 200, f -> 1));
        System.out.printf("noise as speed: %.5f %%, closed form %.5f %%%n", rms, expected);
        // 11 s of 180 Hz know an rms to 1/√(4 · 11 · 180) = 1.1 %, the two ends of the band more.
        assertEquals(expected, rms, 0.05 * expected);
    }

    /** No estimate of a tone's frequency scatters less than the bound; the mean of slopes more. */
    @Test
    @Source({"Rife and Boorstyn 1974", "Kay 1993"})
    void scatterKeepsTheCramerRaoBound() {
        ReferenceTable table = ReferenceTable.load("crlb");
        int row =
                IntStream.range(0, table.size())
                        .filter(r -> isOneSecond(table, r))
                        .findFirst()
                        .orElseThrow();
        double bound = table.number(row, "deviation");
        // 40 dB: σ² = A²/2/10⁴.
        double sigma = 0.1 / Math.sqrt(2) / 100;
        double squares = 0;
        int draws = 40;
        for (int d = 0; d < draws; d++) {
            MemoryAudio audio = noisy(0.1, 1.4, new double[] {sigma}, d);
            SpeedSignal signal = SpeedSignal.of(audio, 0.15, 1.2, TONE, TONE);
            squares += Math.pow(signal.mean() / 100 * TONE, 2) / draws;
        }
        double ratio = Math.sqrt(squares) / bound;
        System.out.printf(
                "mean frequency in 1 s at 40 dB: %.1f times the Cramér-Rao bound%n", ratio);
        // 40 draws know a deviation to 11 %.
        assertTrue(ratio > 0.8, "better than possible: " + ratio);
        // Phases at both ends, each of √(Sφ · 350 Hz) = 1.2 mrad: √2 · 1.2e-3 / 2π = 2.7e-4 Hz.
        assertTrue(ratio < 1.4 * 2.7e-4 / bound, "ratio " + ratio);
    }

    /** The channel whose tone is missing does not spoil the other. */
    @Test
    void aDeadChannelDoesNotEnter() {
        double[] left = samples(3, t -> 0.1 * Math.sin(phase(t, 0.02, 0.1, 4)));
        Random random = new Random(8);
        double[] right = samples(3, t -> 1e-4 * random.nextGaussian());
        SpeedSignal both =
                SpeedSignal.of(new MemoryAudio("r", RATE, left, right), 0.2, 2.8, TONE, TONE);
        SpeedSignal one = SpeedSignal.of(new MemoryAudio("l", RATE, left), 0.2, 2.8, TONE, TONE);
        for (int k = 0; k < one.percent().length; k++) {
            assertEquals(one.percent()[k], both.percent()[k], 1e-6);
        }
    }

    @Test
    void nothingIsReadFromSilenceOrTooLittle() {
        MemoryAudio silence = audio(3, t -> 0);
        assertNull(SpeedSignal.of(silence, 0.2, 2.8, TONE, TONE));
        MemoryAudio tone = audio(3, t -> Math.sin(2 * Math.PI * TONE * t));
        assertNull(SpeedSignal.of(tone, 0.2, 0.9, TONE, TONE));
        assertNull(SpeedSignal.of(tone, 2, 1, TONE, TONE));
    }

    private static boolean isOneSecond(ReferenceTable table, int row) {
        return table.number(row, "snr") == 40 && table.number(row, "duration") == 1;
    }

    private static double phase(double t, double mean, double percent, double hz) {
        double wow = percent / 100 / (2 * Math.PI * hz) * Math.cos(2 * Math.PI * hz * t);
        return 2 * Math.PI * TONE * ((1 + mean / 100) * t - wow);
    }

    private static MemoryAudio audio(double seconds, DoubleUnaryOperator sound) {
        return new MemoryAudio("tone", RATE, samples(seconds, sound));
    }

    private static MemoryAudio noisy(double peak, double seconds, double[] sigma, long seed) {
        Random random = new Random(seed);
        double[][] x = new double[sigma.length][];
        for (int c = 0; c < x.length; c++) {
            double s = sigma[c];
            x[c] =
                    samples(
                            seconds,
                            t ->
                                    peak * Math.sin(2 * Math.PI * TONE * t)
                                            + s * random.nextGaussian());
        }
        return new MemoryAudio("noisy", RATE, x);
    }

    private static double[] samples(double seconds, DoubleUnaryOperator sound) {
        return IntStream.range(0, (int) (seconds * RATE))
                .mapToDouble(i -> sound.applyAsDouble((double) i / RATE))
                .toArray();
    }
}
