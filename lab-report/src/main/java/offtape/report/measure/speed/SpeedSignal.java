package offtape.report.measure.speed;

import java.util.List;
import offtape.core.audio.AudioSource;
import offtape.core.dsp.Baseband;
import offtape.core.dsp.Differentiator;
import offtape.core.dsp.Downconverter;
import offtape.core.dsp.PhaseLaw;
import offtape.core.dsp.PowerDensity;

/**
 * The speed deviation that a steady tone shows, from the phase of the tone: changes of its level do
 * not enter. Both channels are taken together, each by how clear its tone is.
 *
 * @param percent deviation from nominal, percent, evenly sampled
 * @param rateHz samples per second, about 1000
 * @param firstSeconds time of the first sample in the recording
 * @param noiseDensity one-sided density of the phase noise that the noise of the recording adds,
 *     rad²/Hz, both channels together
 * @param nominalHz the frequency the tone should have
 * @param bandHz highest rate of change that the demodulation passes
 */
record SpeedSignal(
        double[] percent,
        double rateHz,
        double firstSeconds,
        double noiseDensity,
        double nominalHz,
        double bandHz) {

    private static final double WIDEST_BAND_HZ = 260;
    private static final double RATE_HZ = 1000;

    /**
     * Demodulates a stretch.
     *
     * @param expectedHz frequency the tone will be near, within 2 %
     * @return null if the stretch is too short or holds no tone
     */
    static SpeedSignal of(
            AudioSource recording, double from, double to, double nominalHz, double expectedHz) {
        double pass = Math.min(WIDEST_BAND_HZ, 0.3 * expectedHz);
        double stop = Math.min(1.7 * pass, 0.6 * expectedHz);
        Downconverter converter = Downconverter.of(pass, stop, recording.sampleRateHz(), RATE_HZ);
        List<Baseband> bases = converter.convert(recording, from, to, PhaseLaw.steady(expectedHz));
        int n = bases.get(0).size() - 2 * Differentiator.HALF;
        if (n < RATE_HZ) {
            return null;
        }
        double rate = bases.get(0).rateHz();
        double[] percent = new double[n];
        double weights = 0;
        for (Baseband base : bases) {
            double density = phaseNoise(base, pass);
            if (base.meanPower() > 0 && density < 1e-2) {
                double weight = 1 / (density + 1e-16);
                double[] slope = Differentiator.apply(base.unwrappedPhase(), rate);
                for (int k = 0; k < n; k++) {
                    percent[k] += weight * slope[k];
                }
                weights += weight;
            }
        }
        if (weights == 0) {
            return null;
        }
        for (int k = 0; k < n; k++) {
            double hz = expectedHz + percent[k] / weights / (2 * Math.PI);
            percent[k] = 100 * (hz / nominalHz - 1);
        }
        double first = bases.get(0).seconds(Differentiator.HALF);
        return new SpeedSignal(percent, rate, first, 1 / weights, nominalHz, pass);
    }

    /**
     * Density of the phase noise of one channel, read from the fluctuation of its level: noise that
     * is added to a tone shakes both alike, and tape speed shakes only the phase.
     */
    private static double phaseNoise(Baseband base, double band) {
        double[] modulus = new double[base.size()];
        double mean = 0;
        for (int k = 0; k < modulus.length; k++) {
            modulus[k] = Math.sqrt(base.power(k));
            mean += modulus[k] / modulus.length;
        }
        if (mean == 0) {
            return Double.POSITIVE_INFINITY;
        }
        for (int k = 0; k < modulus.length; k++) {
            modulus[k] = modulus[k] / mean - 1;
        }
        return PowerDensity.of(modulus, base.rateHz(), 1024).mean(0.4 * band, 0.9 * band);
    }

    /** Mean deviation, percent. */
    double mean() {
        double sum = 0;
        for (double p : percent) {
            sum += p;
        }
        return sum / percent.length;
    }

    /** The deviation about its mean, percent. */
    double[] modulation() {
        double mean = mean();
        double[] out = new double[percent.length];
        for (int k = 0; k < out.length; k++) {
            out[k] = percent[k] - mean;
        }
        return out;
    }
}
