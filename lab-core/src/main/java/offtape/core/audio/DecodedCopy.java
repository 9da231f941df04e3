package offtape.core.audio;

import java.io.Closeable;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import offtape.core.fault.UnusableInputException;
import offtape.core.output.DiskTrouble;
import offtape.core.text.Sentences;

/**
 * A temporary file for decoded sound. The system takes it away when it is closed and also when the
 * process ends in any other way: where that is possible it has no name from the beginning.
 */
final class DecodedCopy implements Closeable {

    private static final Sentences SAID = Sentences.near(DecodedCopy.class);

    /** So much is left free on the disk, since other programs need it too. */
    private static final long RESERVE_BYTES = 64L << 20;

    private final Path original;
    private final Path place;
    private final FileChannel channel;
    private long written;
    private long checkedAt;

    private DecodedCopy(Path original, Path place, FileChannel channel) {
        this.original = original;
        this.place = place;
        this.channel = channel;
    }

    /**
     * Makes an empty one in the folder for temporary files.
     *
     * @param original the file whose sound it will hold, for messages
     * @throws UnusableInputException if that folder takes no file
     */
    static DecodedCopy of(Path original) {
        Path place = Path.of(System.getProperty("java.io.tmpdir"));
        try {
            Path file = Files.createTempFile(place, "offtape-", ".sound");
            FileChannel channel =
                    FileChannel.open(
                            file,
                            StandardOpenOption.READ,
                            StandardOpenOption.WRITE,
                            StandardOpenOption.DELETE_ON_CLOSE);
            return new DecodedCopy(original, place, channel);
        } catch (IOException e) {
            throw refused(original, place, DiskTrouble.words(e), e);
        }
    }

    private static UnusableInputException refused(
            Path original, Path place, String why, IOException trouble) {
        return new UnusableInputException(SAID.say("decode-failed", original, place, why), trouble);
    }

    /** Adds bytes at the end. */
    void append(ByteBuffer bytes) {
        try {
            requireRoom();
            while (bytes.hasRemaining()) {
                written += channel.write(bytes, written);
            }
        } catch (IOException e) {
            throw refused(original, place, DiskTrouble.words(e), e);
        }
    }

    /** A small file can stand for sound beyond measure; it shall not fill the disk. */
    private void requireRoom() throws IOException {
        if (written - checkedAt < RESERVE_BYTES / 2) {
            return;
        }
        checkedAt = written;
        if (Files.getFileStore(place).getUsableSpace() < RESERVE_BYTES) {
            throw refused(original, place, SAID.say("disk-full"), null);
        }
    }

    /** The bytes so far, to be read; they are now closed in place of this object. */
    FileBytes bytes() {
        return FileBytes.over(original, channel, written);
    }

    @Override
    public void close() {
        bytes().close();
    }
}
