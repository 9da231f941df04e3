package offtape.report.render;

import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.time.format.DateTimeParseException;
import java.util.List;
import java.util.Locale;
import java.util.regex.Pattern;
import offtape.core.text.Language;
import offtape.core.text.Phrases;
import offtape.core.unit.Quantity;
import offtape.report.headline.Subject;
import offtape.report.result.Session;

/**
 * How a page speaks to its reader: texts by key, sentences of results, and numbers in one language.
 * Immutable.
 */
final class Wording {

    /** The bundles beside this class; a key begins with the name of its bundle. */
    static final List<String> BUNDLES = List.of("page", "session");

    private static final Pattern UNIT_AFTER_NUMBER =
            Pattern.compile("([0-9]) (dB|k?Hz|%|ms|s|cm/s|in/s)(?![A-Za-z])");

    private final Phrases phrases;

    private Wording(Phrases phrases) {
        this.phrases = phrases;
    }

    /** The wording of a language. */
    static Wording in(Language language) {
        return new Wording(Phrases.of(language, Wording.class, BUNDLES));
    }

    /** The reader's language. */
    Language language() {
        return phrases.language();
    }

    /** A text of a page's own; numbers among the arguments are written as the language does. */
    String say(String key, Object... arguments) {
        return phrases.say(key, arguments);
    }

    /** A sentence kept in results, which is English there. */
    String told(String english) {
        return phrases.told(english);
    }

    /** A number as {@link Numbers} writes it, as the reader's language does. */
    String number(String plain) {
        return phrases.number(plain);
    }

    /** As {@link Numbers#decimal}. */
    String decimal(double value, int decimals) {
        return phrases.number(Numbers.decimal(value, decimals));
    }

    /** As {@link Numbers#signed}. */
    String signed(double value, int decimals) {
        return phrases.number(Numbers.signed(value, decimals));
    }

    /** As {@link Numbers#significant}. */
    String significant(double value, int digits) {
        return phrases.number(Numbers.significant(value, digits));
    }

    /** As {@link Numbers#frequency}. */
    String frequency(double hz) {
        return phrases.number(Numbers.frequency(hz));
    }

    /** As {@link Numbers#level}. */
    String level(double levelDb) {
        return phrases.number(Numbers.level(levelDb));
    }

    /** As {@link Numbers#value}. */
    String value(Quantity figure, boolean signed) {
        return phrases.number(Numbers.value(figure, signed));
    }

    /** As {@link Numbers#uncertainty}. */
    String uncertainty(Quantity figure) {
        return phrases.number(Numbers.uncertainty(figure));
    }

    /** A known figure with its uncertainty, or the reason why it is unknown. */
    String full(Quantity figure, boolean signed) {
        return figure.isKnown()
                ? value(figure, signed) + " " + uncertainty(figure)
                : say("page.unknown", told(figure.reason()));
    }

    /** The items with commas, the last after {@code and}. */
    String list(List<String> items) {
        int last = items.size() - 1;
        return last < 1
                ? String.join("", items)
                : String.join(", ", items.subList(0, last))
                        + " "
                        + say("page.and")
                        + " "
                        + items.get(last);
    }

    /** With a small letter at the start of a word, but not of a sign such as K3. */
    String small(String text) {
        boolean isWord = text.length() > 1 && Character.isLowerCase(text.charAt(1));
        boolean hasSmall = language() == Language.ENGLISH;
        return isWord && hasSmall
                ? text.substring(0, 1).toLowerCase(language().locale()) + text.substring(1)
                : text;
    }

    /** {@code text} with a capital letter at its start. */
    String sentence(String text) {
        return text.isEmpty()
                ? text
                : text.substring(0, 1).toUpperCase(language().locale()) + text.substring(1);
    }

    /** {@code text} with its numbers kept on one line with their units. */
    String unbroken(String text) {
        return UNIT_AFTER_NUMBER.matcher(text).replaceAll("$1\u00a0$2");
    }

    /** A channel: {@code left}, or as the results name it. */
    String channel(String name) {
        return told(name);
    }

    /** The user's name for the machine, or words that stand for it. */
    String machine(Session session) {
        return told(Subject.nameOf(session));
    }

    /** Tape, tape speed, mode and day in one sentence. */
    String description(Session session) {
        if (Subject.of(session) == Subject.INTERFACE) {
            return say("page.measured-loopback", mode(session.mode()));
        }
        String tape =
                isGiven(session.tape())
                        ? say("page.measured-tape", session.tape())
                        : say("page.measured-tape-unnamed");
        return say("page.measured", tape, tapeSpeed(session), mode(session.mode()))
                + loopback(session);
    }

    private String loopback(Session session) {
        return session.loopback() == null
                ? ""
                : " " + say("page.loopback-taken-out", moment(session.loopback().madeAt()));
    }

    /** Nominal tape speed: {@code at 19.05 cm/s (7.5 in/s)}. */
    String tapeSpeed(Session session) {
        Double speed = session.tapeSpeedMmPerS();
        if (speed == null || !Double.isFinite(speed)) {
            return say("page.tape-speed-unknown");
        }
        return say("page.tape-speed", significant(speed / 10, 4), significant(speed / 25.4, 4));
    }

    /** A capture mode in plain words. */
    String mode(String mode) {
        return switch (mode == null ? "" : mode) {
            case "off-tape", "two-pass", "reference-tape", "loopback" -> say("page.mode-" + mode);
            default -> say("page.mode-unknown");
        };
    }

    /** A moment as people write it, or the text as it is if it is no ISO 8601 time. */
    String moment(String iso) {
        if (!isGiven(iso)) {
            return say("page.day-unknown");
        }
        try {
            Locale locale = language() == Language.ENGLISH ? Locale.UK : language().locale();
            return DateTimeFormatter.ofPattern(say("page.day-pattern"), locale)
                    .format(OffsetDateTime.parse(iso).withOffsetSameInstant(ZoneOffset.UTC));
        } catch (DateTimeParseException e) {
            return iso;
        }
    }

    /** Whether a text says anything. */
    static boolean isGiven(String text) {
        return text != null && !text.isBlank();
    }
}
