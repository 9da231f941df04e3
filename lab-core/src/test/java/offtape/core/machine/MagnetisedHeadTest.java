package offtape.core.machine;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import offtape.core.dsp.RealFft;
import offtape.core.dsp.Spectrum;
import offtape.core.fault.UnusableInputException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** A head that has become a magnet. */
class MagnetisedHeadTest {

    private static final int RATE_HZ = 48_000;
    private static final int POINTS = 1 << 18;

    /**
     * Without other curves K2 is 0.8 % at reference on both channels, and 0.4 % 6.0206 dB below.
     */
    @Test
    void bothChannelsHaveTheSecondHarmonic() {
        String members = "'heads':{'magnetisation':{'secondHarmonicPercent':0.8}}";
        double[][] out = Bench.play(Bench.machine(members), RATE_HZ, 1.2, Bench.sine(1000, 0));
        for (double[] x : out) {
            double second = Bench.line(x, RATE_HZ, 0.3, 0.9, 2000).peak();
            assertEquals(0.008, second / Bench.line(x, RATE_HZ, 0.3, 0.9, 1000).peak(), 2e-6);
        }
        SteadyTone tone = Bench.run(Bench.machine(members), RATE_HZ, 1).tone(1);
        assertEquals(0.8, tone.harmonicPercent(2, 1000, 0), 2e-6);
        assertEquals(0.4, tone.harmonicPercent(2, 1000, -20 * Math.log10(2)), 2e-6);
    }

    /** It adds to the tape's own: 0.5 + 0.3 %, and the third stays what the tape's curve has. */
    @Test
    void itAddsToTheTapes() {
        String tape = "'saturation':{'levelAtK3ThreePercentDb':8,'secondHarmonicPercent':0.5}";
        String magnet = tape + ",'heads':{'magnetisation':{'secondHarmonicPercent':0.3}}";
        SteadyTone with = Bench.run(Bench.machine(magnet), RATE_HZ, 1).tone(0);
        SteadyTone without = Bench.run(Bench.machine(tape), RATE_HZ, 1).tone(0);
        assertEquals(0.8, with.harmonicPercent(2, 1000, 0), 2e-6);
        assertEquals(without.harmonicPercent(3, 1000, 0), with.harmonicPercent(3, 1000, 0), 1e-12);
    }

    /**
     * Density as 1/f: every octave holds the same power. Over 5.46 s an octave from f has 5.46·f
     * values, so a standard deviation of 4.34/√(5.46·f) dB: 0.19 dB from 100 Hz, 0.066 from 800 Hz,
     * 0.023 from 6.4 kHz; bounds are four of a difference. Its filter of ±10 ms rounds what lies
     * below 400 Hz by some tenths of a decibel, which the bound there holds as well. The total has
     * ten octaves of a tenth each: 0.434·√Σ1/(5.46·f) = 0.055 dB, whatever the rounding.
     */
    @Test
    void noiseRisesTowardsLowFrequencies() {
        String members = "'heads':{'magnetisation':{'noiseDb':-50}}";
        double[][] out =
                Bench.play(Bench.machine(members), RATE_HZ, (POINTS + 100.0) / RATE_HZ, t -> 0);
        for (double[] x : out) {
            Spectrum spectrum = RealFft.ofSize(POINTS).forward(x, 0, POINTS);
            double high = bandDb(spectrum, 6400, 12_800);
            assertEquals(high, bandDb(spectrum, 800, 1600), 0.28);
            assertEquals(high, bandDb(spectrum, 100, 200), 1);
            assertEquals(-50, bandDb(spectrum, 22.4, 22_400), 0.22);
        }
        assertNotEquals(out[0][1000], out[1][1000]);
    }

    /** −50 and −50 dB of hiss together: −46.99 dB in the truth. */
    @Test
    void theTruthHoldsTheNoise() {
        String members = "'heads':{'magnetisation':{'noiseDb':-50}},'hiss':{'levelDb':-50}";
        NoiseTruth noise = Bench.run(Bench.machine(members), RATE_HZ, 1).truth().noise().get(0);
        assertEquals(-50 + 10 * Math.log10(2), noise.unweighted(), 1e-6);
    }

    @ParameterizedTest
    @ValueSource(strings = {"'secondHarmonicPercent':11", "'noiseDb':1"})
    void whatCannotBeIsRefused(String member) {
        assertThrows(
                UnusableInputException.class,
                () -> Bench.machine("'heads':{'magnetisation':{" + member + "}}"));
    }

    private static double bandDb(Spectrum spectrum, double low, double high) {
        double sum = 0;
        for (int k = 1; k < POINTS / 2; k++) {
            double f = k * (double) RATE_HZ / POINTS;
            sum += f >= low && f <= high ? 2 * spectrum.power(k) : 0;
        }
        double reference = Bench.REFERENCE_PEAK * Bench.REFERENCE_PEAK / 2;
        return 10 * Math.log10(sum / POINTS / POINTS / reference);
    }
}
