package offtape.core.programme;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import offtape.core.audio.AudioFiles;
import offtape.core.audio.AudioSource;
import offtape.core.fault.UnusableInputException;

/** A folder that holds a programme: {@code programme.json} and {@code programme.wav}. */
public final class ProgrammeFolder {

    /** Name of the cue sheet in the folder. */
    public static final String SHEET = "programme.json";

    /** Name of the sound in the folder. */
    public static final String SOUND = "programme.wav";

    private ProgrammeFolder() {}

    /**
     * Opens the programme of a folder, whoever made it.
     *
     * @throws UnusableInputException if a file is missing, cannot be used, or does not fit the
     *     other
     */
    public static Programme open(Path folder) {
        if (!Files.isDirectory(folder)) {
            throw new UnusableInputException(
                    folder + " is not a folder. Give the folder that \"offtape prepare\" wrote.");
        }
        CueSheet sheet = CueSheetJson.read(folder.resolve(SHEET));
        AudioSource sound = AudioFiles.open(folder.resolve(SOUND));
        try {
            check(sheet, sound, folder);
        } catch (UnusableInputException e) {
            sound.close();
            throw e;
        }
        return new Programme(sheet, sound);
    }

    private static void check(CueSheet sheet, AudioSource sound, Path folder) {
        String fault = null;
        if (sound.sampleRateHz() != sheet.sampleRateHz()) {
            fault =
                    String.format(
                            Locale.ROOT,
                            "%s has %d frames a second, the cue sheet says %d",
                            SOUND,
                            sound.sampleRateHz(),
                            sheet.sampleRateHz());
        } else if (sound.frames() < sheet.frames()) {
            fault =
                    String.format(
                            Locale.ROOT,
                            "%s has %d frames, the cue sheet says %d",
                            SOUND,
                            sound.frames(),
                            sheet.frames());
        } else if (sound.channels() > 2) {
            fault = SOUND + " has " + sound.channels() + " channels instead of two";
        }
        if (fault != null) {
            throw new UnusableInputException(
                    folder
                            + ": "
                            + fault
                            + ", so the two do not belong together. Write the programme again with"
                            + " \"offtape prepare\".");
        }
    }
}
