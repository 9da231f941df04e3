package offtape.core.standard;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.OptionalDouble;
import offtape.core.unit.Decibels;
import offtape.reference.Source;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class ItuBs1770Test {

    /** Pairs of level (dBFS peak) and seconds of a tone, one behind the other. */
    private static double loudness(double rate, double hz, double[] weights, double[][] levels) {
        ItuBs1770 meter = ItuBs1770.weighted(rate, weights);
        long at = 0;
        for (double[] part : levels) {
            int frames = (int) Math.round(part[weights.length] * rate);
            double[][] block = new double[weights.length][frames];
            for (int c = 0; c < weights.length; c++) {
                double peak = Decibels.toAmplitude(part[c]);
                for (int i = 0; i < frames; i++) {
                    block[c][i] = peak * Math.sin(2 * Math.PI * hz / rate * (at + i));
                }
            }
            meter.add(block);
            at += frames;
        }
        return meter.integratedLufs().orElseThrow();
    }

    private static double stereo(double[]... levels) {
        double[][] both = new double[levels.length][];
        for (int i = 0; i < levels.length; i++) {
            both[i] = new double[] {levels[i][0], levels[i][0], levels[i][1]};
        }
        return loudness(48_000, 1000, new double[] {1, 1}, both);
    }

    @Test
    @Source("Rec. ITU-R BS.1770-4, Annex 1: 997 Hz at 0 dBFS on one front channel is -3.01 LKFS")
    void aToneOnOneChannelReadsWhatTheRecommendationSays() {
        for (double rate : new double[] {44_100, 48_000, 96_000, 192_000}) {
            double[][] fullScale = {{0, 2}};
            assertEquals(-3.01, loudness(rate, 997, new double[] {1}, fullScale), 0.01);
        }
    }

    /**
     * Levels and readings checked against public listings; lengths and signal 6 are from memory.
     */
    @Test
    @Source("EBU Tech 3341, Table 1, signals 1 to 6: integrated loudness within 0.1 LU")
    void theSignalsOfTheEbuReadWithinTheirLimits() {
        assertEquals(-23, stereo(new double[] {-23, 20}), 0.03);
        assertEquals(-33, stereo(new double[] {-33, 20}), 0.03);
        double[] low = {-36, 10};
        double[] main = {-23, 60};
        double[] lowest = {-72, 10};
        assertEquals(-23, stereo(low, main, low), 0.03);
        assertEquals(-23, stereo(lowest, low, main, low, lowest), 0.03);
        double[] edge = {-26, 20};
        assertEquals(-23, stereo(edge, new double[] {-20, 20.1}, edge), 0.03);
        double s = ItuBs1770.SURROUND_WEIGHT;
        double[][] five = {{-28, -28, -24, -30, -30, 20}};
        assertEquals(-23, loudness(48_000, 1000, new double[] {1, 1, 1, s, s}, five), 0.03);
    }

    /**
     * Coefficients are those printed at 48 kHz; elsewhere the response at each tone is the same.
     */
    @ParameterizedTest
    @CsvSource({"31.5, 0.01", "100, 0.005", "500, 0.005", "2000, 0.01", "6000, 0.12"})
    @Source("Rec. ITU-R BS.1770-4, Annex 1: other rates are to give the same response")
    void otherRatesWeightAlike(double hz, double withinDb) {
        double at48 = weightingDb(48_000, hz);
        assertEquals(at48, weightingDb(44_100, hz), withinDb);
        assertEquals(at48, weightingDb(96_000, hz), withinDb);
        assertEquals(at48, weightingDb(192_000, hz), withinDb);
    }

    private static double weightingDb(double rate, double hz) {
        double level = 0;
        for (int section = 0; section < 2; section++) {
            double[] c = KWeighting.coefficients(section, rate);
            double w = 2 * Math.PI * hz / rate;
            level += Decibels.ofPower(power(c[0], c[1], c[2], w) / power(1, c[3], c[4], w));
        }
        return level;
    }

    private static double power(double c0, double c1, double c2, double w) {
        double real = c0 + c1 * Math.cos(w) + c2 * Math.cos(2 * w);
        double imaginary = c1 * Math.sin(w) + c2 * Math.sin(2 * w);
        return real * real + imaginary * imaginary;
    }

    /** 997 Hz is where the weighting makes up for the −0.691 dB: +0.691 dB, within 0.01. */
    @Test
    void theRateOfTheTablesTakesThemAsTheyAre() {
        assertArrayEquals(
                new double[] {1, -2, 1, -1.99004745483398, 0.99007225036621},
                KWeighting.coefficients(1, 48_000));
        assertEquals(0.691, weightingDb(48_000, 997), 0.01);
    }

    /** The same way round: from the tables by way of the analogue form and back. */
    @Test
    void theAnalogueFormLeadsBackToTheTables() {
        for (int section = 0; section < 2; section++) {
            double[] near = KWeighting.coefficients(section, Math.nextUp(48_000.0));
            assertArrayEquals(KWeighting.coefficients(section, 48_000), near, 1e-9);
        }
    }

    @Test
    void howTheSoundIsDividedChangesNothing() {
        double[] sine = Signals.sine(440, 1.3, 11_025);
        ItuBs1770 whole = ItuBs1770.inFront(11_025, 1);
        whole.add(new double[][] {sine});
        ItuBs1770 parts = ItuBs1770.inFront(11_025, 1);
        for (double x : sine) {
            parts.add(new double[][] {{x}});
        }
        assertEquals(whole.integratedLufs(), parts.integratedLufs());
    }

    @ParameterizedTest
    @ValueSource(doubles = {0.39, 5})
    void shortSoundAndSilenceHaveNoLoudness(double seconds) {
        ItuBs1770 meter = ItuBs1770.inFront(48_000, 1);
        double level = seconds < 1 ? 1 : 1e-5;
        double[] sine = Signals.sine(1000, seconds, 48_000);
        for (int i = 0; i < sine.length; i++) {
            sine[i] *= level;
        }
        meter.add(new double[][] {sine});
        assertEquals(OptionalDouble.empty(), meter.integratedLufs());
    }

    @Test
    void lowRatesAreRefused() {
        String why =
                assertThrows(IllegalArgumentException.class, () -> ItuBs1770.inFront(4000, 1))
                        .getMessage();
        assertTrue(why.contains("8000"), why);
    }
}
