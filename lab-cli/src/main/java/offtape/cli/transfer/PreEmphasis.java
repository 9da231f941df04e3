package offtape.cli.transfer;

import java.nio.file.Path;
import offtape.core.audio.AudioFile;
import offtape.core.audio.AudioFiles;
import offtape.core.audio.AudioSource;
import offtape.core.fault.UnusableInputException;
import offtape.core.filter.ConvolvedSound;
import offtape.core.output.Sha256;
import offtape.core.text.Sentences;

/**
 * A filter that stems pass before the machine. Its delay is part of the path and is not taken out:
 * a filter of minimum phase has none.
 *
 * @param file where it is from
 * @param sampleRateHz rate it is made for
 * @param response one array for both channels, or one a channel
 * @param sha256 digest of the file
 */
public record PreEmphasis(String file, int sampleRateHz, double[][] response, String sha256) {

    private static final Sentences SAID = Sentences.near(PreEmphasis.class);

    private static final int LONGEST = 1 << 17;

    /**
     * Reads one from a sound file.
     *
     * @throws UnusableInputException if it is none
     */
    public static PreEmphasis read(Path file) {
        try (AudioFile sound = AudioFiles.open(file)) {
            if (sound.channels() > 2 || sound.frames() < 1 || sound.frames() > LONGEST) {
                throw new UnusableInputException(
                        SAID.say(
                                "no-impulse-response",
                                file,
                                sound.channels(),
                                sound.frames(),
                                LONGEST));
            }
            return new PreEmphasis(
                    file.toString(),
                    sound.sampleRateHz(),
                    sound.read(0, (int) sound.frames()),
                    Sha256.ofFile(file));
        }
    }

    /**
     * A stem as it is sent.
     *
     * @throws UnusableInputException if the rates differ
     */
    AudioSource applied(AudioSource stem) {
        if (stem.sampleRateHz() != sampleRateHz) {
            throw new UnusableInputException(
                    SAID.say("filter-rate", file, sampleRateHz, stem.name(), stem.sampleRateHz()));
        }
        return new ConvolvedSound(stem, response);
    }
}
