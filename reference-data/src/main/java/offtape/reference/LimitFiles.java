package offtape.reference;

import java.util.List;

/** The sets of limits that ship with this module, as texts. */
public final class LimitFiles {

    private static final List<String> NAMES =
            List.of("din45500-4", "studio-practice", "cassette-practice");

    private LimitFiles() {}

    /** Their names. */
    public static List<String> names() {
        return NAMES;
    }

    /**
     * The text of one of them.
     *
     * @throws IllegalArgumentException if there is none of that name
     */
    public static String text(String name) {
        return Resources.text("limits/" + name + ".json");
    }
}
