package offtape.report.render;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.Base64;

/**
 * What a page allows a browser to do (Content Security Policy Level 3): nothing, but for the
 * program's own texts, which are named by their digests. A name that broke out of its place could
 * run, style or load nothing.
 */
public final class PagePolicy {

    private PagePolicy() {}

    /** The policy of a page that is allowed nothing but this. */
    public static String nothingBut(String... directives) {
        return "default-src 'none'; "
                + String.join("; ", directives)
                + "; base-uri 'none'; form-action 'none'";
    }

    /**
     * A text between the tags of an element as a source that may be used.
     *
     * @param content all of it, line feeds at its ends too
     */
    public static String source(String content) {
        try {
            byte[] digest =
                    MessageDigest.getInstance("SHA-256")
                            .digest(content.getBytes(StandardCharsets.UTF_8));
            return "'sha256-" + Base64.getEncoder().encodeToString(digest) + "'";
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("every Java has SHA-256", e);
        }
    }
}
