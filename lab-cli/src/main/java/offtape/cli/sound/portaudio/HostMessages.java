package offtape.cli.sound.portaudio;

import com.sun.jna.NativeLibrary;
import com.sun.jna.Pointer;

/**
 * What sound libraries write past us to standard error: on each search for devices some lines for
 * every kind that is not there, and traces of what failed. They use the C library's stream of that
 * name, Java does not, so that stream is made to lead nowhere.
 */
final class HostMessages {

    private HostMessages() {}

    static void silence() {
        NativeLibrary process = NativeLibrary.getProcess();
        try {
            // only the GNU C library lets the stream be replaced
            process.getFunction("gnu_get_libc_version");
            Object[] nowhere = {"/dev/null", "w"};
            Pointer stream = process.getFunction("fopen").invokePointer(nowhere);
            if (stream != null) {
                process.getGlobalVariableAddress("stderr").setPointer(0, stream);
            }
        } catch (UnsatisfiedLinkError e) {
            // then they are seen
        }
    }
}
