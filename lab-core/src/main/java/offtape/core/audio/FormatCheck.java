package offtape.core.audio;

import java.nio.file.Path;
import offtape.core.fault.UnusableInputException;
import offtape.core.text.Sentences;

/** Refuses a file whose header states what cannot be read, in words. */
record FormatCheck(Path path) {

    private static final Sentences SAID = Sentences.near(FormatCheck.class);

    /**
     * Refuses the file unless something holds.
     *
     * @param otherwise what is wrong, a clause
     */
    void require(boolean held, String otherwise) {
        if (!held) {
            throw refusal(otherwise);
        }
    }

    /** What is thrown at a file that cannot be read. */
    UnusableInputException refusal(String clause) {
        return new UnusableInputException(SAID.say("unusable", path, clause));
    }

    /** A number of channels, if it can be read. */
    int channels(long stated) {
        require(stated >= 1, SAID.say("no-channels"));
        require(stated <= WavFormat.MOST_CHANNELS, SAID.say("channels.too-many", stated));
        return (int) stated;
    }

    /** A sample rate, if it can be read. */
    int sampleRateHz(long stated) {
        require(stated >= 1, SAID.say("rate.zero"));
        require(stated <= WavFormat.HIGHEST_RATE_HZ, SAID.say("rate.too-high", stated));
        return (int) stated;
    }

    /** A size of whole numbers, if it can be read. */
    int bits(int stated) {
        require(stated >= 8 && stated <= 32, SAID.say("bits.outside", stated));
        return stated;
    }
}
