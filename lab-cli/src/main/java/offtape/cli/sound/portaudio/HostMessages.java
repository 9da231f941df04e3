package offtape.cli.sound.portaudio;

import com.sun.jna.NativeLibrary;
import com.sun.jna.Pointer;

/**
 * What Linux's sound libraries write past us to standard error: on each search for devices some
 * lines for every kind that is not there. They have functions that take another writer; a function
 * of the C library that ignores its arguments serves as one that writes nothing.
 */
final class HostMessages {

    private HostMessages() {}

    static void silence() {
        Pointer nothing = NativeLibrary.getInstance("c").getFunction("getpid");
        tell("libasound.so.2", "snd_lib_error_set_handler", nothing);
        tell("libjack.so.0", "jack_set_error_function", nothing);
        tell("libjack.so.0", "jack_set_info_function", nothing);
    }

    private static void tell(String library, String function, Pointer writer) {
        try {
            NativeLibrary.getInstance(library)
                    .getFunction(function)
                    .invoke(void.class, new Object[] {writer});
        } catch (UnsatisfiedLinkError e) {
            // a library that is not there writes nothing
        }
    }
}
