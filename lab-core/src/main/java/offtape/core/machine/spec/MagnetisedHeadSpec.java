package offtape.core.machine.spec;

import static offtape.core.machine.spec.Limits.within;
import static offtape.core.machine.spec.Limits.withinIfGiven;

/**
 * A head or guide that has become a magnet. It works on both channels: a steady field bends the
 * recording to one side, and leaves a noise on the tape whose density falls by 3 dB an octave (that
 * slope is common practice, no source).
 *
 * @param secondHarmonicPercent second harmonic that it gives a low tone at reference level, 0 to 10
 *     %, in addition to the tape's own
 * @param noiseDb rms of the noise from 22.4 Hz to 22.4 kHz (or half the sample rate, if lower), dB
 *     re reference, −160 to 0 dB, or null for none
 */
public record MagnetisedHeadSpec(double secondHarmonicPercent, Double noiseDb) {

    /** Slope of the noise's density. */
    public static final double TILT_DB_PER_OCTAVE = -3;

    /** A head that is no magnet. */
    public static final MagnetisedHeadSpec NONE = new MagnetisedHeadSpec(0, null);

    /** Checks the limits. */
    public MagnetisedHeadSpec {
        within("secondHarmonicPercent", secondHarmonicPercent, 0, 10, "%");
        withinIfGiven("noiseDb", noiseDb, -160, 0, "dB");
    }
}
