package offtape.core.text;

/**
 * Texts without the characters that steer what shows them instead of being shown: control
 * characters (ISO/IEC 6429, both sets), line and paragraph separators, marks that turn the
 * direction of writing around (Unicode Standard Annex 9), and invisible ones that stand for
 * nothing. Names, notes and file names come from anybody and may hold any of them.
 *
 * <p>The ranges are written down here, since the categories that Java knows change from release to
 * release. What joins letters (U+200C, U+200D) is part of ordinary spelling and stays.
 */
public final class InertText {

    private static final char INSTEAD = '\uFFFD';

    private InertText() {}

    /** The text on one line, each steering character replaced by U+FFFD. */
    public static String line(String text) {
        return replaced(text, "");
    }

    /** The same, but line feeds and tabs stay: for texts of our own that hold others' words. */
    public static String lines(String text) {
        return replaced(text, "\n\t");
    }

    private static String replaced(String text, String kept) {
        if (text.codePoints().noneMatch(c -> isSteering(c) && kept.indexOf(c) < 0)) {
            return text;
        }
        StringBuilder out = new StringBuilder();
        text.codePoints()
                .map(c -> isSteering(c) && kept.indexOf(c) < 0 ? INSTEAD : c)
                .forEach(out::appendCodePoint);
        return out.toString();
    }

    /** Whether a character steers; so does half of a surrogate pair, which is none. */
    public static boolean isSteering(int codePoint) {
        return isControl(codePoint) || isDirection(codePoint) || isInvisible(codePoint);
    }

    private static boolean isControl(int c) {
        return c < 0x20 || c >= 0x7F && c <= 0x9F || c == 0x2028 || c == 0x2029;
    }

    private static boolean isDirection(int c) {
        return c == 0x061C
                || c == 0x200E
                || c == 0x200F
                || c >= 0x202A && c <= 0x202E
                || c >= 0x2066 && c <= 0x206F;
    }

    private static boolean isInvisible(int c) {
        return c == 0x200B
                || c == 0x2060
                || c == 0xFEFF
                || c >= 0xFFF9 && c <= 0xFFFB
                || c >= 0xD800 && c <= 0xDFFF;
    }
}
