package offtape.core.audio;

import java.nio.file.Path;
import offtape.core.fault.UnusableInputException;

/** Refuses a file whose header states what cannot be read, in words. */
record FormatCheck(Path path) {

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
        return new UnusableInputException(
                path
                        + " cannot be used: "
                        + clause
                        + ". Export the recording as linear WAV (16 or 24 bit, or float).");
    }

    /** A number of channels, if it can be read. */
    int channels(long stated) {
        require(stated >= 1, "its header states no channels");
        require(
                stated <= WavFormat.MOST_CHANNELS,
                "its header states " + stated + " channels; up to 64 are read");
        return (int) stated;
    }

    /** A sample rate, if it can be read. */
    int sampleRateHz(long stated) {
        require(stated >= 1, "its header states a sample rate of 0 Hz");
        require(
                stated <= WavFormat.HIGHEST_RATE_HZ,
                "its header states a sample rate of " + stated + " Hz; up to 768000 Hz are read");
        return (int) stated;
    }

    /** A size of whole numbers, if it can be read. */
    int bits(int stated) {
        require(
                stated >= 8 && stated <= 32,
                "its header states samples of " + stated + " bits; 8 to 32 are read");
        return stated;
    }
}
