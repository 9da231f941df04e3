package offtape.report.render;

import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.time.format.DateTimeParseException;
import java.util.List;
import java.util.Locale;
import java.util.regex.Pattern;
import offtape.report.headline.Subject;
import offtape.report.result.Session;

/** The session in words. */
final class Words {

    private static final DateTimeFormatter DAY =
            DateTimeFormatter.ofPattern("d MMMM uuuu, HH:mm 'UTC'", Locale.UK);

    private static final Pattern UNIT_AFTER_NUMBER =
            Pattern.compile("([0-9]) (dB|k?Hz|%|ms|s|cm/s|in/s)(?![A-Za-z])");

    private Words() {}

    /** The items with commas, the last after {@code and}. */
    static String list(List<String> items) {
        int last = items.size() - 1;
        return last < 1
                ? String.join("", items)
                : String.join(", ", items.subList(0, last)) + " and " + items.get(last);
    }

    /** With a small letter at the start of a word, but not of a sign such as K3. */
    static String small(String text) {
        boolean isWord = text.length() > 1 && Character.isLowerCase(text.charAt(1));
        return isWord ? text.substring(0, 1).toLowerCase(Locale.UK) + text.substring(1) : text;
    }

    /** {@code text} with a capital letter at its start. */
    static String sentence(String text) {
        return text.isEmpty()
                ? text
                : text.substring(0, 1).toUpperCase(Locale.UK) + text.substring(1);
    }

    /** {@code text} with its numbers kept on one line with their units. */
    static String unbroken(String text) {
        return UNIT_AFTER_NUMBER.matcher(text).replaceAll("$1\u00a0$2");
    }

    /** The user's name for the machine, or words that stand for it. */
    static String machine(Session session) {
        return Subject.nameOf(session);
    }

    /** Tape, tape speed, mode and day in one sentence. */
    static String description(Session session) {
        if (Subject.of(session) == Subject.INTERFACE) {
            return "Measured " + mode(session.mode()) + ".";
        }
        String tape =
                isGiven(session.tape())
                        ? "Measured with " + session.tape()
                        : "Measured with a tape that was not named";
        return tape
                + ", "
                + tapeSpeed(session)
                + ", "
                + mode(session.mode())
                + "."
                + loopback(session);
    }

    private static String loopback(Session session) {
        return session.loopback() == null
                ? ""
                : " The interface, as it measured itself in the recording of "
                        + moment(session.loopback().madeAt())
                        + ", was taken out.";
    }

    /** Nominal tape speed: {@code at 19.05 cm/s (7.5 in/s)}. */
    static String tapeSpeed(Session session) {
        Double speed = session.tapeSpeedMmPerS();
        if (speed == null || !Double.isFinite(speed)) {
            return "tape speed not stated";
        }
        return "at "
                + Numbers.significant(speed / 10, 4)
                + " cm/s ("
                + Numbers.significant(speed / 25.4, 4)
                + " in/s)";
    }

    /** A capture mode in plain words. */
    static String mode(String mode) {
        return switch (mode == null ? "" : mode) {
            case "off-tape" ->
                    "off tape: recorded and replayed at the same moment by separate heads";
            case "two-pass" -> "in two passes: recorded, rewound and replayed";
            case "reference-tape" ->
                    "from a reference tape: recorded elsewhere, only replayed here";
            case "loopback" -> "in a loop: no machine, the interface measures itself";
            default -> "in a way that was not stated";
        };
    }

    /** A moment as people write it, or the text as it is if it is no ISO 8601 time. */
    static String moment(String iso) {
        if (!isGiven(iso)) {
            return "day not known";
        }
        try {
            return DAY.format(OffsetDateTime.parse(iso).withOffsetSameInstant(ZoneOffset.UTC));
        } catch (DateTimeParseException e) {
            return iso;
        }
    }

    /** Whether a text says anything. */
    static boolean isGiven(String text) {
        return text != null && !text.isBlank();
    }
}
