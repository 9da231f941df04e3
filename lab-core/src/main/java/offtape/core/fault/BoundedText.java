package offtape.core.fault;

import java.io.IOException;
import java.io.InputStream;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;

/**
 * The text of a file of bounded length. What a file says of its size is not relied on: a device or
 * a pipe says 0 and never ends, and a file may grow meanwhile.
 */
public final class BoundedText {

    private BoundedText() {}

    /**
     * Reads a file in UTF-8.
     *
     * @param mostBytes so many at most are read, fewer than 2^31
     * @return the text, or nothing if the file goes on after that
     * @throws CharacterCodingException if it is not in UTF-8
     * @throws IOException if it cannot be read
     */
    public static Optional<String> read(Path file, int mostBytes) throws IOException {
        try (InputStream in = Files.newInputStream(file)) {
            byte[] bytes = in.readNBytes(mostBytes + 1);
            return bytes.length > mostBytes
                    ? Optional.empty()
                    : Optional.of(
                            StandardCharsets.UTF_8
                                    .newDecoder()
                                    .decode(ByteBuffer.wrap(bytes))
                                    .toString());
        }
    }
}
