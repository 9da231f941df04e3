package offtape.cli.command;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;

/** A disk of 64 KiB in memory, which may be put in place where the tests run with such rights. */
final class SmallDisk implements AutoCloseable {

    /** The file that takes what is left of it. */
    static final String FILLING = "filling";

    private static final int MORE_THAN_IT_HOLDS = 1 << 17;

    private final Path place;

    private SmallDisk(Path place) {
        this.place = place;
    }

    /** Puts one on a folder, or skips the tests if that may not be done. */
    static SmallDisk at(Path place) {
        assumeTrue(
                mount("-t", "tmpfs", "-o", "size=64k,mode=700", "tmpfs", place.toString()),
                "no disk may be put in place here");
        return new SmallDisk(place);
    }

    Path path(String name) {
        return name.isEmpty() ? place : place.resolve(name);
    }

    /** Makes it writable again, with nothing on it. */
    void writable() throws IOException {
        assertEquals(true, mount("-o", "remount,rw", place.toString()));
        Files.deleteIfExists(place.resolve(FILLING));
    }

    void readOnly() {
        assertEquals(true, mount("-o", "remount,ro", place.toString()));
    }

    /** Takes all that is left. */
    void fill() throws IOException {
        IOException full = null;
        try {
            Files.write(place.resolve(FILLING), new byte[MORE_THAN_IT_HOLDS]);
        } catch (IOException e) {
            full = e;
        }
        assertEquals(true, full != null, "a disk of 64 KiB took more");
    }

    @Override
    public void close() {
        // even if something on it is still open
        run("umount", "-l", place.toString());
    }

    private static boolean mount(String... how) {
        String[] line = new String[how.length + 1];
        line[0] = "mount";
        System.arraycopy(how, 0, line, 1, how.length);
        return run(line);
    }

    private static boolean run(String... line) {
        try {
            Process process = new ProcessBuilder(line).redirectErrorStream(true).start();
            process.getInputStream().readAllBytes();
            return process.waitFor() == 0;
        } catch (IOException e) {
            return false;
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            return false;
        }
    }
}
