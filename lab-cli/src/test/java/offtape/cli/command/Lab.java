package offtape.cli.command;

import static org.junit.jupiter.api.Assertions.assertEquals;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import java.util.TreeMap;
import java.util.concurrent.TimeUnit;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** A workshop for tests: a folder with a programme, and hands to make files good and bad. */
final class Lab {

    private final Path root;
    private final Path programme;

    Lab(Path root) {
        this.root = root;
        this.programme = Mini.write(root.resolve("programme"));
    }

    /** A command line that should be answered with an exit code and a sentence. */
    record Case(String name, Function<Lab, Object[]> line, int code, String sentence) {

        static Case of(String name, int code, String sentence, Function<Lab, Object[]> line) {
            return new Case(name, line, code, sentence);
        }

        @Override
        public String toString() {
            return name;
        }
    }

    Path programme() {
        return programme;
    }

    Path path(String name) {
        return root.resolve(name);
    }

    /** The arguments that measure a return. */
    Object[] measure(Path recording) {
        return measure(recording, programme);
    }

    Object[] measure(Path recording, Path withProgramme) {
        return line("measure", recording, "--programme", withProgramme, "--out", path("session"));
    }

    /** The results of a return that can be measured, as that of a tape recorded elsewhere. */
    JsonNode results(Path recording, Path withProgramme) {
        Object[] line =
                line(
                        measure(recording, withProgramme),
                        "--mode",
                        "reference-tape",
                        "--json",
                        "--force");
        Tool.Outcome outcome = Tool.run(line);
        assertEquals(0, outcome.code(), outcome.err());
        try {
            return new ObjectMapper().readTree(outcome.out());
        } catch (IOException e) {
            throw new IllegalStateException(outcome.out(), e);
        }
    }

    JsonNode results(Path recording) {
        return results(recording, programme);
    }

    /** A line with more words at its end. */
    static Object[] line(Object[] line, Object... more) {
        return Stream.concat(Stream.of(line), Stream.of(more)).toArray();
    }

    static Object[] line(Object... words) {
        return words;
    }

    Path file(String name, byte[] content) {
        try {
            Files.createDirectories(path(name).getParent());
            return Files.write(path(name), content);
        } catch (IOException e) {
            throw new IllegalStateException(e);
        }
    }

    Path file(String name, String content) {
        return file(name, content.getBytes(StandardCharsets.UTF_8));
    }

    /** A return in 24 bits. */
    Path wav(String name, double[]... sound) {
        return file(name, Wav.PCM_24.of(Mini.RATE, sound));
    }

    byte[] bytes(Path file) {
        try {
            return Files.readAllBytes(file);
        } catch (IOException e) {
            throw new IllegalStateException(e);
        }
    }

    /** Where the content of a chunk begins in a RIFF file. */
    static int body(byte[] wav, String id) {
        ByteBuffer bytes = ByteBuffer.wrap(wav).order(ByteOrder.LITTLE_ENDIAN);
        int at = 12;
        while (!new String(wav, at, 4, StandardCharsets.US_ASCII).equals(id)) {
            int size = bytes.getInt(at + 4);
            at += 8 + size + (size & 1);
        }
        return at + 8;
    }

    /** Bytes with one 32-bit number of them changed. */
    static byte[] patched(byte[] bytes, int offset, int value) {
        byte[] copy = bytes.clone();
        ByteBuffer.wrap(copy).order(ByteOrder.LITTLE_ENDIAN).putInt(offset, value);
        return copy;
    }

    static double[] tone(double hz, double peak, double seconds) {
        double[] x = new double[(int) Math.round(seconds * Mini.RATE)];
        Arrays.setAll(x, i -> peak * Math.sin(2 * Math.PI * hz * i / Mini.RATE));
        return x;
    }

    static double[] noise(long seed, double rms, double seconds) {
        Random random = new Random(seed);
        double[] x = new double[(int) Math.round(seconds * Mini.RATE)];
        Arrays.setAll(x, i -> Math.max(-1, Math.min(1, rms * random.nextGaussian())));
        return x;
    }

    /** Runs a case and checks its answer, and that it left every file and folder as it was. */
    void check(Case c) {
        Object[] line = c.line().apply(this);
        Map<String, Long> before = tree();
        Tool.Outcome outcome = Tool.run(line);
        String expected = c.sentence().replace("{lab}", root.toString());
        assertEquals("offtape: " + expected, lastLine(outcome.err()), c.name());
        assertEquals(c.code(), outcome.code(), outcome.err());
        assertEquals("", outcome.out());
        assertEquals(before, tree(), "files and folders after " + c.name());
    }

    private static String lastLine(String text) {
        String[] lines = text.split("\n");
        return lines[lines.length - 1];
    }

    /** All files and folders, each file with a print of its size and time stamp. */
    Map<String, Long> tree() {
        Map<String, Long> tree = new TreeMap<>();
        try (Stream<Path> all = Files.walk(root)) {
            all.forEach(p -> tree.put(root.relativize(p).toString(), print(p)));
        } catch (IOException e) {
            throw new IllegalStateException(e);
        }
        return tree;
    }

    /** The names of what lies directly in a folder, hidden things too. */
    Set<String> namesIn(String folder) {
        try (Stream<Path> all = Files.list(path(folder))) {
            return all.map(p -> p.getFileName().toString()).collect(Collectors.toSet());
        } catch (IOException e) {
            throw new IllegalStateException(e);
        }
    }

    private static long print(Path p) {
        try {
            return Files.isRegularFile(p)
                    ? 31 * Files.size(p) + Files.getLastModifiedTime(p).to(TimeUnit.NANOSECONDS)
                    : -1;
        } catch (IOException e) {
            throw new IllegalStateException(e);
        }
    }

    /** A second name for a file. */
    Path same(String name, Path file) {
        try {
            Files.createDirectories(path(name).getParent());
            return Files.createLink(path(name), file);
        } catch (IOException e) {
            throw new IllegalStateException(e);
        }
    }
}
