package offtape.reference;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;

/** The files that ship with this module, by their path below the package. */
final class Resources {

    private Resources() {}

    static InputStream open(String path) {
        InputStream in = Resources.class.getResourceAsStream(path);
        if (in == null) {
            throw new IllegalArgumentException("there is no " + path + " in the reference data");
        }
        return in;
    }

    static String text(String path) {
        try (InputStream in = open(path)) {
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new IllegalArgumentException(path + " cannot be read", e);
        }
    }
}
