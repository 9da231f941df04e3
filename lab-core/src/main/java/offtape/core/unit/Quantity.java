package offtape.core.unit;

/**
 * A headline figure: a value with its unit and expanded uncertainty, or the reason why it cannot be
 * known from this recording. Never a guess and never NaN: both are refused here.
 *
 * @param value the value, or null if unknown
 * @param unit unit symbol such as {@code "%"}, {@code "dB"}, {@code "Hz"}; null if unknown
 * @param uncertainty expanded uncertainty in the same unit, coverage factor k = 2 (JCGM 100), or
 *     null if unknown
 * @param reason why the value is unknown, a plain sentence; null if the value is known
 */
public record Quantity(Double value, String unit, Double uncertainty, String reason) {

    /** Checks that the figure is either wholly known or wholly unknown. */
    public Quantity {
        if (value != null) {
            if (!Double.isFinite(value)) {
                throw new IllegalArgumentException("a figure must be finite, not " + value);
            }
            if (unit == null || reason != null) {
                throw new IllegalArgumentException("a known figure has a unit and no reason");
            }
            if (uncertainty == null || !(uncertainty >= 0) || !Double.isFinite(uncertainty)) {
                throw new IllegalArgumentException("a known figure has a finite uncertainty");
            }
        } else if (reason == null || reason.isBlank() || uncertainty != null || unit != null) {
            throw new IllegalArgumentException("an unknown figure has a reason and nothing else");
        }
    }

    /** A known figure; {@code uncertainty} is expanded, k = 2, in the unit of the value. */
    public static Quantity known(double value, String unit, double uncertainty) {
        return new Quantity(value, unit, uncertainty, null);
    }

    /** A figure that this recording cannot tell; {@code reason} is a plain sentence. */
    public static Quantity unknown(String reason) {
        return new Quantity(null, null, null, reason);
    }

    /** Whether there is a value. */
    public boolean isKnown() {
        return value != null;
    }
}
