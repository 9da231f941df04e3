package offtape.dist;

import com.sun.jna.Platform;
import org.jline.nativ.OSInfo;

/**
 * Which of the libraries in machine code that some jars bring are for this system; jars hold those
 * of all.
 */
record Natives(String sound, String terminal) {

    private static final String SOUND = "com/sun/jna/";
    private static final String TERMINAL = "org/jline/nativ/";

    /** Those of the system that the image is for. */
    static Natives ofThisSystem() {
        return new Natives(
                SOUND + Platform.RESOURCE_PREFIX + "/",
                TERMINAL + OSInfo.getNativeLibFolderPathForCurrentOS() + "/");
    }

    /** Whether a file is none of those for another system. */
    boolean isNeeded(String name) {
        boolean code = name.matches(".*\\.(so|a|dll|dylib|jnilib)");
        boolean known = name.startsWith(SOUND) || name.startsWith(TERMINAL);
        return !code || !known || name.startsWith(sound) || name.startsWith(terminal);
    }
}
