package offtape.core.text;

import java.text.DecimalFormatSymbols;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Numbers with their units as English writes them, written as another language does. */
final class Amount {

    private static final Pattern TOKEN =
            Pattern.compile(
                    "[(±<>≤≥≈+−-]*[0-9]+(?:\\.[0-9]+)?(?:e[+−-]?[0-9]+)?[%°)]*[,;]?|[±<>≤≥–]");

    private static final Pattern DECIMAL = Pattern.compile("([0-9])\\.([0-9])");

    private static final Set<String> UNITS =
            Set.of(
                    "dB", "dBFS", "Hz", "kHz", "MHz", "%", "s", "ms", "µs", "min", "h", "mm", "cm",
                    "µm", "cm/s", "mm/s", "in/s", "ppm", "nWb/m", "°", "arc", "ips", "KiB", "MiB",
                    "GiB", "MB", "GB", "kB");

    private static final Pattern GAP = Pattern.compile("[ \u00a0]");

    private Amount() {}

    /** Whether a text consists of numbers and units and begins with a number. */
    static boolean is(String text) {
        if (!begins(text)) {
            return false;
        }
        for (String token : GAP.split(text)) {
            if (!TOKEN.matcher(token).matches() && !UNITS.contains(unit(token))) {
                return false;
            }
        }
        return true;
    }

    /** Whether a text begins with a number. */
    static boolean begins(String text) {
        Matcher gap = GAP.matcher(text);
        return TOKEN.matcher(gap.find() ? text.substring(0, gap.start()) : text).matches();
    }

    private static String unit(String token) {
        boolean stopped = token.endsWith(",") || token.endsWith(")");
        return stopped ? token.substring(0, token.length() - 1) : token;
    }

    /** The decimal points of a text of numbers as a language has them. */
    static String in(Language language, String text) {
        char point = point(language);
        return point == '.' ? text : decimals(text, point);
    }

    private static String decimals(String text, char point) {
        Matcher decimal = DECIMAL.matcher(text);
        return decimal.replaceAll("$1" + point + "$2");
    }

    private static char point(Language language) {
        return DecimalFormatSymbols.getInstance(language.locale()).getDecimalSeparator();
    }
}
