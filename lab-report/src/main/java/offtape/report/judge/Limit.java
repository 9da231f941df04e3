package offtape.report.judge;

import com.fasterxml.jackson.annotation.JsonInclude;
import java.util.Locale;
import offtape.core.fault.UnusableInputException;

/**
 * One limit.
 *
 * @param quantity key of a {@link Judged} figure
 * @param least lowest value that meets it, or null
 * @param most highest value that meets it, or null
 * @param fromHz of a response: where the band begins
 * @param toHz of a response: where it ends
 * @param lowDb of a response: lowest level in the band re 1 kHz, or null
 * @param highDb of a response: highest level, or null
 * @param widthDb of a response: by how much levels in the band may differ, or null
 * @param tapeSpeedMmPerS the only tape speed for which it counts, or null for all
 * @param clause condition or clause, or null
 */
@JsonInclude(JsonInclude.Include.NON_NULL)
record Limit(
        String quantity,
        Double least,
        Double most,
        Double fromHz,
        Double toHz,
        Double lowDb,
        Double highDb,
        Double widthDb,
        Double tapeSpeedMmPerS,
        String clause) {

    /** Speeds of the same setting differ by rounding only. */
    private static final double SAME_SPEED = 0.01;

    /**
     * Checks that it says something.
     *
     * @throws UnusableInputException in a plain sentence
     */
    Limit {
        Judged judged =
                Judged.named(String.valueOf(quantity))
                        .orElseThrow(
                                () ->
                                        new UnusableInputException(
                                                "\"" + quantity + "\" is no quantity of limits."));
        if (judged == Judged.RESPONSE) {
            boolean band = fromHz != null && toHz != null && fromHz > 0 && toHz > fromHz;
            boolean levels = lowDb != null || highDb != null || widthDb != null;
            if (!band || !levels || least != null || most != null) {
                throw new UnusableInputException(
                        "A limit of the response has fromHz, toHz above it, and lowDb, highDb or"
                                + " widthDb.");
            }
        } else if (least == null && most == null || least != null && most != null && least > most) {
            throw new UnusableInputException(
                    "A limit of " + quantity + " has least, most, or both with least below most.");
        }
    }

    Judged judged() {
        return Judged.named(quantity).orElseThrow();
    }

    /** Whether it counts at a tape speed. */
    boolean countsAt(Double mmPerS) {
        return tapeSpeedMmPerS == null
                || mmPerS != null
                        && Math.abs(mmPerS - tapeSpeedMmPerS) <= SAME_SPEED * tapeSpeedMmPerS;
    }

    /** In words, with units. */
    String words() {
        if (judged() == Judged.RESPONSE) {
            String levels =
                    widthDb != null
                            ? "within a width of " + number(widthDb) + " dB"
                            : range(lowDb, highDb) + " dB re 1 kHz";
            return number(fromHz) + " Hz to " + number(toHz) + " Hz " + levels;
        }
        return range(least, most) + " " + judged().unit();
    }

    private static String range(Double low, Double high) {
        if (low == null) {
            return "at most " + number(high);
        }
        if (high == null) {
            return "at least " + number(low);
        }
        return low == -high ? "± " + number(high) : number(low) + " to " + number(high);
    }

    private static String number(double value) {
        String text = String.format(Locale.ROOT, "%.4f", value).replaceAll("\\.?0+$", "");
        return text.replace('-', '−');
    }
}
