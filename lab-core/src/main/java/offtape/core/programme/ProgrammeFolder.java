package offtape.core.programme;

import java.nio.file.Files;
import java.nio.file.Path;
import offtape.core.audio.AudioFiles;
import offtape.core.audio.AudioSource;
import offtape.core.fault.UnusableInputException;
import offtape.core.text.Sentences;

/** A folder that holds a programme: {@code programme.json} and {@code programme.wav}. */
public final class ProgrammeFolder {

    private static final Sentences SAID = Sentences.near(ProgrammeFolder.class);

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
            throw new UnusableInputException(SAID.say("not-folder", folder));
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
            fault = SAID.say("pair.rate", SOUND, sound.sampleRateHz(), sheet.sampleRateHz());
        } else if (sound.frames() < sheet.frames()) {
            fault = SAID.say("pair.length", SOUND, sound.frames(), sheet.frames());
        } else if (sound.channels() > 2) {
            fault = SAID.say("pair.channels", SOUND, sound.channels());
        }
        if (fault != null) {
            throw new UnusableInputException(SAID.say("pair.unlike", folder, fault));
        }
    }
}
