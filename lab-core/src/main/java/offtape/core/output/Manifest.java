package offtape.core.output;

import com.fasterxml.jackson.annotation.JsonPropertyOrder;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.util.Collection;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import offtape.core.fault.UnusableInputException;
import offtape.core.json.BoundedJson;
import offtape.core.json.JsonLayout;

/**
 * What we wrote into a folder: names relative to it, with {@code /} between parts, and the SHA-256
 * of each. A name may appear twice while files are being replaced, with the digest before and
 * after, so that a run that died meanwhile has left only files known to be ours.
 */
@JsonPropertyOrder({"format", "version", "files"})
record Manifest(String format, int version, List<Entry> files) {

    static final String FILE_NAME = ".offtape-manifest.json";

    private static final String FORMAT = "offtape-manifest";
    private static final long LARGEST_BYTES = 16 << 20;
    private static final Comparator<Entry> ORDER =
            Comparator.comparing(Entry::name).thenComparing(Entry::sha256);

    @JsonPropertyOrder({"name", "sha256"})
    record Entry(String name, String sha256) {}

    private static Manifest of(Stream<Entry> entries) {
        return new Manifest(FORMAT, 1, entries.distinct().sorted(ORDER).toList());
    }

    /** A manifest of nothing. */
    static Manifest empty() {
        return of(Stream.empty());
    }

    /** The manifest of files as they lie under a root. */
    static Manifest of(Path root, Collection<String> names) {
        return of(names.stream().map(n -> new Entry(n, Sha256.ofFile(root.resolve(n)))));
    }

    /** The manifest in a folder, or nothing if there is none that can be understood. */
    static Optional<Manifest> in(Path folder) {
        Path file = folder.resolve(FILE_NAME);
        try {
            if (!Files.isRegularFile(file, LinkOption.NOFOLLOW_LINKS)
                    || Files.size(file) > LARGEST_BYTES) {
                return Optional.empty();
            }
            Manifest read = mapper().readValue(file.toFile(), Manifest.class);
            return Optional.ofNullable(read).filter(Manifest::understood);
        } catch (IOException e) {
            return Optional.empty();
        }
    }

    private boolean understood() {
        return FORMAT.equals(format)
                && version == 1
                && files != null
                && files.stream()
                        .allMatch(
                                e ->
                                        e != null
                                                && OutputNames.isPlain(e.name())
                                                && Objects.nonNull(e.sha256()));
    }

    /** Whether a name is listed. */
    boolean lists(String name) {
        return files.stream().anyMatch(e -> e.name().equals(name));
    }

    /** The first listed file that is there but no longer as we wrote it. */
    Optional<String> changedIn(Path folder) {
        return files.stream()
                .map(Entry::name)
                .distinct()
                .filter(n -> Files.exists(folder.resolve(n), LinkOption.NOFOLLOW_LINKS))
                .filter(n -> !holds(folder, n))
                .findFirst();
    }

    /** Whether the file of that name is listed and still as we wrote it. */
    boolean holds(Path folder, String name) {
        Path file = folder.resolve(name);
        return Files.isRegularFile(file, LinkOption.NOFOLLOW_LINKS)
                && lists(name)
                && digest(file).map(d -> files.contains(new Entry(name, d))).orElse(false);
    }

    private static Optional<String> digest(Path file) {
        try {
            return Optional.of(Sha256.ofFile(file));
        } catch (UnusableInputException e) {
            // what cannot be read cannot be shown to be ours
            return Optional.empty();
        }
    }

    /** Both lists together. */
    Manifest with(Manifest other) {
        return of(Stream.concat(files.stream(), other.files.stream()));
    }

    /** This list with the other's names taken over from it. */
    Manifest replacedBy(Manifest other) {
        Set<String> names = new HashSet<>();
        other.files.forEach(e -> names.add(e.name()));
        return of(
                Stream.concat(
                        files.stream().filter(e -> !names.contains(e.name())),
                        other.files.stream()));
    }

    /** Writes it as JSON. */
    void write(Path file) throws IOException {
        byte[] json = mapper().writer(JsonLayout.objectsAndLists()).writeValueAsBytes(this);
        Files.write(file, json);
        Placement.settle(file);
    }

    private static ObjectMapper mapper() {
        return BoundedJson.mapper(LARGEST_BYTES).build();
    }
}
