package offtape.report.apply.listen;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;

/** Digests of what a page holds. */
final class PageId {

    private PageId() {}

    /** A name for a page: another sound or another kind of test is another page. */
    static String of(Pcm24 a, Pcm24 b, ListenChoice choice) {
        MessageDigest digest = sha256();
        digest.update(a.bytes());
        digest.update(b.bytes());
        String kind = choice.trials() + (choice.isTraining() ? " practice" : " test");
        digest.update(kind.getBytes(StandardCharsets.UTF_8));
        return HexFormat.of().formatHex(digest.digest(), 0, 8);
    }

    private static MessageDigest sha256() {
        try {
            return MessageDigest.getInstance("SHA-256");
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("every Java has SHA-256", e);
        }
    }
}
