package offtape.core.output;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import offtape.core.fault.UnusableInputException;
import offtape.core.text.Sentences;

/**
 * SHA-256 (FIPS 180-4) of a text or a file, which is read in pieces, so that its length costs no
 * memory.
 */
public final class Sha256 {

    private static final Sentences SAID = Sentences.near(Sha256.class);

    private static final int PIECE_BYTES = 1 << 16;

    private Sha256() {}

    /**
     * The digest of a file's bytes.
     *
     * @return 64 lower-case hexadecimal digits
     * @throws UnusableInputException if the file cannot be read
     */
    public static String ofFile(Path file) {
        MessageDigest digest = newDigest();
        byte[] piece = new byte[PIECE_BYTES];
        try (InputStream in = Files.newInputStream(file)) {
            for (int n = in.read(piece); n >= 0; n = in.read(piece)) {
                digest.update(piece, 0, n);
            }
        } catch (IOException e) {
            throw new UnusableInputException(SAID.say("unreadable", file, DiskTrouble.words(e)), e);
        }
        return HexFormat.of().formatHex(digest.digest());
    }

    /** The digest of a text in UTF-8, written as above. */
    public static String ofText(String text) {
        return HexFormat.of().formatHex(newDigest().digest(text.getBytes(StandardCharsets.UTF_8)));
    }

    private static MessageDigest newDigest() {
        try {
            return MessageDigest.getInstance("SHA-256");
        } catch (NoSuchAlgorithmException e) {
            // every Java platform is required to have it
            throw new IllegalStateException(e);
        }
    }
}
