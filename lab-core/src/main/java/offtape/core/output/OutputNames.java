package offtape.core.output;

import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.regex.Pattern;
import java.util.stream.StreamSupport;

/** Which names may be written into an output folder. */
final class OutputNames {

    private static final String RESERVED = ".offtape-";
    private static final Pattern BESIDE =
            Pattern.compile("\\..+\\.offtape-(lock|staging)", Pattern.DOTALL);

    private OutputNames() {}

    /**
     * Whether a name stays inside its folder: parts divided by {@code /}, none of them empty,
     * {@code .} or {@code ..}, and nothing that this system reads as another place or forbids.
     */
    static boolean isPlain(String name) {
        return name != null
                && Arrays.stream(name.split("/", -1))
                        .noneMatch(part -> part.isEmpty() || part.equals("."))
                && staysBelow(name);
    }

    private static boolean staysBelow(String name) {
        try {
            Path path = Path.of(name);
            return path.getRoot() == null
                    && StreamSupport.stream(path.spliterator(), false)
                            .noneMatch(part -> part.toString().equals(".."));
        } catch (InvalidPathException e) {
            return false;
        }
    }

    /** Whether the name is one of the mechanism's own at the top of a folder. */
    static boolean isReserved(String name) {
        return name.startsWith(RESERVED);
    }

    /** Whether it is that, or names a workplace beside the file or folder that is made in it. */
    static boolean isWorkplace(String name) {
        return isReserved(name) || BESIDE.matcher(name).matches();
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

    /** The name of a file below a root, with {@code /} between parts on every system. */
    static String below(Path root, Path file) {
        return root.relativize(file).toString().replace(file.getFileSystem().getSeparator(), "/");
    }
}
