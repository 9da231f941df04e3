package offtape.cli.sound.portaudio;

import offtape.cli.sound.SoundTroubleException;

/** A device that was lost while it was used, in words. */
final class Lost {

    private Lost() {}

    static SoundTroubleException output() {
        return new SoundTroubleException(words("output takes"));
    }

    static SoundTroubleException output(PortAudioApi api, int code) {
        return new SoundTroubleException(words("output takes"), cause(api, code));
    }

    static SoundTroubleException input() {
        return new SoundTroubleException(words("input gives"));
    }

    static SoundTroubleException input(PortAudioApi api, int code) {
        return new SoundTroubleException(words("input gives"), cause(api, code));
    }

    private static String words(String what) {
        return "The "
                + what
                + " no more sound: the device was unplugged or switched off, or its sound server"
                + " ended. Connect it again and start anew.";
    }

    private static IllegalStateException cause(PortAudioApi api, int code) {
        return new IllegalStateException("PortAudio says " + code + ", " + api.errorText(code));
    }
}
