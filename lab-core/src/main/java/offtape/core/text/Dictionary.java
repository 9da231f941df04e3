package offtape.core.text;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * What is known of a language: whole texts by their English, and patterns, those with the most
 * letters of their own first.
 *
 * @param language of the other side
 */
record Dictionary(Language language, Map<String, String> whole, List<SentencePattern> patterns) {

    private static final Pattern ARC_MINUTES = Pattern.compile("\\barc[ \u00a0]min\\b");
    private static final String TO = " to ";

    /** Copies so that nothing changes any more. */
    Dictionary {
        whole = Map.copyOf(whole);
        patterns = List.copyOf(patterns);
    }

    /** A text that is known as it stands. */
    Optional<String> exact(String text) {
        return Optional.ofNullable(whole.get(text));
    }

    /** A little word between others, which stays English if it is not known. */
    String between(String word) {
        return " " + whole.getOrDefault(word.strip(), word.strip()) + " ";
    }

    /** Numbers with units, from one to another, or with a unit that is words. */
    Optional<String> measure(String text) {
        return Amount.is(text) ? Optional.of(amount(text)) : range(text).or(() -> inWords(text));
    }

    /** A number alone. */
    String number(String plain) {
        return Amount.in(language, plain);
    }

    /** From one amount to another. */
    private Optional<String> range(String text) {
        int to = text.indexOf(TO);
        if (to < 0) {
            return Optional.empty();
        }
        String first = text.substring(0, to);
        String last = text.substring(to + TO.length());
        return Amount.is(first) && Amount.is(last)
                ? Optional.of(amount(first) + between(TO) + amount(last))
                : Optional.empty();
    }

    /** An amount whose unit is words. */
    private Optional<String> inWords(String text) {
        boolean isCounted = Amount.begins(text);
        for (int at = text.indexOf(' '); isCounted && at >= 0; at = text.indexOf(' ', at + 1)) {
            String unit = whole.get(text.substring(at + 1));
            if (unit != null && Amount.is(text.substring(0, at))) {
                return Optional.of(amount(text.substring(0, at)) + " " + unit);
            }
        }
        return Optional.empty();
    }

    /** Numbers as the language writes them, and the one unit that is words. */
    private String amount(String text) {
        return ARC_MINUTES
                .matcher(Amount.in(language, text))
                .replaceAll(
                        unit ->
                                Matcher.quoteReplacement(
                                        whole.getOrDefault("arc min", unit.group())));
    }
}
