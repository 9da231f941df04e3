package offtape.cli.realign;

import java.nio.file.Path;

/**
 * An original and its return.
 *
 * @param original file that was sent
 * @param returned file that came back
 * @param output name of the file to be written
 */
public record RealignPair(Path original, Path returned, String output) {

    /** Name of the report beside a file: its own without the ending, and {@code .realign.json}. */
    public static String report(String output) {
        return stem(output) + ".realign.json";
    }

    /** A file name without its ending. */
    static String stem(String name) {
        int dot = name.lastIndexOf('.');
        return dot > 0 ? name.substring(0, dot) : name;
    }
}
