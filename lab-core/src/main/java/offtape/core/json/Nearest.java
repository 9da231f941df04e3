package offtape.core.json;

import java.util.Collection;
import java.util.Comparator;
import java.util.Locale;
import java.util.Optional;

/** The name that was probably meant. */
public final class Nearest {

    private Nearest() {}

    /** The known name that is nearest to a mistyped one, if it is near at all. */
    public static Optional<String> to(String typed, Collection<String> known) {
        return known.stream()
                .sorted()
                .min(Comparator.comparingInt(k -> changes(typed, k)))
                .filter(k -> changes(typed, k) <= Math.max(1, k.length() / 3));
    }

    /** Letters to insert, drop or change (Levenshtein's distance), case apart. */
    private static int changes(String from, String to) {
        String a = from.toLowerCase(Locale.ROOT);
        String b = to.toLowerCase(Locale.ROOT);
        int[] last = new int[b.length() + 1];
        for (int j = 0; j <= b.length(); j++) {
            last[j] = j;
        }
        for (int i = 1; i <= a.length(); i++) {
            int[] row = new int[b.length() + 1];
            row[0] = i;
            for (int j = 1; j <= b.length(); j++) {
                int changed = last[j - 1] + (a.charAt(i - 1) == b.charAt(j - 1) ? 0 : 1);
                row[j] = Math.min(changed, 1 + Math.min(last[j], row[j - 1]));
            }
            last = row;
        }
        return last[b.length()];
    }
}
