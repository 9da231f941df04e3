package offtape.core.programme;

import offtape.core.audio.AudioSource;

/**
 * A test programme: its cue sheet and its sound. The sound has two channels (or one, which then
 * stands for both) at the sample rate of the sheet.
 */
public record Programme(CueSheet sheet, AudioSource audio) implements AutoCloseable {

    @Override
    public void close() {
        audio.close();
    }
}
