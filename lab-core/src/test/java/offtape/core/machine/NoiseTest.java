package offtape.core.machine;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.function.DoubleUnaryOperator;
import offtape.core.dsp.RealFft;
import offtape.core.dsp.Spectrum;
import offtape.core.machine.Bench.Line;
import offtape.reference.ReferenceTable;
import offtape.reference.Source;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class NoiseTest {

    private static final int RATE_HZ = 48_000;
    private static final int POINTS = 1 << 20;

    /**
     * Power in a band of B = 22.4 kHz over T = 21.8 s has a relative standard deviation of 1/√(BT)
     * = 0.14 %, 0.006 dB; the bound is four of them. With a tilt the band is narrower in effect, by
     * less than four, so the bound is doubled.
     */
    @ParameterizedTest
    @CsvSource({"0, 0.025", "3, 0.05", "-3, 0.1", "6, 0.05"})
    void hissHasItsLevelInItsBand(double tilt, double toleranceDb) {
        double[][] out = silence("'hiss':{'levelDb':-58,'rightDb':-52,'tiltDbPerOctave':" + tilt);
        assertEquals(-58, bandDb(out[0], 22.4, 22_400), toleranceDb);
        assertEquals(-52, bandDb(out[1], 22.4, 22_400), toleranceDb);
    }

    /** A slope of 3 dB an octave: octaves of equal relative width differ by 3 + 3 dB. */
    @Test
    void tiltRaisesEachOctave() {
        double[] left = silence("'hiss':{'levelDb':-58,'tiltDbPerOctave':3")[0];
        double low = bandDb(left, 1000, 2000);
        double middle = bandDb(left, 4000, 8000);
        double slope = 20 * Math.log10(2) / 2;
        // Two octaves at 10·lg 2 for the bandwidth and 3 dB for the density each; 1 kHz over
        // 21.8 s: 0.03 dB standard deviation.
        assertEquals(2 * (slope + 3), middle - low, 0.12);
    }

    /** The two channels hiss independently: correlation of 2^20 samples within 4/1024. */
    @Test
    void channelsHissIndependently() {
        double[][] out = silence("'hiss':{'levelDb':-40");
        double cross = 0;
        double own = 0;
        for (int i = 0; i < POINTS; i++) {
            cross += out[0][i] * out[1][i];
            own += out[0][i] * out[0][i];
        }
        assertTrue(Math.abs(cross / own) < 4 / 1024.0);
        assertNotEquals(out[0][100], out[1][100]);
    }

    /**
     * White noise behind A, from the published table by the trapezoidal rule over its third
     * octaves: Σ of 10^(A/10)·Δf. The table is rounded to 0.1 dB and its steps are wide: 0.1 dB.
     */
    @Test
    @Source("IEC 61672-1, Table 3")
    void aWeightedLevelOfWhiteNoiseFollowsTheTable() {
        ReferenceTable table = ReferenceTable.load("a-weighting");
        double sum = 0;
        for (int row = 0; row < table.size(); row++) {
            double a = table.number(row, "a");
            double middle =
                    1000
                            * Math.pow(
                                    10,
                                    Math.rint(
                                                    10
                                                            * Math.log10(
                                                                    table.number(row, "frequency")
                                                                            / 1000))
                                            / 10);
            double width = middle * (Math.pow(10, 0.05) - Math.pow(10, -0.05));
            double top = Math.min(22_400, middle * Math.pow(10, 0.05));
            double bottom = middle * Math.pow(10, -0.05);
            sum += top > bottom ? Math.pow(10, a / 10) * Math.min(width, top - bottom) : 0;
        }
        double expected = -58 + 10 * Math.log10(sum / (22_400 - 22.4));
        NoiseTruth truth = truth("'hiss':{'levelDb':-58}");
        assertEquals(-58, truth.unweighted(), 1e-6);
        assertEquals(expected, truth.aWeighted(), 0.1);
    }

    @Test
    void humHasItsLines() {
        double[] left =
                silence(
                        "'hum':{'mainsHz':50,'lines':[{'harmonic':1,'levelDb':-60},"
                                + "{'harmonic':3,'levelDb':-70}]")[0];
        Line first = Bench.line(left, RATE_HZ, 0, 20, 50);
        assertEquals(-60, first.levelDb(), 1e-6);
        assertEquals(-70, Bench.line(left, RATE_HZ, 0, 20, 150).levelDb(), 1e-6);
        // −60 and −70 dB together: 10·lg(10^−6 + 10^−7) dB.
        NoiseTruth truth =
                truth(
                        "'hum':{'lines':[{'harmonic':1,'levelDb':-60},{'harmonic':3,'levelDb':-70}]}");
        assertEquals(10 * Math.log10(1.1e-6), truth.unweighted(), 1e-6);
        assertEquals(150, truth.hum().get(1).frequencyHz(), 0);
    }

    /** Rounding to 16 bits with triangular dither: Δ²/12 + Δ²/6 = Δ²/4, Δ = 2^−15. */
    @Test
    void roundingAddsItsNoise() {
        double[] left = silence("'recorder':{'bits':16,'tailSeconds':1")[0];
        double power = 0;
        for (int i = 0; i < POINTS; i++) {
            power += left[i] * left[i];
            assertEquals(0, left[i] * 32_768 - Math.rint(left[i] * 32_768), 0);
        }
        double expected = Math.pow(2, -30) / 4;
        // Relative standard deviation of the mean square: about √2/1024.
        assertEquals(expected, power / POINTS, 0.006 * expected);
    }

    @Test
    void quietMachineHasNoNoiseFigure() {
        assertNull(truth("").unweighted());
        double[] left = silence("'mode':'off-tape','hum':{")[0];
        for (double x : left) {
            assertEquals(0, x, 0);
        }
    }

    /** In loopback only the interface is heard. */
    @Test
    void loopbackLeavesTheMachineOut() {
        double[] left =
                silence(
                        "'mode':'loopback','hiss':{'levelDb':-20},"
                                + "'recorder':{'noiseDbfs':-100")[0];
        double rms = Math.sqrt(bandPower(left, 0, 24_000));
        assertEquals(-100, 20 * Math.log10(rms * Math.sqrt(2)), 0.025);
    }

    private static double[][] silence(String openMembers) {
        return Bench.play(
                Bench.machine(openMembers + "}"), RATE_HZ, (POINTS + 100.0) / RATE_HZ, ZERO);
    }

    private static final DoubleUnaryOperator ZERO = t -> 0;

    private static NoiseTruth truth(String members) {
        return Bench.run(Bench.machine(members), RATE_HZ, 2).truth().noise().get(0);
    }

    private static double bandDb(double[] x, double low, double high) {
        double reference = Bench.REFERENCE_PEAK * Bench.REFERENCE_PEAK / 2;
        return 10 * Math.log10(bandPower(x, low, high) / reference);
    }

    private static double bandPower(double[] x, double low, double high) {
        Spectrum spectrum = RealFft.ofSize(POINTS).forward(x, 0, POINTS);
        double sum = 0;
        for (int k = 1; k < POINTS / 2; k++) {
            double f = k * (double) RATE_HZ / POINTS;
            sum += f >= low && f <= high ? 2 * spectrum.power(k) : 0;
        }
        return sum / POINTS / POINTS;
    }
}
