package offtape.core.standard;

import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import offtape.core.text.Sentences;

/**
 * The two time constants of an equalisation after IEC 60094-1.
 *
 * @param lowMicroseconds 100 to 100 000 µs, or positive infinity if there is none
 * @param highMicroseconds 5 to 1000 µs
 */
public record TimeConstants(double lowMicroseconds, double highMicroseconds) {

    private static final Sentences SAID = Sentences.near(TimeConstants.class);

    private static final Pattern FORM =
            Pattern.compile(
                    "\\s*(?:(none|[0-9]+(?:\\.[0-9]+)?)\\s*,)?\\s*([0-9]+(?:\\.[0-9]+)?)\\s*");

    /** Refuses what no tape is recorded to. */
    public TimeConstants {
        boolean hasLow = lowMicroseconds != Double.POSITIVE_INFINITY;
        boolean isLow = lowMicroseconds >= 100 && lowMicroseconds <= 100_000;
        boolean isHigh = highMicroseconds >= 5 && highMicroseconds <= 1000;
        if (hasLow && !isLow || !isHigh) {
            throw new IllegalArgumentException(SAID.say("constants.outside"));
        }
    }

    /**
     * Reads {@code 3180,50}, {@code none,70} or {@code 70}, microseconds.
     *
     * @throws IllegalArgumentException with a plain sentence if the text is something else
     */
    public static TimeConstants parse(String text) {
        Matcher m = FORM.matcher(text.toLowerCase(Locale.ROOT));
        if (!m.matches()) {
            throw new IllegalArgumentException(SAID.say("constants.not-a-pair", text));
        }
        boolean hasLow = m.group(1) != null && !m.group(1).equals("none");
        return new TimeConstants(
                hasLow ? Double.parseDouble(m.group(1)) : Double.POSITIVE_INFINITY,
                Double.parseDouble(m.group(2)));
    }

    /** Recorded flux of a flat programme, dB re 1 kHz, at a frequency in hertz above 0. */
    public double fluxDb(double frequencyHz) {
        return Iec60094.fluxDb(frequencyHz, lowMicroseconds, highMicroseconds);
    }

    /** As it is written: {@code 3180,50} or {@code none,70}. */
    @Override
    public String toString() {
        String low = lowMicroseconds == Double.POSITIVE_INFINITY ? "none" : plain(lowMicroseconds);
        return low + "," + plain(highMicroseconds);
    }

    /** In words: {@code 3180 and 50 µs}, or {@code 70 µs} if there is no low one. */
    public String words() {
        boolean hasLow = lowMicroseconds != Double.POSITIVE_INFINITY;
        return (hasLow ? plain(lowMicroseconds) + " and " : "") + plain(highMicroseconds) + " µs";
    }

    private static String plain(double us) {
        return us == Math.rint(us) ? Long.toString((long) us) : Double.toString(us);
    }
}
