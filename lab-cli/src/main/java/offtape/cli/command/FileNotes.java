package offtape.cli.command;

import offtape.cli.terminal.Terminal;
import offtape.core.audio.AudioFile;

/** What does not agree in a file of sound, told on the terminal. */
final class FileNotes {

    private FileNotes() {}

    /** A line a note, after the name of the file. */
    static void tell(AudioFile sound, Terminal terminal) {
        sound.notes().forEach(n -> terminal.message(sound.name() + ": " + terminal.told(n) + "."));
    }
}
