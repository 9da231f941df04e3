package offtape.core.audio;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Random;
import java.util.stream.Stream;
import offtape.core.fault.UnusableInputException;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** A damaged AIFF or FLAC file opens or is refused in words; nothing else may happen. */
class DamagedFilesTest {

    private static final int FLIPS = 500;
    private static final int NOISE = 100;

    @TempDir Path dir;

    /** A file and how many bytes of it must be there to open it. */
    private record Whole(byte[] bytes, int least) {}

    static Stream<Whole> files() {
        String rate = "400e bb80 0000 0000 0000";
        Bytes common = new Bytes().text("COMM").b32(18).b16(2).b32(2).b16(16).hex(rate);
        Bytes sound = new Bytes().text("SSND").b32(16).zeros(8).hex("4000 c000 2000 e000");
        byte[] aiff =
                new Bytes()
                        .text("FORM")
                        .b32(54)
                        .text("AIFF")
                        .raw(common.array())
                        .raw(sound.array())
                        .array();
        Bytes coded = new Bytes().text("COMM").b32(24).b16(1).b32(2).b16(32).hex(rate);
        byte[] aifc =
                new Bytes()
                        .text("FORM")
                        .b32(60)
                        .text("AIFC")
                        .raw(coded.text("fl32").zeros(2).array())
                        .raw(sound.array())
                        .array();
        byte[] flac =
                FlacBytes.head(48_000, 2, 16, 32, "")
                        .raw(block(0, FlacBytes::differences))
                        .raw(block(1, FlacBytes::verbatim))
                        .array();
        // up to the head of SSND; up to the end of the description
        return Stream.of(new Whole(aiff, 46), new Whole(aifc, 52), new Whole(flac, 42));
    }

    private static byte[] block(int number, FlacBytes.Coding coding) {
        long[] left = {0, 3, 9, 14, 30, 25, 18, 5, -4, -9, -20, -33, -21, -10, -5, -1};
        long[] right = {1, 3, 8, 15, 28, 26, 19, 4, -3, -9, -22, -30, -20, -11, -6, 0};
        return FlacBytes.block(false, number, 1, 16, coding, left, right);
    }

    @ParameterizedTest
    @MethodSource("files")
    void cutAnywhere(Whole whole) throws IOException {
        for (int n = 0; n <= whole.bytes().length; n++) {
            assertEquals(n >= whole.least(), opens(Arrays.copyOf(whole.bytes(), n)), "at " + n);
        }
    }

    @ParameterizedTest
    @MethodSource("files")
    void flippedAnywhere(Whole whole) throws IOException {
        Random random = new Random(20260201);
        int opened = 0;
        for (int i = 0; i < FLIPS; i++) {
            byte[] hit = whole.bytes().clone();
            for (int n = random.nextInt(3); n >= 0; n--) {
                hit[random.nextInt(hit.length)] ^= (byte) (1 + random.nextInt(255));
            }
            opened += opens(hit) ? 1 : 0;
        }
        int count = opened;
        assertTrue(count > 0 && count < FLIPS, () -> "the damage was of one kind only: " + count);
    }

    /** Noise where the sound should be: what no checksum would let through is tried as well. */
    @ParameterizedTest
    @MethodSource("files")
    void noiseBehindTheHead(Whole whole) throws IOException {
        Random random = new Random(20260202);
        for (int i = 0; i < NOISE; i++) {
            byte[] noise = new byte[whole.least() + random.nextInt(400)];
            random.nextBytes(noise);
            System.arraycopy(whole.bytes(), 0, noise, 0, whole.least());
            opens(noise);
        }
    }

    private boolean opens(byte[] content) throws IOException {
        Path file = Files.write(dir.resolve("hit"), content);
        try (AudioFile sound = AudioFiles.open(file)) {
            int count = (int) Math.min(sound.frames(), 1000);
            assertEquals(sound.channels(), sound.read(sound.frames() - count, count).length);
            return true;
        } catch (UnusableInputException e) {
            assertTrue(e.getMessage().startsWith(file.toString()), e.getMessage());
            assertTrue(e.getMessage().endsWith("."), e.getMessage());
            return false;
        }
    }
}
