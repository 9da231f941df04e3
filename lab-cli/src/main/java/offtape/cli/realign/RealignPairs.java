package offtape.cli.realign;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.stream.Stream;
import offtape.core.fault.UnusableInputException;
import offtape.core.text.Sentences;

/**
 * Originals and returns of two folders that belong together: the name of a return without its
 * ending is that of its original, or that with a suffix that begins with a hyphen, an underscore, a
 * space or a dot, as in {@code drums.wav} and {@code drums-tape.wav}. The same name goes before one
 * with a suffix; two that fit alike are no pair.
 *
 * @param pairs in the order of names
 * @param alone files without a partner, and why
 */
public record RealignPairs(List<RealignPair> pairs, List<String> alone) {

    private static final Sentences SAID = Sentences.near(RealignPairs.class);

    private static final Set<String> ENDINGS = Set.of("wav", "aif", "aiff", "aifc", "flac", "rf64");
    private static final String SUFFIX_BEGINS = "-_ .";

    /** Copies the lists. */
    public RealignPairs {
        pairs = List.copyOf(pairs);
        alone = List.copyOf(alone);
    }

    /**
     * The pairs of two folders.
     *
     * @throws UnusableInputException if a folder cannot be read
     */
    public static RealignPairs of(Path originals, Path returns) {
        List<Path> wet = new ArrayList<>(sounds(returns));
        List<RealignPair> pairs = new ArrayList<>();
        List<String> alone = new ArrayList<>();
        List<Path> dry = sounds(originals);
        for (Path original : dry) {
            String stem = stem(original);
            List<Path> fits = fits(stem, wet, dry);
            if (fits.size() == 1) {
                pairs.add(new RealignPair(original, fits.get(0), stem + ".wav"));
                wet.remove(fits.get(0));
            } else {
                alone.add(
                        fits.isEmpty()
                                ? SAID.say("no-return", original.getFileName())
                                : SAID.say("many-returns", original.getFileName(), names(fits)));
            }
        }
        wet.forEach(w -> alone.add(SAID.say("no-original", w.getFileName())));
        return new RealignPairs(pairs, alone);
    }

    private static List<Path> fits(String stem, List<Path> wet, List<Path> dry) {
        List<Path> same = wet.stream().filter(w -> stem(w).equalsIgnoreCase(stem)).toList();
        if (!same.isEmpty()) {
            return same;
        }
        return wet.stream()
                .filter(w -> isSuffixed(stem, stem(w)))
                .filter(w -> dry.stream().noneMatch(d -> isNearer(stem(d), stem, stem(w))))
                .toList();
    }

    private static boolean isSuffixed(String stem, String name) {
        return name.length() > stem.length()
                && name.regionMatches(true, 0, stem, 0, stem.length())
                && SUFFIX_BEGINS.indexOf(name.charAt(stem.length())) >= 0;
    }

    /** Whether a return belongs to another original whose name is longer. */
    private static boolean isNearer(String other, String stem, String name) {
        return other.length() > stem.length()
                && (other.equalsIgnoreCase(name) || isSuffixed(other, name));
    }

    private static String names(List<Path> files) {
        return String.join(", ", files.stream().map(f -> f.getFileName().toString()).toList());
    }

    private static String stem(Path file) {
        return RealignPair.stem(file.getFileName().toString());
    }

    private static List<Path> sounds(Path folder) {
        try (Stream<Path> files = Files.list(folder)) {
            return files.filter(Files::isRegularFile)
                    .filter(RealignPairs::isSound)
                    .sorted()
                    .toList();
        } catch (IOException e) {
            throw new UnusableInputException(SAID.say("folder-unreadable", folder), e);
        }
    }

    private static boolean isSound(Path file) {
        String name = file.getFileName().toString();
        String ending = name.substring(name.lastIndexOf('.') + 1).toLowerCase(Locale.ROOT);
        return !name.startsWith(".") && ENDINGS.contains(ending);
    }
}
