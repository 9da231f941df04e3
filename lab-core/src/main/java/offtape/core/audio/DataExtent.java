package offtape.core.audio;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import offtape.core.text.Sentences;

/**
 * How much sound there really is: what the header states where that can be believed, else what the
 * file holds, as after a recorder that crashed before it could complete the header.
 */
final class DataExtent {

    private static final Sentences SAID = Sentences.near(DataExtent.class);

    private final FileBytes file;
    private final SoundPlace sound;
    private final SoundFormat format;
    private final long held;
    private final List<String> notes = new ArrayList<>();
    private final long frames;

    DataExtent(FileBytes file, SoundPlace sound, SoundFormat format) {
        this.file = file;
        this.sound = sound;
        this.format = format;
        this.held = Math.max(0, file.size() - sound.start());
        long bytes = bytes();
        this.frames = bytes / format.frameBytes();
        if (bytes % format.frameBytes() != 0) {
            notes.add(SAID.say("note.within-frame"));
        }
        if (bytes == 0) {
            notes.add(SAID.say("note.no-sound"));
        }
    }

    /** Number of whole frames. */
    long frames() {
        return frames;
    }

    /** Plain sentences on what does not agree, none if all is well. */
    List<String> notes() {
        return List.copyOf(notes);
    }

    private long bytes() {
        long stated = sound.statedBytes();
        if (isUnfinished(stated)) {
            notes.add(SAID.say("note.unfinished", seconds(held)));
            return held;
        }
        if (stated > held) {
            notes.add(SAID.say("note.cut-short", seconds(stated), seconds(held)));
            return held;
        }
        if (!sound.isFollowedByChunks(file, stated)) {
            notes.add(SAID.say("note.goes-on", seconds(stated)));
        }
        return stated;
    }

    private boolean isUnfinished(long stated) {
        return stated == Long.MAX_VALUE || stated == 0 && !sound.isFollowedByChunks(file, 0);
    }

    private String seconds(long bytes) {
        double length = (double) (bytes / format.frameBytes()) / format.sampleRateHz();
        return String.format(Locale.ROOT, "%.1f s", length);
    }
}
