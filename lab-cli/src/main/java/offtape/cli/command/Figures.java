package offtape.cli.command;

import java.util.Locale;
import offtape.core.unit.Quantity;

/** Figures in words for the terminal. */
final class Figures {

    private Figures() {}

    /** A known value in a format with one number, or "unknown". */
    static String text(String format, Quantity q) {
        return q.isKnown() ? text(format, (Object) q.value()) : "unknown";
    }

    /** Numbers in a format; one that rounds to nought carries no sign. */
    static String text(String format, Object... numbers) {
        return String.format(Locale.ROOT, format, numbers)
                .replaceAll("[-+](?=0(\\.0+)?(?![0-9.]))", "");
    }
}
