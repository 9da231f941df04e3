package offtape.core.unit;

import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import offtape.core.text.Sentences;

/**
 * A nominal tape speed.
 *
 * @param mmPerS millimetres per second, above 0
 */
public record TapeSpeed(double mmPerS) {

    private static final Sentences SAID = Sentences.near(TapeSpeed.class);

    private static final double MM_PER_INCH = 25.4;

    private static final Pattern FORM =
            Pattern.compile("\\s*([0-9]+(?:[.,][0-9]+)?)\\s*(cm/s|cms|mm/s|ips|in/s)\\s*");

    /** The speeds in use: 15/16 to 30 inches per second, each twice the one before. */
    private static final double[] STANDARD_IPS = {0.9375, 1.875, 3.75, 7.5, 15, 30};

    /** Refuses anything but a positive finite speed. */
    public TapeSpeed {
        if (!(mmPerS > 0) || !Double.isFinite(mmPerS)) {
            throw new IllegalArgumentException("a tape speed must be above 0");
        }
    }

    /**
     * Reads {@code 19.05cm/s}, {@code 190.5mm/s} or {@code 7.5ips}. A value within 1 % of a
     * standard speed is taken as that speed, since 19, 9.5 and 4.8 cm/s are common short forms.
     *
     * @throws IllegalArgumentException with a plain sentence if the text is not a tape speed
     */
    public static TapeSpeed parse(String text) {
        Matcher m = FORM.matcher(text.toLowerCase(Locale.ROOT));
        if (!m.matches()) {
            throw new IllegalArgumentException(SAID.say("speed.not-one", text));
        }
        double number = Double.parseDouble(m.group(1).replace(',', '.'));
        double mm =
                switch (m.group(2)) {
                    case "ips", "in/s" -> number * MM_PER_INCH;
                    case "mm/s" -> number;
                    default -> number * 10;
                };
        if (!(mm >= 5 && mm <= 2000)) {
            throw new IllegalArgumentException(SAID.say("speed.outside", text));
        }
        return new TapeSpeed(nearestStandard(mm));
    }

    private static double nearestStandard(double mmPerS) {
        for (double ips : STANDARD_IPS) {
            double standard = ips * MM_PER_INCH;
            if (Math.abs(mmPerS / standard - 1) < 0.01) {
                return standard;
            }
        }
        return mmPerS;
    }

    /** Whether the tape is so slow (9.5 cm/s and under) that 315 Hz takes the place of 1 kHz. */
    public boolean isSlow() {
        return mmPerS < 100;
    }

    /** The speed in centimetres per second, as the trade writes it: 19.05 cm/s, 9.53 cm/s. */
    @Override
    public String toString() {
        String text = String.format(Locale.ROOT, "%.2f", Math.round(mmPerS * 10) / 100.0);
        return text.replaceAll("\\.?0+$", "") + " cm/s";
    }
}
