package offtape.cli.fuzz;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import offtape.core.audio.AudioFile;
import offtape.core.audio.AudioFiles;

/** What holds of sound that could be opened, whatever the file. */
final class SoundCheck {

    private static final int STRETCH = 4096;

    /** More than any of the files holds, but for FLAC, in which little can stand for much. */
    private static final long MOST_READ = 1 << 17;

    private final HostileFile file;

    /** For files of one kind. */
    SoundCheck(HostileFile file) {
        this.file = file;
    }

    /**
     * Opens, reads and closes.
     *
     * @param smallestSample bytes that a sample takes in the file at least, 0 if it is compressed
     */
    void of(byte[] bytes, int smallestSample) {
        file.holding(bytes);
        file.read(
                path -> {
                    try (AudioFile sound = AudioFiles.open(path)) {
                        describe(sound);
                        assertTrue(
                                sound.frames() * sound.channels() * smallestSample <= bytes.length,
                                "more sound than the file holds");
                        ends(sound);
                        whole(sound);
                    }
                    return true;
                });
    }

    private static void describe(AudioFile sound) {
        assertTrue(sound.sampleRateHz() >= 1 && sound.sampleRateHz() <= 768_000, "rate");
        assertTrue(sound.channels() >= 1 && sound.channels() <= 64, "channels");
        assertTrue(sound.frames() >= 0, "length");
        for (String note : sound.notes()) {
            assertTrue(!note.isBlank() && !note.endsWith("."), () -> "no clause: " + note);
            assertTrue(note.chars().noneMatch(Character::isISOControl), () -> "steers: " + note);
        }
    }

    /** Outside the recording there is nothing, however far. */
    private static void ends(AudioFile sound) {
        for (long from : new long[] {Long.MIN_VALUE, -7, sound.frames(), Long.MAX_VALUE - 3}) {
            for (double[] channel : sound.read(from, 7)) {
                assertArrayEquals(new double[7], channel);
            }
        }
    }

    /** Stretches are finite, and a part of one is what is read by itself. */
    private static void whole(AudioFile sound) {
        for (long at = 0; at < Math.min(sound.frames(), MOST_READ); at += STRETCH) {
            double[][] stretch = sound.read(at, STRETCH);
            assertEquals(sound.channels(), stretch.length);
            for (double[] channel : stretch) {
                assertTrue(Arrays.stream(channel).allMatch(Double::isFinite), "not finite");
            }
            double[][] part = sound.read(at + 1, 3);
            for (int c = 0; c < part.length; c++) {
                assertArrayEquals(Arrays.copyOfRange(stretch[c], 1, 4), part[c]);
            }
        }
    }
}
