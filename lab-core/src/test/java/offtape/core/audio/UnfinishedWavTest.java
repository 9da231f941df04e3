package offtape.core.audio;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Headers that do not agree with the file: what is there is used, and a note says so. */
class UnfinishedWavTest {

    @TempDir Path dir;

    /** One channel of 8 bits at 10 Hz: a byte is a frame of a tenth of a second. */
    private static Bytes tenHertz(long statedBytes, int heldBytes) {
        return new Bytes()
                .text("RIFF")
                .u32(0)
                .text("WAVE")
                .fmt(1, 1, 10, 1, 8)
                .text("data")
                .u32(statedBytes)
                .raw(new byte[heldBytes]);
    }

    static Stream<Arguments> headers() {
        String unfinished =
                "the header was left unfinished and does not state the length; all 2.5 s that the"
                        + " file holds are used";
        return Stream.of(
                Arguments.of(0L, 25, 25, List.of(unfinished)),
                Arguments.of(0xFFFFFFFFL, 25, 25, List.of(unfinished)),
                Arguments.of(
                        40L,
                        25,
                        25,
                        List.of(
                                "the header states more sound than the file holds (4.0 s stated,"
                                        + " 2.5 s there); the recording is cut short or was not"
                                        + " finished, and what is there is used")),
                Arguments.of(
                        12L,
                        25,
                        12,
                        List.of(
                                "after the stated 1.2 s of sound the file goes on with something"
                                        + " else, which is not used; if the recording should be"
                                        + " longer, export it again")),
                Arguments.of(0L, 0, 0, List.of("the file holds a header but no sound")),
                Arguments.of(25L, 25, 25, List.of()));
    }

    @ParameterizedTest
    @MethodSource("headers")
    void whatIsThereIsUsed(long stated, int held, long frames, List<String> notes)
            throws IOException {
        Path file = tenHertz(stated, held).to(dir.resolve("a.wav"));
        try (AudioFile wav = AudioFiles.open(file)) {
            assertEquals(frames, wav.frames());
            assertEquals(notes, wav.notes());
        }
    }

    @Test
    void anEmptyRecordingWithDescriptionsAfterItIsEmpty() throws IOException {
        Path file = tenHertz(0, 0).text("LIST").u32(4).text("INFO").to(dir.resolve("a.wav"));
        try (AudioFile wav = AudioFiles.open(file)) {
            assertEquals(0, wav.frames());
            assertEquals(List.of("the file holds a header but no sound"), wav.notes());
        }
    }

    @ParameterizedTest
    @ValueSource(ints = {4, 5, 6, 7})
    void aFrameThatIsNotWholeIsLeftOut(int bytes) throws IOException {
        Bytes content = new Bytes().fmt(1, 2, 48000, 4, 16).text("data").u32(bytes).zeros(bytes);
        try (AudioFile wav = AudioFiles.open(content.inRiff().to(dir.resolve("a.wav")))) {
            assertEquals(1, wav.frames());
            List<String> expected =
                    List.of("the sound ends within a frame; the incomplete last frame is left out");
            assertEquals(bytes == 4 ? List.of() : expected, wav.notes());
        }
    }
}
