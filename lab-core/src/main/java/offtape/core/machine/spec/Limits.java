package offtape.core.machine.spec;

import java.util.List;
import java.util.Objects;
import offtape.core.fault.UnusableInputException;
import offtape.core.text.Sentences;

/**
 * Checks of single members; what they throw is a sentence without the place, added by the reader.
 */
final class Limits {

    private static final Sentences SAID = Sentences.near(Limits.class);

    private Limits() {}

    /** {@code value} if it is finite and lies in the closed range. */
    static double within(String name, double value, double lowest, double highest, String unit) {
        if (!(value >= lowest && value <= highest)) {
            throw new UnusableInputException(
                    SAID.say(
                            "out-of-range",
                            name,
                            plain(value),
                            plain(lowest),
                            unit.isEmpty() ? plain(highest) : plain(highest) + " " + unit));
        }
        return value;
    }

    /** As {@link #within}, but absent stays absent. */
    static Double withinIfGiven(
            String name, Double value, double lowest, double highest, String unit) {
        return value == null ? null : within(name, value, lowest, highest, unit);
    }

    /** {@code value}, or {@code fallback} where it is absent. */
    static <T> T orElse(T value, T fallback) {
        return value == null ? fallback : value;
    }

    /** An unchangeable copy, empty where the list is absent. */
    static <T> List<T> copy(String name, List<T> list, int most) {
        if (list == null) {
            return List.of();
        }
        if (list.size() > most) {
            throw new UnusableInputException(SAID.say("too-many-entries", name, list.size(), most));
        }
        if (list.stream().anyMatch(Objects::isNull)) {
            throw new UnusableInputException(SAID.say("empty-entry", name));
        }
        return List.copyOf(list);
    }

    /** Refuses unless a member was given. */
    static void given(String name, Object value) {
        if (value == null) {
            throw new UnusableInputException(SAID.say("missing", name));
        }
    }

    /** Refuses with a sentence unless {@code holds}. */
    static void require(boolean holds, String sentence) {
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
