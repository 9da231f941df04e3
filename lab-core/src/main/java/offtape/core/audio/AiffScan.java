package offtape.core.audio;

import java.nio.ByteOrder;
import java.util.Set;
import offtape.core.fault.UnusableInputException;
import offtape.core.text.Sentences;

/** Finds the chunks that matter in an AIFF or AIFF-C file, in whichever order they come. */
final class AiffScan {

    private static final Sentences SAID = Sentences.near(AiffScan.class);

    /** Which byte of a number comes first. */
    static final ByteOrder ORDER = ByteOrder.BIG_ENDIAN;

    private final FileBytes file;
    private Chunk common;
    private Chunk sound;

    private AiffScan(FileBytes file) {
        this.file = file;
    }

    /** The chunks {@code COMM} (the format) and {@code SSND} (the sound). */
    record Found(Chunk common, Chunk sound) {}

    /**
     * Walks the chunks until both are found.
     *
     * @throws UnusableInputException if one of the two is missing
     */
    static Found scan(FileBytes file) {
        AiffScan scan = new AiffScan(file);
        ChunkWalk walk = new ChunkWalk(file, ORDER);
        while ((scan.common == null || scan.sound == null) && walk.hasNext()) {
            Chunk chunk = walk.next();
            scan.note(chunk);
            walk.leave(chunk, chunk.size());
        }
        return scan.found();
    }

    private void note(Chunk chunk) {
        switch (chunk.id()) {
            case "COMM" -> common = chunk;
            case "SSND" -> sound = chunk;
            default -> {
                // descriptions, markers and fillers do not change the sound
            }
        }
    }

    private Found found() {
        if (common == null || sound == null) {
            throw new UnusableInputException(
                    SAID.say(
                            "aiff.not-found",
                            file.path(),
                            SAID.say(common == null ? "aiff.the-format" : "aiff.the-sound")));
        }
        return new Found(common, sound);
    }

    /** The forms of file whose chunks are laid out this way. */
    static boolean isAiff(String outer, String form) {
        return outer.equals("FORM") && Set.of("AIFF", "AIFC").contains(form);
    }
}
