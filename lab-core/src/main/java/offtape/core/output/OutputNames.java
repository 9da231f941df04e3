package offtape.core.output;

import java.util.Arrays;

/** Which names may be written into an output folder. */
final class OutputNames {

    private static final String FORBIDDEN = "\\:*?\"<>|";
    private static final String RESERVED = ".offtape-";

    private OutputNames() {}

    /**
     * Whether a name stays inside its folder and means the same on every system: parts divided by
     * {@code /}, none empty, {@code .} or {@code ..}, no control character and none that some
     * system forbids.
     */
    static boolean isPlain(String name) {
        return name != null
                && name.chars().allMatch(c -> c >= ' ' && FORBIDDEN.indexOf(c) < 0)
                && Arrays.stream(name.split("/", -1))
                        .noneMatch(part -> part.isEmpty() || part.equals(".") || part.equals(".."));
    }

    /** Whether the name is one of the mechanism's own at the top of a folder. */
    static boolean isReserved(String name) {
        return name.startsWith(RESERVED);
    }

    /**
     * Lets usable names pass.
     *
     * @throws IllegalArgumentException if the name leads outside or is one of our own
     */
    static String checked(String name) {
        if (!isPlain(name) || isReserved(name)) {
            throw new IllegalArgumentException("not a usable output name: " + name);
        }
        return name;
    }
}
