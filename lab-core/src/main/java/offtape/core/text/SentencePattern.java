package offtape.core.text;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.UnaryOperator;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * One sentence as a pattern of {@link String#format} in English and in another language: knows a
 * finished English sentence again and says the same with the same contents in the other language.
 */
final class SentencePattern {

    private static final Pattern PLACE =
            Pattern.compile("%(?:([0-9]+)\\$)?[-#+0,(]*[0-9]*(?:\\.[0-9]+)?([sdfeg%])");

    /** Fewer letters than these tell nothing: such a pattern would match what it does not mean. */
    private static final int FEWEST_LETTERS = 3;

    private final Pattern english;
    private final List<Integer> places;
    private final String other;
    private final String start;
    private final int letters;

    private SentencePattern(
            Pattern english, List<Integer> places, String other, String start, int letters) {
        this.english = english;
        this.places = places;
        this.other = other;
        this.start = start;
        this.letters = letters;
    }

    /** The pattern, or empty if it has too few letters of its own to be known by. */
    static Optional<SentencePattern> of(String english, String other) {
        StringBuilder expression = new StringBuilder();
        List<Integer> places = new ArrayList<>();
        Matcher place = PLACE.matcher(english);
        int from = 0;
        int letters = 0;
        while (place.find()) {
            String literal = english.substring(from, place.start());
            from = place.end();
            if (isPercent(place)) {
                literal += "%";
            }
            expression.append(Pattern.quote(literal));
            letters += letters(literal);
            if (!isPercent(place)) {
                places.add(index(place, places.size() + 1));
                expression.append(isNumber(place) ? "([-+−]?[0-9.]+)" : "(.*?)");
            }
        }
        String rest = english.substring(from);
        expression.append(Pattern.quote(rest));
        letters += letters(rest);
        if (letters < FEWEST_LETTERS) {
            return Optional.empty();
        }
        return Optional.of(
                new SentencePattern(
                        Pattern.compile(expression.toString(), Pattern.DOTALL),
                        places,
                        other,
                        english.substring(0, english.indexOf('%')),
                        letters));
    }

    /** How much of it is its own and not filled in. */
    int letters() {
        return letters;
    }

    /** Whether it has places to be filled in. */
    static boolean hasPlaces(String pattern) {
        Matcher place = PLACE.matcher(pattern);
        while (place.find()) {
            if (!isPercent(place)) {
                return true;
            }
        }
        return false;
    }

    /**
     * An English sentence in the other language, or empty if it is not this one.
     *
     * @param words what is done with the words filled in
     * @param numbers what is done with the numbers filled in
     */
    Optional<String> translated(
            String sentence, UnaryOperator<String> words, UnaryOperator<String> numbers) {
        if (!sentence.startsWith(start)) {
            return Optional.empty();
        }
        Matcher found = english.matcher(sentence);
        if (!found.matches()) {
            return Optional.empty();
        }
        StringBuilder out = new StringBuilder();
        Matcher place = PLACE.matcher(other);
        int from = 0;
        int count = 0;
        while (place.find()) {
            out.append(other, from, place.start());
            from = place.end();
            if (isPercent(place)) {
                out.append('%');
                continue;
            }
            count++;
            int wanted = places.indexOf(index(place, count));
            String filled = found.group(wanted + 1);
            out.append(isNumber(place) ? numbers.apply(filled) : words.apply(filled));
        }
        return Optional.of(out.append(other.substring(from)).toString());
    }

    private static int index(Matcher place, int next) {
        return place.group(1) == null ? next : Integer.parseInt(place.group(1));
    }

    private static boolean isPercent(Matcher place) {
        return place.group(2).equals("%");
    }

    private static boolean isNumber(Matcher place) {
        return "dfeg".contains(place.group(2));
    }

    private static int letters(String text) {
        return (int) text.chars().filter(Character::isLetter).count();
    }
}
