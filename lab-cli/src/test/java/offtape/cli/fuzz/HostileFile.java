package offtape.cli.fuzz;

import static org.junit.jupiter.api.Assertions.assertTrue;

import com.sun.management.ThreadMXBean;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.lang.management.ManagementFactory;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import java.util.function.Function;
import java.util.function.Supplier;
import offtape.core.fault.RefusedOutputException;
import offtape.core.fault.UnusableInputException;

/**
 * A file of any bytes, and what reading it may come to: a value, or a refusal in words. Anything
 * else that is thrown is a finding, and so is memory beyond what the size of the file explains.
 */
final class HostileFile {

    /** For classes, tables and buffers that are there whatever the file holds, in bytes. */
    private static final long MEMORY_AT_ALL = 32L << 20;

    /** A tree of a JSON text takes some hundred bytes a character where it is all brackets. */
    private static final long MEMORY_A_BYTE = 500;

    /** Places, names and texts that a refusal repeats are shortened; lists of members are not. */
    private static final int LONGEST_REFUSAL = 4000;

    /**
     * In a packed file 26 bytes can stand for 65536 samples of eight channels, each held for a
     * while in some bytes.
     */
    private static final long MEMORY_A_PACKED_BYTE = 1 << 17;

    private final Path file;
    private final long memoryAtAll;
    private final long memoryAByte;
    private long size;

    private HostileFile(Path file, long memoryAtAll, long memoryAByte) {
        this.file = file;
        this.memoryAtAll = memoryAtAll;
        this.memoryAByte = memoryAByte;
    }

    /** A file in a folder of its own; both are gone when the process ends. */
    static HostileFile named(String name) {
        return in(name, MEMORY_AT_ALL, MEMORY_A_BYTE);
    }

    /** The same of a kind of which as much is computed, whatever it holds. */
    static HostileFile computed(String name, long memoryAtAll) {
        return in(name, memoryAtAll, MEMORY_A_BYTE);
    }

    /** The same of a kind in which little stands for much. */
    static HostileFile packed(String name) {
        return in(name, MEMORY_AT_ALL, MEMORY_A_PACKED_BYTE);
    }

    private static HostileFile in(String name, long memoryAtAll, long memoryAByte) {
        try {
            Path folder = Files.createTempDirectory("offtape-fuzz-");
            folder.toFile().deleteOnExit();
            Path file = folder.resolve(name);
            file.toFile().deleteOnExit();
            return new HostileFile(file, memoryAtAll, memoryAByte);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** The file with other bytes. */
    HostileFile holding(byte[] bytes) {
        try {
            Files.write(file, bytes);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        size = bytes.length;
        return this;
    }

    /** Where it is. */
    Path path() {
        return file;
    }

    /** The folder in which nothing but it lies. */
    Path folder() {
        return file.getParent();
    }

    /** What a reader makes of it, or nothing if it is refused as it should be. */
    <T> Optional<T> read(Function<Path, T> reader) {
        return attempt(() -> reader.apply(file));
    }

    /** What comes of an attempt that has to do with the file, as with {@link #read}. */
    <T> Optional<T> attempt(Supplier<T> what) {
        ThreadMXBean threads = (ThreadMXBean) ManagementFactory.getThreadMXBean();
        long most = memoryAtAll + memoryAByte * size;
        long before = threads.getCurrentThreadAllocatedBytes();
        Optional<T> found = refusedInWords(what);
        if (threads.getCurrentThreadAllocatedBytes() - before > most) {
            // loading classes the first time takes memory too
            long again = threads.getCurrentThreadAllocatedBytes();
            refusedInWords(what);
            long taken = threads.getCurrentThreadAllocatedBytes() - again;
            assertTrue(taken <= most, () -> taken + " bytes of memory for a file of " + size);
        }
        return found;
    }

    private static <T> Optional<T> refusedInWords(Supplier<T> what) {
        try {
            return Optional.of(what.get());
        } catch (UnusableInputException | RefusedOutputException e) {
            requireSentence(e.getMessage());
            return Optional.empty();
        }
    }

    private static void requireSentence(String message) {
        assertTrue(message != null && message.endsWith("."), () -> "no sentence: " + message);
        assertTrue(message.length() <= LONGEST_REFUSAL, () -> "too long: " + message);
    }
}
