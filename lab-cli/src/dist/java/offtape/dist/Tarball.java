package offtape.dist;

import java.io.BufferedOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.zip.GZIPOutputStream;

/**
 * A folder packed as POSIX.1-1988 lays down ({@code ustar}): files by their names, all of one
 * moment and of nobody, so that the same files give the same bytes.
 */
final class Tarball {

    private static final int BLOCK = 512;
    private static final int NAME = 100;
    private static final int PREFIX = 155;

    private final OutputStream out;
    private final long seconds;

    private Tarball(OutputStream out, long seconds) {
        this.out = out;
        this.seconds = seconds;
    }

    /** Packs a folder; all names begin with its own. */
    static void of(Path folder, Path file, Instant time) throws IOException {
        try (OutputStream out =
                new GZIPOutputStream(new BufferedOutputStream(Files.newOutputStream(file)))) {
            Tarball tarball = new Tarball(out, time.getEpochSecond());
            for (Path path : Folders.files(folder)) {
                tarball.add(path, folder.getFileName() + "/" + Folders.name(folder, path));
            }
            // two empty blocks end it
            out.write(new byte[2 * BLOCK]);
        }
    }

    private void add(Path path, String name) throws IOException {
        long size = Files.size(path);
        out.write(header(name, Files.isExecutable(path) ? 0755 : 0644, size));
        Files.copy(path, out);
        out.write(new byte[(int) (-size & BLOCK - 1)]);
    }

    private byte[] header(String name, int mode, long size) {
        byte[] header = new byte[BLOCK];
        int part = name.length() <= NAME ? -1 : name.indexOf('/', name.length() - NAME - 1);
        if (part > PREFIX || name.length() > NAME && part < 0) {
            throw new IllegalStateException("too long a name for an archive: " + name);
        }
        put(header, 0, name.substring(part + 1));
        put(header, 100, octal(mode, 7));
        put(header, 108, octal(0, 7));
        put(header, 116, octal(0, 7));
        put(header, 124, octal(size, 11));
        put(header, 136, octal(seconds, 11));
        put(header, 148, " ".repeat(8));
        put(header, 156, "0");
        put(header, 257, "ustar\u000000");
        put(header, 345, part < 0 ? "" : name.substring(0, part));
        int sum = 0;
        for (byte b : header) {
            sum += b & 0xFF;
        }
        put(header, 148, octal(sum, 6) + "\u0000 ");
        return header;
    }

    private static void put(byte[] header, int at, String text) {
        byte[] bytes = text.getBytes(StandardCharsets.UTF_8);
        System.arraycopy(bytes, 0, header, at, bytes.length);
    }

    private static String octal(long number, int digits) {
        return String.format(java.util.Locale.ROOT, "%0" + digits + "o", number);
    }
}
