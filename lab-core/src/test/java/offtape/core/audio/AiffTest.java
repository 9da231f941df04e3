package offtape.core.audio;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import offtape.core.fault.UnusableInputException;
import offtape.reference.Source;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;

/** AIFF and AIFF-C files put together byte by byte. */
@Source("Apple, Audio Interchange File Format, version 1.3 (1989), and AIFF-C draft (1991)")
class AiffTest {

    /** 48000 = 0.732… · 2^16: exponent 16383 + 15, significand 48000 · 2^48. */
    private static final String RATE_48000 = "400e bb80 0000 0000 0000";

    /** 10 = 1.25 · 2^3: exponent 16383 + 3. */
    private static final String RATE_10 = "4002 a000 0000 0000 0000";

    @TempDir Path dir;

    private static Bytes common(int channels, long frames, int bits, String rate) {
        return new Bytes().text("COMM").b32(18).b16(channels).b32(frames).b16(bits).hex(rate);
    }

    private static Bytes common(int channels, long frames, int bits, String rate, String coding) {
        Bytes chunk =
                new Bytes().text("COMM").b32(24).b16(channels).b32(frames).b16(bits).hex(rate);
        return chunk.text(coding).hex("0000");
    }

    private static Bytes sound(String hexDigits) {
        int length = hexDigits.replace(" ", "").length() / 2;
        return new Bytes().text("SSND").b32(8 + length).zeros(8).hex(hexDigits).zeros(length % 2);
    }

    private static Bytes file(String form, Bytes... chunks) {
        Bytes all = new Bytes();
        for (Bytes chunk : chunks) {
            all.raw(chunk.array());
        }
        byte[] body = all.array();
        return new Bytes().text("FORM").b32(4 + body.length).text(form).raw(body);
    }

    private AudioFile open(Bytes content) throws IOException {
        return AudioFiles.open(content.to(dir.resolve("a.aif")));
    }

    private String refusal(Bytes content) throws IOException {
        Path path = content.to(dir.resolve("a.aif"));
        String said =
                assertThrows(UnusableInputException.class, () -> AudioFiles.open(path))
                        .getMessage();
        assertEquals(path.toString(), said.substring(0, path.toString().length()));
        return said.substring(path.toString().length());
    }

    /** Each codes ½ and −¼: 0.5·2^(n−1) and −0.25·2^(n−1), or the IEEE 754 floats. */
    @ParameterizedTest
    @CsvSource({
        "NONE, 8, 40 e0",
        "raw , 8, c0 60",
        "NONE, 12, 4000 e000",
        "NONE, 16, 4000 e000",
        "twos, 16, 4000 e000",
        "sowt, 16, 0040 00e0",
        "NONE, 20, 400000 e00000",
        "NONE, 24, 400000 e00000",
        "in24, 16, 400000 e00000",
        "sowt, 24, 000040 0000e0",
        "NONE, 32, 40000000 e0000000",
        "in32, 16, 40000000 e0000000",
        "sowt, 32, 00000040 000000e0",
        "fl32, 32, 3f000000 be800000",
        "FL32, 32, 3f000000 be800000",
        "fl64, 64, 3fe0000000000000 bfd0000000000000",
        "FL64, 64, 3fe0000000000000 bfd0000000000000"
    })
    void everyCoding(String coding, int bits, String hexDigits) throws IOException {
        String name = (coding + " ").substring(0, 4);
        Bytes content = file("AIFC", common(2, 1, bits, RATE_48000, name), sound(hexDigits));
        try (AudioFile aiff = open(content)) {
            assertEquals(List.of(), aiff.notes());
            assertEquals(48_000, aiff.sampleRateHz());
            assertEquals(1, aiff.frames());
            assertArrayEquals(new double[][] {{0.5}, {-0.25}}, aiff.read(0, 1));
        }
    }

    /** 24 bits: the three bytes in their order, sign and all. */
    @Test
    void threeBytes() throws IOException {
        Bytes content = file("AIFF", common(1, 3, 24, RATE_48000), sound("7f80ff 8000ff ffffff"));
        try (AudioFile aiff = open(content)) {
            double step = 0x1p-23;
            double[] expected = {0x7f80ff * step, (0x8000ff - 0x1000000) * step, -step};
            assertArrayEquals(expected, aiff.read(0, 3)[0], 0);
        }
    }

    /** Bits below those that carry the sample do not count. */
    @Test
    void spareBits() throws IOException {
        Bytes content = file("AIFF", common(1, 1, 12, RATE_48000), sound("400f"));
        try (AudioFile aiff = open(content)) {
            assertEquals(0.5, aiff.read(0, 1)[0][0], 0);
        }
    }

    @ParameterizedTest
    @CsvSource({
        // 8000 = 0.977… · 2^13
        "400b fa00 0000 0000 0000, 8000",
        // 44100 = 0xac44
        "400e ac44 0000 0000 0000, 44100",
        // 96000 = 0x17700 = 0xbb80 · 2
        "400f bb80 0000 0000 0000, 96000",
        // 384000 = 0xbb80 · 8
        "4011 bb80 0000 0000 0000, 384000"
    })
    void rates(String digits, int rateHz) throws IOException {
        try (AudioFile aiff = open(file("AIFF", common(1, 1, 16, digits), sound("4000")))) {
            assertEquals(rateHz, aiff.sampleRateHz());
        }
    }

    @Test
    void theSoundMayComeFirst() throws IOException {
        Bytes content = file("AIFF", sound("400000"), common(1, 1, 24, RATE_48000));
        try (AudioFile aiff = open(content)) {
            assertEquals(0.5, aiff.read(0, 1)[0][0], 0);
            assertEquals(List.of(), aiff.notes());
        }
    }

    @Test
    void otherChunksOfOddLengthAreSkipped() throws IOException {
        Bytes name = new Bytes().text("NAME").b32(5).text("Take1\0");
        Bytes last = new Bytes().text("ANNO").b32(3).text("one\0");
        Bytes content = file("AIFF", name, common(1, 1, 24, RATE_48000), sound("400000"), last);
        try (AudioFile aiff = open(content)) {
            assertEquals(0.5, aiff.read(0, 1)[0][0], 0);
            assertEquals(List.of(), aiff.notes());
        }
    }

    @Test
    void theOffsetLeadsToTheSound() throws IOException {
        Bytes ahead = new Bytes().text("SSND").b32(8 + 6 + 2).b32(6).b32(8).zeros(6).hex("4000");
        try (AudioFile aiff = open(file("AIFF", common(1, 1, 16, RATE_48000), ahead))) {
            assertEquals(1, aiff.frames());
            assertEquals(0.5, aiff.read(0, 1)[0][0], 0);
        }
    }

    static Stream<Arguments> lengths() {
        String unfinished =
                "the header was left unfinished and does not state the length; all 2.5 s that the"
                        + " file holds are used";
        String cut =
                "the header states more sound than the file holds (4.0 s stated, 2.5 s there); the"
                        + " recording is cut short or was not finished, and what is there is used";
        String more =
                "after the stated 1.2 s of sound the file goes on with something else, which is not"
                        + " used; if the recording should be longer, export it again";
        return Stream.of(
                // frames by COMM, size of SSND with its 8 bytes of head, frames used
                Arguments.of(25, 33L, 25, List.of()),
                Arguments.of(0, 0L, 25, List.of(unfinished)),
                Arguments.of(0, 8L, 25, List.of(unfinished)),
                Arguments.of(0, 0xFFFFFFFFL, 25, List.of(unfinished)),
                Arguments.of(40, 48L, 25, List.of(cut)),
                Arguments.of(40, 0L, 25, List.of(cut)),
                Arguments.of(0, 33L, 25, List.of()),
                Arguments.of(12, 33L, 12, List.of(more)),
                Arguments.of(12, 20L, 12, List.of(more)));
    }

    /** One channel of 8 bits at 10 Hz: a byte is a frame of a tenth of a second. */
    @ParameterizedTest
    @MethodSource("lengths")
    void whatIsThereIsUsed(int stated, long size, long frames, List<String> notes)
            throws IOException {
        Bytes sound = new Bytes().text("SSND").b32(size).zeros(8).raw(new byte[25]);
        try (AudioFile aiff = open(file("AIFF", common(1, stated, 8, RATE_10), sound))) {
            assertEquals(frames, aiff.frames());
            assertEquals(notes, aiff.notes());
        }
    }

    static Stream<Arguments> refusals() {
        String linear = ". Export the recording as linear WAV (16 or 24 bit, or float).";
        String again = ". Export or copy the recording again.";
        Bytes good = common(1, 1, 16, RATE_48000);
        return Stream.of(
                refused(linear, "its sound is compressed: IMA ADPCM ('ima4')", 16, "ima4"),
                refused(linear, "its sound is compressed: µ-law ('ulaw')", 16, "ulaw"),
                refused(linear, "its sound is compressed: 'xyz?'", 16, "xyz\u0001"),
                refused(linear, "its header states samples of 4 bits; 8 to 32 are read", 4, "NONE"),
                Arguments.of(
                        file("AIFF", common(0, 1, 16, RATE_48000), sound("4000")),
                        " cannot be used: its header states no channels" + linear),
                Arguments.of(
                        file("AIFF", common(1, 1, 16, "0000 0000 0000 0000 0000"), sound("4000")),
                        " cannot be used: its header states a sample rate of 0 Hz" + linear),
                // no number
                Arguments.of(
                        file("AIFF", common(1, 1, 16, "7fff c000 0000 0000 0000"), sound("4000")),
                        " cannot be used: its header states a sample rate of 0 Hz" + linear),
                // negative
                Arguments.of(
                        file("AIFF", common(1, 1, 16, "c00e bb80 0000 0000 0000"), sound("4000")),
                        " cannot be used: its header states a sample rate of 0 Hz" + linear),
                // 22254.5 = 44509 / 2, and 44509 = 0xaddd
                Arguments.of(
                        file("AIFF", common(1, 1, 16, "400d addd 0000 0000 0000"), sound("4000")),
                        " cannot be used: its header states a sample rate of 22254.5 Hz, which is"
                                + " no whole number"
                                + linear),
                Arguments.of(
                        file("AIFF", new Bytes().text("COMM").b32(10).zeros(10), sound("4000")),
                        " cannot be used: its format ('COMM') is too short" + linear),
                Arguments.of(
                        file("AIFF", sound("4000")),
                        " is a damaged or cut AIFF file: the format ('COMM') was not found in it"
                                + again),
                Arguments.of(
                        file("AIFF", good),
                        " is a damaged or cut AIFF file: the sound ('SSND') was not found in it"
                                + again),
                Arguments.of(
                        file("AIFF", good, new Bytes().text("SSND").b32(10).b32(3).zeros(6)),
                        " is a damaged or cut AIFF file: its sound ('SSND') begins beyond its end"
                                + again));
    }

    private static Arguments refused(String remedy, String clause, int bits, String coding) {
        Bytes content = file("AIFC", common(1, 1, bits, RATE_48000, coding), sound("4000"));
        return Arguments.of(content, " cannot be used: " + clause + remedy);
    }

    @ParameterizedTest
    @MethodSource("refusals")
    void theSentenceSaysWhatIsWrongAndWhatToDo(Bytes content, String said) throws IOException {
        assertEquals(said, refusal(content));
    }

    @Test
    void aSampleThatIsNoNumberIsNamed() throws IOException {
        Bytes content = file("AIFC", common(1, 2, 32, RATE_10, "fl32"), sound("3f000000 7fc00000"));
        try (AudioFile aiff = open(content)) {
            String said =
                    assertThrows(UnusableInputException.class, () -> aiff.read(0, 2)).getMessage();
            assertEquals(
                    dir.resolve("a.aif")
                            + " holds a sample that is not a finite number at 0.100 s in channel 1."
                            + " Export the recording again, without plug-ins, or as 24-bit WAV.",
                    said);
        }
    }
}
