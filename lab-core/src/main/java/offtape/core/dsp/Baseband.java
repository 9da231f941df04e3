package offtape.core.dsp;

import java.util.Collections;
import java.util.Comparator;
import java.util.List;

/**
 * A stretch of complex signal around a carrier. A sine of peak A that follows the carrier has a
 * modulus of A / 2.
 *
 * @param re real parts; not to be modified
 * @param im imaginary parts, same length
 * @param rateHz samples per second
 * @param firstSeconds time of the first sample in the recording
 */
public record Baseband(double[] re, double[] im, double rateHz, double firstSeconds) {

    /**
     * The strongest of several.
     *
     * @param bands at least one
     */
    public static Baseband loudest(List<Baseband> bands) {
        return Collections.max(bands, Comparator.comparingDouble(Baseband::meanPower));
    }

    /** Number of samples. */
    public int size() {
        return re.length;
    }

    /** Time of a sample in the recording, seconds. */
    public double seconds(int k) {
        return firstSeconds + k / rateHz;
    }

    /** Squared modulus of a sample. */
    public double power(int k) {
        return re[k] * re[k] + im[k] * im[k];
    }

    /** Mean squared modulus, 0 if there are no samples. */
    public double meanPower() {
        double sum = 0;
        for (int k = 0; k < size(); k++) {
            sum += power(k);
        }
        return size() == 0 ? 0 : sum / size();
    }

    /** Phase of every sample in radians, without jumps of more than half a turn. */
    public double[] unwrappedPhase() {
        double[] phase = new double[size()];
        double turns = 0;
        for (int k = 0; k < phase.length; k++) {
            double p = Math.atan2(im[k], re[k]);
            if (k > 0) {
                turns -= Math.rint((p + turns - phase[k - 1]) / (2 * Math.PI)) * 2 * Math.PI;
            }
            phase[k] = p + turns;
        }
        return phase;
    }
}
