package offtape.core.text;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.regex.Pattern;
import java.util.stream.IntStream;

/** One text on its way into another language: sentences, clauses, names before dashes. */
final class Retelling {

    private static final Pattern SENTENCE_END = Pattern.compile("(?<=[.!?:;]) (?=\\S)");
    private static final String DASH = " – ";
    private static final String STOPS = ".:;";

    private final Dictionary dictionary;
    private final Effort effort;
    private final Listing listing;

    Retelling(Dictionary dictionary, Effort effort) {
        this.dictionary = dictionary;
        this.effort = effort;
        this.listing = new Listing(dictionary, this);
    }

    /** The text in the language; what is not known stays as it is. */
    String of(String english) {
        return known(english)
                .or(() -> parted(english))
                .or(() -> stopped(english))
                .orElseGet(() -> parts(english));
    }

    /** A name, a dash and what is said of it in a sentence, if either is known. */
    private Optional<String> parted(String text) {
        int dash = text.indexOf(DASH);
        if (dash < 0 || SENTENCE_END.matcher(text).find()) {
            return Optional.empty();
        }
        String said = of(text.substring(0, dash)) + DASH + of(text.substring(dash + DASH.length()));
        return Optional.of(said).filter(t -> !t.equals(text));
    }

    /** Known words with a stop behind them. */
    private Optional<String> stopped(String text) {
        int last = text.length() - 1;
        if (STOPS.indexOf(text.charAt(last)) < 0 || SENTENCE_END.matcher(text).find()) {
            return Optional.empty();
        }
        String words = text.substring(0, last);
        return Optional.of(of(words)).filter(t -> !t.equals(words)).map(t -> t + text.charAt(last));
    }

    /** A text without others beside it. */
    Optional<String> known(String text) {
        Optional<String> word = dictionary.exact(text).or(() -> dictionary.measure(text));
        if (word.isPresent() || SENTENCE_END.matcher(text).find()) {
            return word;
        }
        return byPattern(text).or(() -> atBeginning(text));
    }

    /** What is a clause of several parts in its bundle and was given a full stop when shown. */
    private Optional<String> clause(String text) {
        int last = text.length() - 1;
        if (text.charAt(last) != '.') {
            return Optional.empty();
        }
        String words = text.substring(0, last);
        return dictionary.exact(words).or(() -> byPattern(words)).map(said -> said + ".");
    }

    /** A word that has a capital letter only because a sentence begins with it. */
    Optional<String> atBeginning(String text) {
        boolean isWord =
                text.length() > 1
                        && Character.isUpperCase(text.charAt(0))
                        && Character.isLowerCase(text.charAt(1));
        return isWord
                ? dictionary
                        .exact(Character.toLowerCase(text.charAt(0)) + text.substring(1))
                        .map(said -> Character.toUpperCase(said.charAt(0)) + said.substring(1))
                : Optional.empty();
    }

    /** A text that one pattern describes. */
    Optional<String> byPattern(String text) {
        if (!effort.isLeftForAll(text)) {
            return Optional.empty();
        }
        for (SentencePattern pattern : dictionary.patterns()) {
            Optional<String> said = pattern.translated(text, effort, this::of, dictionary::number);
            if (said.isPresent()) {
                return said;
            }
        }
        return Optional.empty();
    }

    /**
     * Of several sentences each run that is known, the shortest first, from the left; what is said
     * behind a dash on its own.
     */
    private String parts(String text) {
        String[] sentences = SENTENCE_END.split(text);
        if (sentences.length == 1) {
            return listing.of(text).or(() -> listing.either(text)).orElse(text);
        }
        List<String> out = new ArrayList<>();
        int from = 0;
        while (from < sentences.length && !effort.isSpent()) {
            int dashed = firstDash(sentences, from);
            int to = from + 1;
            Optional<String> said = Optional.empty();
            if (!isNamed(sentences, from, dashed)) {
                said = run(sentences, from, to);
                while (said.isEmpty() && to < sentences.length && !effort.isSpent()) {
                    to++;
                    said = run(sentences, from, to);
                }
                dashed = hasDash(sentences[from]) ? from : -1;
            }
            if (said.isPresent()) {
                out.add(said.get());
                from = to;
            } else if (dashed < 0) {
                out.add(of(sentences[from]));
                from++;
            } else {
                out.add(of(head(sentences, from, dashed)) + DASH.stripTrailing());
                int dash = sentences[dashed].indexOf(DASH);
                sentences[dashed] = sentences[dashed].substring(dash + DASH.length());
                from = dashed;
            }
        }
        out.addAll(List.of(sentences).subList(from, sentences.length));
        return String.join(" ", out);
    }

    private static boolean hasDash(String sentence) {
        return sentence.contains(DASH);
    }

    private static int firstDash(String[] sentences, int from) {
        return IntStream.range(from, sentences.length)
                .filter(i -> hasDash(sentences[i]))
                .findFirst()
                .orElse(-1);
    }

    /** What stands before the first dash, which may hold colons itself. */
    private static String head(String[] sentences, int from, int dashed) {
        String text = String.join(" ", List.of(sentences).subList(from, dashed + 1));
        return text.substring(0, text.indexOf(DASH));
    }

    /** Whether a name that is known stands before the first dash, and the dash is of no pattern. */
    private boolean isNamed(String[] sentences, int from, int dashed) {
        if (dashed < 0) {
            return false;
        }
        String head = head(sentences, from, dashed);
        return !head.contains(". ")
                && (dictionary.exact(head).isPresent() || byPattern(head).isPresent())
                && run(sentences, from, dashed + 1).isEmpty();
    }

    private Optional<String> run(String[] sentences, int from, int to) {
        String text = String.join(" ", List.of(sentences).subList(from, to));
        return dictionary
                .exact(text)
                .or(() -> byPattern(text))
                .or(() -> listing.of(text))
                .or(() -> clause(text));
    }
}
