package offtape.report.judge;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Collectors;
import offtape.core.text.Sentences;
import offtape.report.result.Verdict;

/** Checks in words that somebody understands who does not know the trade's names. */
final class CheckWords {

    private static final Sentences SAID = Sentences.near(CheckWords.class);

    private CheckWords() {}

    /**
     * One sentence a limit, for both channels together.
     *
     * @param key of the sentence that tells what the figure means, its values and the limit
     */
    static List<String> of(String key, List<Verdict.Check> checks) {
        Map<String, List<Verdict.Check>> byLimit =
                checks.stream()
                        .collect(
                                Collectors.groupingBy(
                                        c -> plain(c) + c.limit(),
                                        LinkedHashMap::new,
                                        Collectors.toList()));
        return byLimit.values().stream().map(same -> told(key, same)).toList();
    }

    /** The quantities of checks, one after the other. */
    static String names(List<Verdict.Check> checks) {
        return checks.stream()
                .map(Verdict.Check::quantity)
                .distinct()
                .collect(Collectors.joining("; "));
    }

    private static String told(String key, List<Verdict.Check> same) {
        return SAID.say(
                key,
                plain(same.get(0)),
                same.stream()
                        .map(c -> c.quantity() + ": " + value(c))
                        .collect(Collectors.joining("; ")),
                same.get(0).limit());
    }

    private static String plain(Verdict.Check check) {
        return Judged.of(check).map(Judged::plain).orElseGet(() -> SAID.say("plain-some"));
    }

    /** No more digits than the uncertainty carries. */
    private static String value(Verdict.Check check) {
        double doubt = check.uncertainty() == null ? 0 : check.uncertainty();
        int most = "%".equals(check.unit()) ? 3 : 2;
        int decimals =
                doubt > 0
                        ? (int) Math.max(0, Math.min(most, -Math.floor(Math.log10(doubt))))
                        : most;
        String number = String.format(Locale.ROOT, "%." + decimals + "f", check.value());
        return number.replace('-', '−') + (check.unit() == null ? "" : " " + check.unit());
    }
}
