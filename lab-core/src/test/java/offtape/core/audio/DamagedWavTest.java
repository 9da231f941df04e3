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

/** A damaged file opens or is refused in words; nothing else may happen. */
class DamagedWavTest {

    private static final int FLIPS = 1500;

    @TempDir Path dir;

    static Stream<Bytes> files() {
        Bytes plain =
                new Bytes()
                        .text("LIST")
                        .u32(5)
                        .text("INFOx\0")
                        .fmt(1, 2, 48000, 4, 16)
                        .data("0040 00c0 0020 00e0");
        Bytes extensible =
                new Bytes()
                        .text("fmt ")
                        .u32(40)
                        .fields(0xFFFE, 1, 48000, 4, 32)
                        .u16(22)
                        .u16(32)
                        .u32(0)
                        .hex("0300 0000 0000 1000 8000 00aa00389b71")
                        .data("0000803e 0000003f");
        Bytes rf64 =
                new Bytes()
                        .text("RF64")
                        .u32(0xFFFFFFFFL)
                        .text("WAVEds64")
                        .u32(40)
                        .u64(100)
                        .u64(6)
                        .u64(2)
                        .u32(1)
                        .text("LIST")
                        .u64(4)
                        .fmt(1, 1, 48000, 3, 24)
                        .text("data")
                        .u32(0xFFFFFFFFL)
                        .hex("000040 0000c0");
        return Stream.of(plain.inRiff(), extensible.inRiff(), rf64);
    }

    @ParameterizedTest
    @MethodSource("files")
    void cutAnywhere(Bytes content) throws IOException {
        byte[] whole = content.array();
        int opened = 0;
        for (int n = 0; n <= whole.length; n++) {
            opened += opens(Arrays.copyOf(whole, n)) ? 1 : 0;
        }
        // the sound of each is 8 or 6 bytes and the header before it must be whole
        int sound = whole[whole.length - 1] == (byte) 0xc0 ? 6 : 8;
        assertEquals(sound + 1, opened);
    }

    @ParameterizedTest
    @MethodSource("files")
    void flippedAnywhere(Bytes content) throws IOException {
        byte[] whole = content.array();
        Random random = new Random(20260101);
        int opened = 0;
        for (int i = 0; i < FLIPS; i++) {
            byte[] hit = whole.clone();
            for (int n = random.nextInt(3); n >= 0; n--) {
                hit[random.nextInt(hit.length)] ^= (byte) (1 + random.nextInt(255));
            }
            opened += opens(hit) ? 1 : 0;
        }
        assertTrue(opened > 0 && opened < FLIPS, () -> "the damage was of one kind only");
    }

    private boolean opens(byte[] content) throws IOException {
        Path file = Files.write(dir.resolve("hit.wav"), content);
        try (AudioFile wav = AudioFiles.open(file)) {
            int count = (int) Math.min(wav.frames(), 1000);
            assertEquals(wav.channels(), wav.read(wav.frames() - count, count).length);
            return true;
        } catch (UnusableInputException e) {
            assertTrue(e.getMessage().startsWith(file.toString()), e.getMessage());
            assertTrue(e.getMessage().endsWith("."), e.getMessage());
            return false;
        }
    }
}
