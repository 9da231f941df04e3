package offtape.core.text;

import java.util.Optional;

/** Several things in one text, with commas, an {@code and} or an {@code or} between them. */
final class Listing {

    private static final String AND = " and ";
    private static final String OR = " or ";
    private static final String COMMA = ", ";

    /** No list of ours is so long. */
    private static final int MOST = 40;

    private final Dictionary dictionary;
    private final Retelling retelling;

    Listing(Dictionary dictionary, Retelling retelling) {
        this.dictionary = dictionary;
        this.retelling = retelling;
    }

    /** Several things with commas and an {@code and}, if each of them is known. */
    Optional<String> of(String text) {
        for (int and = text.lastIndexOf(AND); and >= 0; and = text.lastIndexOf(AND, and - 1)) {
            Optional<String> last = item(text.substring(and + AND.length()));
            if (last.isPresent()) {
                Optional<String> first = items(text.substring(0, and));
                if (first.isPresent()) {
                    return Optional.of(first.get() + dictionary.between(AND) + last.get());
                }
            }
        }
        return text.contains(COMMA) ? items(text) : Optional.empty();
    }

    /** One thing or another, if each of them is known. */
    Optional<String> either(String text) {
        int or = text.lastIndexOf(OR);
        if (or < 0) {
            return Optional.empty();
        }
        Optional<String> last = retelling.known(text.substring(or + OR.length()));
        if (last.isEmpty()) {
            return Optional.empty();
        }
        String before = text.substring(0, or);
        return retelling
                .known(before)
                .or(() -> of(before))
                .or(() -> either(before))
                .map(first -> first + dictionary.between(OR) + last.get());
    }

    /** Things with commas between them, some of which may hold commas themselves. */
    private Optional<String> items(String text) {
        String[] parts = text.split(COMMA);
        if (parts.length > MOST) {
            return Optional.empty();
        }
        String[] rest = new String[parts.length + 1];
        rest[parts.length] = "";
        for (int from = parts.length - 1; from >= 0; from--) {
            StringBuilder thing = new StringBuilder();
            for (int to = from + 1; to <= parts.length && rest[from] == null; to++) {
                thing.append(to == from + 1 ? "" : COMMA).append(parts[to - 1]);
                if (rest[to] != null) {
                    String behind = to == parts.length ? "" : COMMA + rest[to];
                    rest[from] = item(thing.toString()).map(said -> said + behind).orElse(null);
                }
            }
        }
        return Optional.ofNullable(rest[0]);
    }

    private Optional<String> item(String part) {
        return dictionary
                .exact(part)
                .or(() -> dictionary.measure(part))
                .or(() -> retelling.byPattern(part))
                .or(() -> retelling.atBeginning(part));
    }
}
