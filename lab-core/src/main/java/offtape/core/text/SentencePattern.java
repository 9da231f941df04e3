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

    private static final Pattern NUMBER = Pattern.compile("[-+−]?[0-9.]+");

    /** Fewer letters than these tell nothing: such a pattern would match what it does not mean. */
    private static final int FEWEST_LETTERS = 3;

    /** What stands before, between and behind the places, one more than there are places. */
    private final List<String> literals;

    private final List<Place> places;
    private final String other;
    private final int letters;

    /** What is filled in: the number of its argument, and whether it is a number. */
    private record Place(int argument, boolean isNumber) {}

    private SentencePattern(List<String> literals, List<Place> places, String other) {
        this.literals = List.copyOf(literals);
        this.places = List.copyOf(places);
        this.other = other;
        this.letters = (int) String.join("", literals).chars().filter(Character::isLetter).count();
    }

    /** The pattern, or empty if it has too few letters of its own to be known by. */
    static Optional<SentencePattern> of(String english, String other) {
        List<String> literals = new ArrayList<>();
        List<Place> places = new ArrayList<>();
        StringBuilder literal = new StringBuilder();
        Matcher place = PLACE.matcher(english);
        int from = 0;
        while (place.find()) {
            literal.append(english, from, place.start());
            from = place.end();
            if (isPercent(place)) {
                literal.append('%');
            } else {
                literals.add(literal.toString());
                literal.setLength(0);
                places.add(new Place(argument(place, places.size() + 1), isNumber(place)));
            }
        }
        literals.add(literal.append(english.substring(from)).toString());
        return Optional.of(new SentencePattern(literals, places, other))
                .filter(pattern -> pattern.letters >= FEWEST_LETTERS);
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
     * @param effort what may be spent on finding that out
     * @param words what is done with the words filled in
     * @param numbers what is done with the numbers filled in
     */
    Optional<String> translated(
            String sentence,
            Effort effort,
            UnaryOperator<String> words,
            UnaryOperator<String> numbers) {
        String[] filled = new String[places.size()];
        String last = literals.get(places.size());
        boolean isLike =
                sentence.startsWith(literals.get(0))
                        && sentence.endsWith(last)
                        && sentence.length() >= literals.get(0).length() + last.length();
        return isLike && fill(sentence, literals.get(0).length(), 0, filled, effort)
                ? Optional.of(said(filled, words, numbers))
                : Optional.empty();
    }

    /**
     * Finds what fills the places from {@code place} on; the shortest that leaves the rest whole.
     */
    private boolean fill(String sentence, int from, int place, String[] filled, Effort effort) {
        String behind = literals.get(place + 1);
        boolean isLast = place == places.size() - 1;
        int last = sentence.length() - behind.length();
        int at = isLast ? last : sentence.indexOf(behind, from);
        while (at >= from && effort.isLeftFor(1)) {
            filled[place] = sentence.substring(from, at);
            boolean isFitting =
                    !places.get(place).isNumber() || NUMBER.matcher(filled[place]).matches();
            if (isFitting
                    && (isLast
                            || fill(sentence, at + behind.length(), place + 1, filled, effort))) {
                return true;
            }
            at = isLast || at >= last ? -1 : sentence.indexOf(behind, at + 1);
        }
        return false;
    }

    private String said(
            String[] filled, UnaryOperator<String> words, UnaryOperator<String> numbers) {
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
            String content = filled[index(argument(place, count))];
            out.append(isNumber(place) ? numbers.apply(content) : words.apply(content));
        }
        return out.append(other.substring(from)).toString();
    }

    /** Where the English pattern has an argument first. */
    private int index(int argument) {
        int index = 0;
        while (places.get(index).argument() != argument) {
            index++;
        }
        return index;
    }

    private static int argument(Matcher place, int next) {
        return place.group(1) == null ? next : Integer.parseInt(place.group(1));
    }

    private static boolean isPercent(Matcher place) {
        return place.group(2).equals("%");
    }

    private static boolean isNumber(Matcher place) {
        return "dfeg".contains(place.group(2));
    }
}
