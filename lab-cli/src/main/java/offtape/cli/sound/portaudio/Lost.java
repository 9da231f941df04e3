package offtape.cli.sound.portaudio;

import offtape.cli.sound.SoundTroubleException;
import offtape.core.text.Sentences;

/** A device that was lost while it was used, in words. */
final class Lost {

    private static final Sentences SAID = Sentences.near(Lost.class);

    private Lost() {}

    static SoundTroubleException output() {
        return new SoundTroubleException(SAID.say("output-lost"));
    }

    static SoundTroubleException output(PortAudioApi api, int code) {
        return new SoundTroubleException(SAID.say("output-lost"), cause(api, code));
    }

    static SoundTroubleException input() {
        return new SoundTroubleException(SAID.say("input-lost"));
    }

    static SoundTroubleException input(PortAudioApi api, int code) {
        return new SoundTroubleException(SAID.say("input-lost"), cause(api, code));
    }

    private static IllegalStateException cause(PortAudioApi api, int code) {
        return new IllegalStateException("PortAudio says " + code + ", " + api.errorText(code));
    }
}
