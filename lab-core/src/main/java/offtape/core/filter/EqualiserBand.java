package offtape.core.filter;

import com.fasterxml.jackson.annotation.JsonValue;
import offtape.core.unit.Decibels;

/**
 * One band of a parametric equaliser, as the analogue circuit has it, so that no sample rate bends
 * it. With A = 10^(gain/40), s in units of the band's own frequency:
 *
 * <ul>
 *   <li>peak: (s² + s·A/Q + 1) / (s² + s/(A·Q) + 1);
 *   <li>low shelf: A·(s² + s·√A/Q + A) / (A·s² + s·√A/Q + 1);
 *   <li>high shelf: A·(A·s² + s·√A/Q + 1) / (s² + s·√A/Q + A).
 * </ul>
 *
 * <p>From these follows what the numbers mean: Q of a peak is its frequency over the distance of
 * the two frequencies at which half of its gain in dB is reached, and a cut is the mirror image of
 * a boost; a shelf has half of its gain in dB at its frequency. These shapes are those of common
 * equalisers (common practice, no source).
 *
 * @param kind its shape
 * @param frequencyHz middle of a peak, or where a shelf has half of its gain; above 0
 * @param gainDb gain of the peak or of the shelf's flat part, dB
 * @param q above 0
 */
public record EqualiserBand(Kind kind, double frequencyHz, double gainDb, double q) {

    /** A shelf of this Q is the steepest that does not swing over (common practice, no source). */
    public static final double SHELF_Q = 0.71;

    private static final double DB_PER_DECADE_OF_A = 40;

    /** The shape of a band. */
    public enum Kind {
        /** Lifts or lowers all below its frequency. */
        LOW_SHELF("low-shelf"),
        /** Lifts or lowers what lies about its frequency. */
        PEAK("peak"),
        /** Lifts or lowers all above its frequency. */
        HIGH_SHELF("high-shelf");

        private final String key;

        Kind(String key) {
            this.key = key;
        }

        /** Its name in files. */
        @JsonValue
        public String key() {
            return key;
        }

        /** Its name in sentences. */
        public String words() {
            return key.replace('-', ' ');
        }
    }

    /** Gain of the band in dB at a frequency in hertz, 0 or more. */
    public double gainDb(double hz) {
        double w = hz / frequencyHz;
        double a = Math.pow(10, gainDb / DB_PER_DECADE_OF_A);
        double root = Math.sqrt(a) / q * w;
        return switch (kind) {
            case PEAK -> ratioDb(1 - w * w, w * a / q, 1 - w * w, w / (a * q));
            case LOW_SHELF -> gainDb / 2 + ratioDb(a - w * w, root, 1 - a * w * w, root);
            case HIGH_SHELF -> gainDb / 2 + ratioDb(1 - a * w * w, root, a - w * w, root);
        };
    }

    private static double ratioDb(double re, double im, double underRe, double underIm) {
        return Decibels.ofPower((re * re + im * im) / (underRe * underRe + underIm * underIm));
    }
}
