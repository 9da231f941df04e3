package offtape.cli.lineup;

import java.util.Locale;

/** Numbers in words: one that rounds to nought carries no sign. */
final class Decimals {

    private Decimals() {}

    /** With so many places. */
    static String of(double value, int places) {
        return clean(String.format(Locale.ROOT, "%." + places + "f", value));
    }

    /** With so many places and a sign. */
    static String signed(double value, int places) {
        return clean(String.format(Locale.ROOT, "%+." + places + "f", value));
    }

    private static String clean(String text) {
        return text.matches("[-+]0(\\.0+)?") ? text.substring(1) : text;
    }

    /** A frequency, such as 1 kHz, 3150 Hz or 999.8 Hz. */
    static String hertz(double hz) {
        double tenths = Math.rint(10 * hz) / 10;
        if (tenths >= 1000 && tenths % 1000 == 0) {
            return of(tenths / 1000, 0) + " kHz";
        }
        return of(tenths, tenths == Math.rint(tenths) ? 0 : 1) + " Hz";
    }
}
