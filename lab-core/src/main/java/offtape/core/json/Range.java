package offtape.core.json;

import java.util.List;
import java.util.Objects;
import offtape.core.fault.UnusableInputException;
import offtape.core.text.InertText;
import offtape.core.text.Sentences;

/** Checks of single members; what they throw is a sentence to which the reader adds the place. */
public final class Range {

    private static final Sentences SAID = Sentences.near(Range.class);

    private static final int MOST_ENTRIES = 32;

    private Range() {}

    /** {@code value} if it is absent or lies in the closed range. */
    public static Double within(
            String name, Double value, double lowest, double highest, String unit) {
        if (value != null && !(value >= lowest && value <= highest)) {
            throw new UnusableInputException(
                    SAID.say(
                            "out-of-range",
                            name,
                            plain(value),
                            plain(lowest),
                            plain(highest) + " " + unit));
        }
        return value;
    }

    /** A name that can stand in a report, or what stands for it. */
    public static String name(String name, String otherwise) {
        if (name == null || name.isBlank()) {
            return otherwise;
        }
        require(name.length() <= 40, SAID.say("name-too-long"));
        require(name.codePoints().noneMatch(InertText::isSteering), SAID.say("name-not-a-line"));
        return name.strip();
    }

    /** An unchangeable copy of at most 32 entries, empty where the list is absent. */
    public static <T> List<T> copy(String name, List<T> list) {
        return copy(name, list, MOST_ENTRIES);
    }

    /** An unchangeable copy, empty where the list is absent. */
    public static <T> List<T> copy(String name, List<T> list, int mostEntries) {
        if (list == null) {
            return List.of();
        }
        require(list.size() <= mostEntries, SAID.say("too-many-entries", name, mostEntries));
        require(list.stream().noneMatch(Objects::isNull), SAID.say("empty-entry", name));
        return List.copyOf(list);
    }

    /** Refuses with a sentence unless {@code holds}. */
    public static void require(boolean holds, String sentence) {
        if (!holds) {
            throw new UnusableInputException(sentence);
        }
    }

    private static String plain(double value) {
        return value == Math.rint(value) && Math.abs(value) < 1e9
                ? Long.toString((long) value)
                : Double.toString(value);
    }
}
