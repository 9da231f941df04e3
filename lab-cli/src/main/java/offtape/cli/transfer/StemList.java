package offtape.cli.transfer;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import offtape.core.fault.RefusedOutputException;
import offtape.core.text.Sentences;

/** The stems of a run and the names under which they come back. */
public final class StemList {

    private static final Sentences SAID = Sentences.near(StemList.class);

    private final List<Path> files;

    /**
     * Stems for a folder.
     *
     * @throws RefusedOutputException if two of them would get the same name, or one would be
     *     replaced by its own return
     */
    public StemList(List<Path> files, Path folder) {
        this.files = List.copyOf(files);
        Map<String, Path> taken = new HashMap<>();
        for (Path file : files) {
            // some systems do not tell capital letters from small ones
            Path other = taken.putIfAbsent(output(file).toLowerCase(Locale.ROOT), file);
            if (other != null) {
                throw new RefusedOutputException(
                        SAID.say("same-return", other, file, output(file)));
            }
            if (isSame(file, folder.resolve(output(file)))) {
                throw new RefusedOutputException(SAID.say("own-return", file));
            }
        }
    }

    private static boolean isSame(Path a, Path b) {
        try {
            return Files.exists(b) && Files.isSameFile(a, b);
        } catch (IOException e) {
            // what is not there will be told when the stem is looked at
            return false;
        }
    }

    /** The name under which a stem comes back. */
    static String output(Path file) {
        String name = file.getFileName().toString();
        int dot = name.lastIndexOf('.');
        return (dot > 0 ? name.substring(0, dot) : name) + ".wav";
    }

    /** All names. */
    public String[] outputs() {
        return files.stream().map(StemList::output).toArray(String[]::new);
    }

    /**
     * Looks at all of them.
     *
     * @param filter pre-emphasis, or null
     * @throws offtape.core.fault.UnusableInputException if one cannot be sent
     */
    public List<Stem> read(PreEmphasis filter) {
        List<Stem> stems = new ArrayList<>();
        for (Path file : files) {
            stems.add(Stem.of(file, output(file), filter));
        }
        return stems;
    }
}
