package offtape.core.audio;

import java.io.Closeable;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import offtape.core.fault.UnusableInputException;
import offtape.core.output.DiskTrouble;
import offtape.core.text.Sentences;

/** The bytes of a file, read at any place and from any thread. */
final class FileBytes implements Closeable {

    private static final Sentences SAID = Sentences.near(FileBytes.class);

    private final Path path;
    private final FileChannel channel;
    private final long size;

    private FileBytes(Path path, FileChannel channel, long size) {
        this.path = path;
        this.channel = channel;
        this.size = size;
    }

    static FileBytes open(Path path) {
        if (Files.isDirectory(path)) {
            throw new UnusableInputException(SAID.say("is-folder", path));
        }
        if (!Files.exists(path)) {
            throw new UnusableInputException(SAID.say("no-file", path));
        }
        if (!Files.isRegularFile(path)) {
            throw new UnusableInputException(SAID.say("is-device", path));
        }
        try {
            FileChannel channel = FileChannel.open(path, StandardOpenOption.READ);
            return new FileBytes(path, channel, channel.size());
        } catch (IOException e) {
            throw unreadable(path, e);
        }
    }

    /** The bytes of a file that is open already; the channel is this object's from now on. */
    static FileBytes over(Path path, FileChannel channel, long size) {
        return new FileBytes(path, channel, size);
    }

    private static UnusableInputException unreadable(Path path, IOException trouble) {
        return new UnusableInputException(
                SAID.say("unreadable", path, DiskTrouble.words(trouble)), trouble);
    }

    Path path() {
        return path;
    }

    /** The length in bytes when the file was opened. */
    long size() {
        return size;
    }

    /**
     * Up to {@code count} bytes from a place on, ready for reading, least significant byte first;
     * fewer where the file ends.
     */
    ByteBuffer peek(long position, int count) {
        long there = Math.max(0, Math.min(count, size - position));
        ByteBuffer into = ByteBuffer.allocate((int) there);
        fill(into, position);
        return into.order(ByteOrder.LITTLE_ENDIAN);
    }

    /**
     * Fills a buffer from its beginning to its limit and rewinds it.
     *
     * @throws UnusableInputException if the file has become shorter than it was
     */
    void fill(ByteBuffer into, long position) {
        into.rewind();
        try {
            while (into.hasRemaining()) {
                if (channel.read(into, position + into.position()) < 0) {
                    throw new UnusableInputException(SAID.say("became-shorter", path));
                }
            }
        } catch (IOException e) {
            throw unreadable(path, e);
        }
        into.rewind();
    }

    @Override
    public void close() {
        try {
            channel.close();
        } catch (IOException e) {
            throw unreadable(path, e);
        }
    }
}
