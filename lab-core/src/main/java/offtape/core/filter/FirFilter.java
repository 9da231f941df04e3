package offtape.core.filter;

import java.util.Arrays;
import java.util.function.DoubleUnaryOperator;
import offtape.core.dsp.RealFft;
import offtape.core.dsp.Spectrum;
import offtape.core.unit.Decibels;

/**
 * A filter given by its impulse response, and what it does to levels.
 *
 * @param sampleRateHz frames a second that it is made for
 * @param taps its impulse response, at least one sample
 */
public record FirFilter(int sampleRateHz, double[] taps) {

    /** Points of the transform re taps, so that no peak of the magnitude lies between two. */
    private static final int FINE = 8;

    /** Its gain in dB at a frequency in hertz, 0 to half the sample rate. */
    public double gainDb(double frequencyHz) {
        double step = 2 * Math.PI * frequencyHz / sampleRateHz;
        double re = 0;
        double im = 0;
        for (int j = 0; j < taps.length; j++) {
            re += taps[j] * Math.cos(step * j);
            im -= taps[j] * Math.sin(step * j);
        }
        return Decibels.ofPower(re * re + im * im);
    }

    /** Its largest gain in dB: so much louder a steady sine can become at most. */
    public double peakGainDb() {
        Spectrum spectrum = spectrum(RealFft.nextPowerOfTwo(taps.length * FINE));
        double most = 0;
        for (int k = 0; k < spectrum.bins(); k++) {
            most = Math.max(most, spectrum.power(k));
        }
        return Decibels.ofPower(most);
    }

    /**
     * The sum of the magnitudes of its taps in dB: no sound whatever, however peaked, can come out
     * with a peak that is higher by more.
     */
    public double boundDb() {
        return Decibels.ofAmplitude(Arrays.stream(taps).map(Math::abs).sum());
    }

    /** The same filter as a file of 32-bit float keeps it. */
    FirFilter asFloats() {
        return new FirFilter(sampleRateHz, Arrays.stream(taps).map(x -> (float) x).toArray());
    }

    /**
     * How far its gain lies from a wanted one.
     *
     * @param wantedDb wanted gain in dB at a frequency in hertz
     * @param fromHz lowest frequency looked at
     * @param toHz highest frequency looked at, at most half the sample rate
     */
    public GainError errorFrom(DoubleUnaryOperator wantedDb, double fromHz, double toHz) {
        // a hertz or finer, so that the lowest frequencies are looked at closely too
        int n = RealFft.nextPowerOfTwo(Math.max(sampleRateHz, 2 * taps.length));
        return GainError.of(spectrum(n), sampleRateHz, wantedDb, fromHz, toHz);
    }

    private Spectrum spectrum(int n) {
        return RealFft.ofSize(n).forward(taps);
    }
}
