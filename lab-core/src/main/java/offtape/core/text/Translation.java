package offtape.core.text;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SortedSet;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.regex.Pattern;

/**
 * Says in a reader's language what results and exceptions say in English. A sentence is known again
 * by the patterns of the English bundles ({@link Sentences}); what was filled in is translated too,
 * if it is a sentence or a word of theirs, and numbers are written as the language does. What no
 * bundle knows, such as a name, stays as it is. Immutable.
 */
public final class Translation {

    /** What may be on the class path; each that is there has an index of its bundles. */
    private static final List<String> MODULES = List.of("core", "report", "cli");

    private static final Pattern SENTENCE_END = Pattern.compile("(?<=[.!?:;]) (?=\\S)");
    private static final String AND = " and ";
    private static final String TO = " to ";
    private static final String COMMA = ", ";
    private static final String DASH = " – ";
    private static final String STOPS = ".:;";

    private final Language language;
    private final Map<String, String> whole;
    private final List<SentencePattern> patterns;

    private Translation(
            Language language, Map<String, String> whole, List<SentencePattern> patterns) {
        this.language = language;
        this.whole = whole;
        this.patterns = patterns;
    }

    /** The translation into a language by all bundles of sentences on the class path. */
    public static Translation to(Language language) {
        Map<String, String> whole = new TreeMap<>();
        List<SentencePattern> patterns = new ArrayList<>();
        if (language != Language.ENGLISH) {
            bundles().forEach(path -> read(path, language, whole, patterns));
        }
        patterns.sort(Comparator.comparingInt(SentencePattern::letters).reversed());
        return new Translation(language, Collections.unmodifiableMap(whole), List.copyOf(patterns));
    }

    private static void read(
            String path,
            Language language,
            Map<String, String> whole,
            List<SentencePattern> patterns) {
        Texts english = Texts.at(path, Language.ENGLISH.locale());
        Texts other = Texts.at(path, language.locale());
        for (String key : english.keys()) {
            String pattern = english.pattern(key);
            if (SentencePattern.hasPlaces(pattern)) {
                SentencePattern.of(pattern, other.pattern(key)).ifPresent(patterns::add);
            } else {
                whole.put(english.say(key), other.say(key));
            }
        }
    }

    /** The paths of all bundles, in order. */
    private static SortedSet<String> bundles() {
        SortedSet<String> paths = new TreeSet<>();
        for (String module : MODULES) {
            try (InputStream in = Translation.class.getResourceAsStream(Sentences.INDEX + module)) {
                if (in != null) {
                    new String(in.readAllBytes(), StandardCharsets.UTF_8)
                            .lines()
                            .filter(line -> !line.isBlank())
                            .forEach(paths::add);
                }
            } catch (IOException e) {
                throw new UncheckedIOException(e);
            }
        }
        return paths;
    }

    /** The reader's language. */
    public Language language() {
        return language;
    }

    /** English text, a sentence or several, in the language; what is not known stays as it is. */
    public String of(String english) {
        if (language == Language.ENGLISH || english == null || english.isBlank()) {
            return english;
        }
        return known(english).orElseGet(() -> parts(english));
    }

    private Optional<String> known(String text) {
        String same = whole.get(text);
        if (same != null) {
            return Optional.of(same);
        }
        if (Amount.is(text)) {
            return Optional.of(Amount.in(language, text));
        }
        Optional<String> range = range(text);
        if (range.isPresent()) {
            return range;
        }
        return SENTENCE_END.matcher(text).find() ? Optional.empty() : byPattern(text);
    }

    private Optional<String> byPattern(String text) {
        for (SentencePattern pattern : patterns) {
            Optional<String> said =
                    pattern.translated(text, this::of, number -> Amount.in(language, number));
            if (said.isPresent()) {
                return said;
            }
        }
        return Optional.empty();
    }

    /**
     * Of several sentences each run that is known, the shortest first, from the left. What is in no
     * run is parted at a dash if one side of it is known, else said without its stop.
     */
    private String parts(String text) {
        String[] sentences = SENTENCE_END.split(text);
        List<String> out = new ArrayList<>();
        int from = 0;
        while (from < sentences.length) {
            int to = from + 1;
            Optional<String> said = run(sentences, from, to);
            while (said.isEmpty() && to < sentences.length) {
                to++;
                said = run(sentences, from, to);
            }
            Optional<String> head = said.isPresent() ? Optional.empty() : head(sentences[from]);
            if (head.isPresent()) {
                out.add(head.get() + DASH.stripTrailing());
                sentences[from] = rest(sentences[from]);
                continue;
            }
            out.add(said.orElse(stopped(sentences[from])));
            from = said.isPresent() ? to : from + 1;
        }
        return String.join(" ", out);
    }

    /** What stands before a dash, if that or what stands behind it is known. */
    private Optional<String> head(String sentence) {
        int dash = sentence.indexOf(DASH);
        if (dash < 0) {
            return Optional.empty();
        }
        String head = sentence.substring(0, dash);
        String rest = rest(sentence);
        boolean isRestKnown = !stopped(rest).equals(rest);
        return phrase(head).or(() -> isRestKnown ? Optional.of(head) : Optional.empty());
    }

    private static String rest(String sentence) {
        return sentence.substring(sentence.indexOf(DASH) + DASH.length());
    }

    /** Known words, perhaps with a stop behind them, or the sentence as it is. */
    private String stopped(String sentence) {
        int last = sentence.length() - 1;
        boolean isStopped = last > 0 && STOPS.indexOf(sentence.charAt(last)) >= 0;
        Optional<String> words =
                isStopped
                        ? phrase(sentence.substring(0, last)).map(w -> w + sentence.charAt(last))
                        : phrase(sentence);
        return words.orElse(sentence);
    }

    private Optional<String> phrase(String words) {
        return known(words).or(() -> listed(words));
    }

    private Optional<String> run(String[] sentences, int from, int to) {
        String text = String.join(" ", List.of(sentences).subList(from, to));
        String same = whole.get(text);
        return same != null ? Optional.of(same) : byPattern(text).or(() -> listed(text));
    }

    /** Several things with commas and an {@code and}, if each of them is known. */
    private Optional<String> listed(String text) {
        for (int and = text.lastIndexOf(AND); and >= 0; and = text.lastIndexOf(AND, and - 1)) {
            Optional<String> last = item(text.substring(and + AND.length()));
            Optional<String> first = items(text.substring(0, and));
            if (first.isPresent() && last.isPresent()) {
                return Optional.of(first.get() + joined() + last.get());
            }
        }
        return text.contains(COMMA) ? items(text) : Optional.empty();
    }

    private Optional<String> items(String text) {
        List<String> out = new ArrayList<>();
        for (String part : text.split(COMMA)) {
            Optional<String> said = item(part);
            if (said.isEmpty()) {
                return Optional.empty();
            }
            out.add(said.get());
        }
        return Optional.of(String.join(COMMA, out));
    }

    private Optional<String> item(String part) {
        String same = whole.get(part);
        if (same != null) {
            return Optional.of(same);
        }
        if (Amount.is(part)) {
            return Optional.of(Amount.in(language, part));
        }
        return range(part).or(() -> byPattern(part));
    }

    private String joined() {
        return " " + whole.getOrDefault(AND.strip(), AND.strip()) + " ";
    }

    /** From one amount to another. */
    private Optional<String> range(String text) {
        int to = text.indexOf(TO);
        if (to < 0) {
            return Optional.empty();
        }
        String first = text.substring(0, to);
        String last = text.substring(to + TO.length());
        if (!Amount.is(first) || !Amount.is(last)) {
            return Optional.empty();
        }
        String word = whole.getOrDefault(TO.strip(), TO.strip());
        return Optional.of(
                Amount.in(language, first) + " " + word + " " + Amount.in(language, last));
    }
}
