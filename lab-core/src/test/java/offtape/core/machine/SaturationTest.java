package offtape.core.machine;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.function.DoubleUnaryOperator;
import offtape.core.dsp.RealFft;
import offtape.core.dsp.Spectrum;
import offtape.core.machine.Bench.Line;
import offtape.core.machine.spec.MachineSpec;
import org.apache.commons.math3.analysis.integration.SimpsonIntegrator;
import org.apache.commons.math3.analysis.solvers.BrentSolver;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class SaturationTest {

    private static final int RATE_HZ = 48_000;

    /**
     * x − a·x³ of a sine of peak A: K3 = (aA²/4)/(1 − 3aA²/4). With K3 = 3 % at +6 dB, aA² there is
     * 0.12/1.09, and at L dB it is that times 10^((L−6)/10).
     */
    @ParameterizedTest
    @CsvSource({"-10", "0", "3", "6", "9"})
    void cubicsThirdHarmonicIsItsClosedForm(double levelDb) {
        double aa = 0.12 / 1.09 * Math.pow(10, (levelDb - 6) / 10);
        double expected = aa / 4 / (1 - 3 * aa / 4);
        double[] left =
                play("'saturation':{'kind':'cubic','levelAtK3ThreePercentDb':6}", 1000, levelDb);
        double fundamental = line(left, 1000).peak();
        assertEquals(expected, line(left, 3000).peak() / fundamental, 2e-6);
        double fromLine = Bench.REFERENCE_PEAK * Math.pow(10, levelDb / 20) * (1 - 3 * aa / 4);
        assertEquals(fromLine, fundamental, 2e-6 * fromLine);
    }

    /** The Fourier integrals 1/π·∫tanh(D·sin θ)·sin nθ dθ by Simpson's rule, D from K3 = 3 %. */
    @ParameterizedTest
    @CsvSource({"-6", "0", "6", "12"})
    void tanhsHarmonicsAreItsFourierIntegrals(double levelDb) {
        double atThree =
                new BrentSolver(1e-13)
                        .solve(200, d -> fourier(d, 3) / fourier(d, 1) - 0.03, 0.1, 3);
        double drive = atThree * Math.pow(10, (levelDb - 6) / 20);
        double[] left = play("'saturation':{'levelAtK3ThreePercentDb':6}", 1000, levelDb);
        for (int n = 3; n <= 7; n += 2) {
            double expected = fourier(drive, n) / fourier(drive, 1);
            double measured = line(left, 1000.0 * n).peak() / line(left, 1000).peak();
            assertEquals(expected, measured, 2e-6, "harmonic " + n);
        }
    }

    /** The even part c·y² has, at reference, exactly the stated second harmonic and no third. */
    @Test
    void secondHarmonicIsAsStatedAtReference() {
        String saturation =
                "'saturation':{'levelAtK3ThreePercentDb':30,'secondHarmonicPercent':0.8}";
        double[] left = play(saturation, 1000, 0);
        double fundamental = line(left, 1000).peak();
        // Behind the curve runs a first-order high-pass at 1 Hz: 5e-7 at 1 kHz.
        assertEquals(0.008, line(left, 2000).peak() / fundamental, 2e-6);
        assertTrue(Math.abs(mean(left)) < 1e-6, "no constant part is left");
    }

    /**
     * Ahead of the curve runs (1 − p/z)/(1 − p), behind it the inverse, p = exp(−1/(τ·rate)). A
     * tone f meets the curve raised by g(f) = |1 − p·e^(−iω)|/(1 − p), and its third harmonic is
     * lowered by g(3f) where it is lowered by g(f).
     */
    @Test
    void emphasisSaturatesHighsEarlier() {
        double f = 2000;
        double aa = 0.12 / 1.09 * Math.pow(10, -6.0 / 10) * Math.pow(emphasis(f), 2);
        double expected = aa / 4 / (1 - 3 * aa / 4) * emphasis(f) / emphasis(3 * f);
        String saturation =
                "'saturation':{'kind':'cubic','levelAtK3ThreePercentDb':6,"
                        + "'emphasisMicroseconds':50}";
        double[] left = play(saturation, f, 0);
        assertEquals(expected, line(left, 3 * f).peak() / line(left, f).peak(), 3e-6);
    }

    /** A 10 kHz tone at +12 dB has its harmonics beyond the band; nothing may fold back. */
    @ParameterizedTest
    @CsvSource({"10000, 0", "9000, 0", "10000, 50", "1000, 50", "315, 50"})
    void laddersHaveNoAliases(double frequencyHz, double emphasis) {
        double[] left =
                play(
                        "'saturation':{'levelAtK3ThreePercentDb':6,'emphasisMicroseconds':"
                                + emphasis
                                + "}",
                        frequencyHz,
                        12);
        Spectrum spectrum = windowed(left);
        double carrier = spectrum.magnitude(bin(frequencyHz));
        double worst = 0;
        for (int k = bin(20); k < bin(20_000); k++) {
            double nearest = Math.rint(k * hertzPerBin() / frequencyHz) * frequencyHz;
            if (Math.abs(k * hertzPerBin() - nearest) > 20 || nearest == 0) {
                worst = Math.max(worst, spectrum.magnitude(k) / carrier);
            }
        }
        assertTrue(worst > 0 && worst < 1e-5, "alias of " + 20 * Math.log10(worst) + " dB");
    }

    /** Level of K3 = 1 % on the cubic: aA² = 0.04/1.03 against 0.12/1.09 at 3 %. */
    @Test
    void truthStatesTheLevelsOfTheThirdHarmonic() {
        MachineSpec spec =
                Bench.machine("'saturation':{'kind':'cubic','levelAtK3ThreePercentDb':6}");
        DistortionTruth truth =
                DistortionTruth.of("left", Bench.run(spec, RATE_HZ, 2).tone(0), 1000);
        double one = 6 + 10 * Math.log10(0.04 / 1.03 / (0.12 / 1.09));
        assertEquals(6, truth.levelAtK3ThreePercent(), 1e-4);
        assertEquals(one, truth.levelAtK3OnePercent(), 1e-4);
        // Re the returned reference: 1 − 3aA²/4 at +6 dB against that at 0 dB.
        double aa = 0.12 / 1.09;
        double reference = 1 - 0.75 * aa * Math.pow(10, -0.6);
        double maximum = 6 + 20 * Math.log10((1 - 0.75 * aa) / reference);
        assertEquals(maximum, truth.maximumOutputLevel(), 1e-4);
        assertNotNull(truth.levelAtCompressionOneDb());
    }

    /** Truth of the whole chain against the return: emphasis, losses, edges and gains together. */
    @Test
    void truthOfTheChainIsWhatReturns() {
        String chain =
                "'saturation':{'levelAtK3ThreePercentDb':5,'emphasisMicroseconds':35,"
                        + "'secondHarmonicPercent':0.3},"
                        + "'heads':{'gapMicrometres':4,'spacingLossMicrometres':1},"
                        + "'electronics':{'upperEdgeHz':9000,'lowerEdgeHz':40,'recordGainDb':2,"
                        + "'replayGainDb':-3},'transport':{'speedDeviationPercent':-1}";
        double[] left = play(chain, 1000, 3);
        SteadyTone tone = Bench.run(Bench.machine(chain), RATE_HZ, 2.5).tone(0);
        for (int n = 1; n <= 5; n++) {
            double expected = tone.peak(n, 1000, 3);
            assertEquals(expected, line(left, 990.0 * n).peak(), 2e-7, "harmonic " + n);
        }
    }

    @Test
    void tapeWithoutSaturationHasNone() {
        DistortionTruth truth =
                DistortionTruth.of("left", Bench.run(Bench.machine(""), RATE_HZ, 2).tone(0), 1000);
        assertNull(truth.levelAtK3ThreePercent());
        assertEquals(0, truth.steps().get(30).k3Percent(), 0);
    }

    /** The table's error bound of 4e-11 at arbitrary places. */
    @Test
    void tabulatedTanhIsTanh() {
        TanhCurve curve = TanhCurve.of(1, 0.03);
        double g = 1 / curve.of(1e6);
        for (double x = -9; x < 9; x += 0.00731) {
            assertEquals(Math.tanh(g * x) / g, curve.of(x), 4e-11 / g);
        }
    }

    private static double fourier(double drive, int n) {
        DoubleUnaryOperator f = t -> Math.tanh(drive * Math.sin(t)) * Math.sin(n * t);
        // Symmetric about π/2 for odd n.
        return 4
                / Math.PI
                * new SimpsonIntegrator(1e-12, 1e-14, 5, 20)
                        .integrate(1 << 22, f::applyAsDouble, 0, Math.PI / 2);
    }

    private static double emphasis(double frequencyHz) {
        double p = Math.exp(-1 / (50e-6 * RATE_HZ));
        double omega = 2 * Math.PI * frequencyHz / RATE_HZ;
        return Math.hypot(1 - p * Math.cos(omega), p * Math.sin(omega)) / (1 - p);
    }

    private static double[] play(String members, double frequencyHz, double levelDb) {
        return Bench.play(Bench.machine(members), RATE_HZ, 2.5, Bench.sine(frequencyHz, levelDb))[
                0];
    }

    private static Line line(double[] x, double frequencyHz) {
        return Bench.line(x, RATE_HZ, 0.5, 2, frequencyHz);
    }

    private static double mean(double[] x) {
        double sum = 0;
        for (int i = RATE_HZ; i < 2 * RATE_HZ; i++) {
            sum += x[i];
        }
        return sum / RATE_HZ;
    }

    private static Spectrum windowed(double[] x) {
        double[] part = new double[1 << 16];
        for (int i = 0; i < part.length; i++) {
            double u = 2 * Math.PI * i / part.length;
            double hann = (1 - Math.cos(u)) / 2;
            part[i] = x[RATE_HZ / 2 + i] * hann * hann * hann;
        }
        return RealFft.ofSize(1 << 16).forward(part);
    }

    private static double hertzPerBin() {
        return (double) RATE_HZ / (1 << 16);
    }

    private static int bin(double frequencyHz) {
        return (int) Math.round(frequencyHz / hertzPerBin());
    }
}
