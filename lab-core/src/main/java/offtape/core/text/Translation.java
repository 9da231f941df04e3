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
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.IntStream;

/**
 * Says in a reader's language what results and exceptions say in English. A sentence is known again
 * by the patterns of the English bundles ({@link Sentences}); what was filled in is translated too,
 * if it is a sentence or a word of theirs, and numbers are written as the language does. What no
 * bundle knows, such as a name, stays as it is. Immutable.
 */
public final class Translation {

    /** What may be on the class path; each that is there has an index of its bundles. */
    private static final List<String> MODULES = List.of("reference", "core", "report", "cli");

    private static final Pattern SENTENCE_END = Pattern.compile("(?<=[.!?:;]) (?=\\S)");
    private static final Pattern ARC_MINUTES = Pattern.compile("\\barc[ \u00a0]min\\b");
    private static final String AND = " and ";
    private static final String OR = " or ";
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

    private Optional<String> known(String text) {
        String same = whole.get(text);
        if (same != null) {
            return Optional.of(same);
        }
        if (Amount.is(text)) {
            return Optional.of(amount(text));
        }
        Optional<String> amount = range(text).or(() -> inWords(text));
        if (amount.isPresent()) {
            return amount;
        }
        return SENTENCE_END.matcher(text).find()
                ? Optional.empty()
                : byPattern(text).or(() -> atBeginning(text));
    }

    /** An amount whose unit is words. */
    private Optional<String> inWords(String text) {
        for (int at = text.indexOf(' '); at >= 0; at = text.indexOf(' ', at + 1)) {
            String unit = whole.get(text.substring(at + 1));
            if (unit != null && Amount.is(text.substring(0, at))) {
                return Optional.of(amount(text.substring(0, at)) + " " + unit);
            }
        }
        return Optional.empty();
    }

    /** What is a clause of several parts in its bundle and was given a full stop when shown. */
    private Optional<String> clause(String text) {
        int last = text.length() - 1;
        if (text.charAt(last) != '.') {
            return Optional.empty();
        }
        String words = text.substring(0, last);
        return Optional.ofNullable(whole.get(words))
                .or(() -> byPattern(words))
                .map(said -> said + ".");
    }

    /** A word that has a capital letter only because a sentence begins with it. */
    private Optional<String> atBeginning(String text) {
        boolean isWord =
                text.length() > 1
                        && Character.isUpperCase(text.charAt(0))
                        && Character.isLowerCase(text.charAt(1));
        return isWord
                ? Optional.ofNullable(
                                whole.get(
                                        Character.toLowerCase(text.charAt(0)) + text.substring(1)))
                        .map(said -> Character.toUpperCase(said.charAt(0)) + said.substring(1))
                : Optional.empty();
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
     * Of several sentences each run that is known, the shortest first, from the left; what is said
     * behind a dash on its own.
     */
    private String parts(String text) {
        String[] sentences = SENTENCE_END.split(text);
        if (sentences.length == 1) {
            return listed(text).or(() -> either(text)).orElse(text);
        }
        List<String> out = new ArrayList<>();
        int from = 0;
        while (from < sentences.length) {
            int dashed = firstDash(sentences, from);
            int to = from + 1;
            Optional<String> said = Optional.empty();
            if (!isNamed(sentences, from, dashed)) {
                said = run(sentences, from, to);
                while (said.isEmpty() && to < sentences.length) {
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
                && (whole.containsKey(head) || byPattern(head).isPresent())
                && run(sentences, from, dashed + 1).isEmpty();
    }

    private Optional<String> run(String[] sentences, int from, int to) {
        String text = String.join(" ", List.of(sentences).subList(from, to));
        String same = whole.get(text);
        return same != null
                ? Optional.of(same)
                : byPattern(text).or(() -> listed(text)).or(() -> clause(text));
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

    /** One thing or another, if each of them is known. */
    private Optional<String> either(String text) {
        int or = text.lastIndexOf(OR);
        if (or < 0) {
            return Optional.empty();
        }
        String before = text.substring(0, or);
        Optional<String> first = known(before).or(() -> listed(before)).or(() -> either(before));
        Optional<String> last = known(text.substring(or + OR.length()));
        return first.isPresent() && last.isPresent()
                ? Optional.of(
                        first.get()
                                + " "
                                + whole.getOrDefault(OR.strip(), OR.strip())
                                + " "
                                + last.get())
                : Optional.empty();
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
            return Optional.of(amount(part));
        }
        return range(part).or(() -> byPattern(part)).or(() -> atBeginning(part));
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
        return Optional.of(amount(first) + " " + word + " " + amount(last));
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
