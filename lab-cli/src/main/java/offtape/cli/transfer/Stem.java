package offtape.cli.transfer;

import java.nio.file.Path;
import java.util.List;
import offtape.core.audio.AudioFile;
import offtape.core.audio.AudioFiles;
import offtape.core.audio.AudioSource;
import offtape.core.audio.BroadcastNote;
import offtape.core.fault.UnusableInputException;
import offtape.core.output.Sha256;
import offtape.core.text.Sentences;

/**
 * A stem as it was looked at before anything is played.
 *
 * @param file where it is
 * @param output name of the file in which it comes back
 * @param sampleRateHz frames a second
 * @param frames its length
 * @param channels 1 or 2
 * @param sha256 digest of the file
 * @param levels how loud it is
 * @param sentPeak its peak behind the pre-emphasis and before its drive, full-scale units
 * @param notes what does not agree in the file though it can be used
 * @param note what the file with its return says of itself
 */
public record Stem(
        Path file,
        String output,
        int sampleRateHz,
        long frames,
        int channels,
        String sha256,
        SoundLevels levels,
        double sentPeak,
        List<String> notes,
        BroadcastNote note) {

    private static final Sentences SAID = Sentences.near(Stem.class);

    /** Copies the list. */
    public Stem {
        notes = List.copyOf(notes);
    }

    /**
     * Looks at a stem.
     *
     * @param output name of the file in which it is to come back
     * @param filter pre-emphasis, or null
     * @throws UnusableInputException if it cannot be sent
     */
    static Stem of(Path file, String output, PreEmphasis filter) {
        try (AudioFile sound = AudioFiles.open(file)) {
            if (sound.channels() > 2) {
                throw new UnusableInputException(SAID.say("stem-channels", file, sound.channels()));
            }
            SoundLevels levels = SoundLevels.of(sound);
            double sentPeak =
                    filter == null ? levels.peak() : SoundLevels.of(filter.applied(sound)).peak();
            return new Stem(
                    file,
                    output,
                    sound.sampleRateHz(),
                    sound.frames(),
                    sound.channels(),
                    Sha256.ofFile(file),
                    levels,
                    sentPeak,
                    sound.notes(),
                    sound.describing(
                            sound.name()
                                    + ", sent through a tape machine and brought back in time"));
        }
    }

    /** Its sound as it is sent, before its drive; the caller closes it. */
    AudioSource open(PreEmphasis filter) {
        AudioSource sound = AudioFiles.open(file);
        return filter == null ? sound : filter.applied(sound);
    }
}
