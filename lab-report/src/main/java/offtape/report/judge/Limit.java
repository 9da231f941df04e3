package offtape.report.judge;

import com.fasterxml.jackson.annotation.JsonInclude;
import java.util.Locale;
import java.util.Objects;
import java.util.stream.Stream;
import offtape.core.fault.UnusableInputException;
import offtape.core.text.Sentences;

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

    private static final Sentences SAID = Sentences.near(Limit.class);

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
                                                SAID.say("no-quantity", quantity)));
        if (judged == Judged.RESPONSE) {
            boolean isAlone = least == null && most == null;
            if (!isBand(fromHz, toHz) || !isShape(lowDb, highDb, widthDb) || !isAlone) {
                throw new UnusableInputException(SAID.say("no-response-limit"));
            }
        } else {
            if (!isSpan(least, most)) {
                throw new UnusableInputException(SAID.say("no-limit", quantity));
            }
            if (Stream.of(fromHz, toHz, lowDb, highDb, widthDb).anyMatch(Objects::nonNull)) {
                throw new UnusableInputException(SAID.say("no-band", quantity));
            }
        }
    }

    private static boolean isBand(Double fromHz, Double toHz) {
        return fromHz != null && toHz != null && fromHz > 0 && toHz > fromHz;
    }

    /** Levels or a width: of both, one would be passed over. */
    private static boolean isShape(Double lowDb, Double highDb, Double widthDb) {
        return widthDb == null
                ? isSpan(lowDb, highDb)
                : lowDb == null && highDb == null && widthDb > 0;
    }

    /** One end, or both with something between them: nothing is beyond doubt in no room at all. */
    private static boolean isSpan(Double low, Double high) {
        return low == null || high == null ? low != null || high != null : low < high;
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
            return band();
        }
        String unit = " " + judged().unit();
        if (least == null) {
            return SAID.say("limit.most", number(most) + unit);
        }
        if (most == null) {
            return SAID.say("limit.least", number(least) + unit);
        }
        return (least == -most ? "± " : number(least) + " to ") + number(most) + unit;
    }

    private String band() {
        String from = number(fromHz);
        String to = number(toHz);
        if (widthDb != null) {
            return SAID.say("limit.band-width", from, to, number(widthDb));
        }
        if (lowDb == null) {
            return SAID.say("limit.band-most", from, to, number(highDb));
        }
        if (highDb == null) {
            return SAID.say("limit.band-least", from, to, number(lowDb));
        }
        return lowDb == -highDb
                ? SAID.say("limit.band-about", from, to, number(highDb))
                : SAID.say("limit.band", from, to, number(lowDb), number(highDb));
    }

    private static String number(double value) {
        String text = String.format(Locale.ROOT, "%.4f", value).replaceAll("\\.?0+$", "");
        return text.replace('-', '−');
    }
}
