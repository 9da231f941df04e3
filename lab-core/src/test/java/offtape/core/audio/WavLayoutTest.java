package offtape.core.audio;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.io.IOException;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import offtape.core.fault.UnusableInputException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Files written down byte by byte from the layout of RIFF WAVE (Multimedia Programming Interface
 * and Data Specifications 1.0, 1991, and the extensible format's description in RFC 2361 terms;
 * from memory). Expected samples by hand: n-bit PCM is the code over 2^(n−1), one byte is unsigned
 * with 128 as zero, IEEE 754 bit patterns: 3F800000 is 1, BF000000 is −1/2, 40000000 is 2.
 */
class WavLayoutTest {

    private static final String PCM_GUID = "0100 0000 0000 1000 8000 00aa00389b71";
    private static final String FLOAT_GUID = "0300 0000 0000 1000 8000 00aa00389b71";

    @TempDir Path dir;

    static Stream<Arguments> monoFiles() {
        return Stream.of(
                Arguments.of(
                        "8 bit",
                        new Bytes().fmt(1, 1, 8000, 1, 8).data("00 80 ff 40"),
                        new double[] {-1, 0, 127.0 / 128, -0.5}),
                Arguments.of(
                        "16 bit",
                        new Bytes().fmt(1, 1, 44100, 2, 16).data("0080 ff7f 0100 00c0 ffff"),
                        new double[] {-1, 32767.0 / 32768, 1.0 / 32768, -0.5, -1.0 / 32768}),
                Arguments.of(
                        "24 bit",
                        new Bytes().fmt(1, 1, 48000, 3, 24).data("000080 ffff7f 010000 80ff00"),
                        new double[] {-1, 8388607.0 / 8388608, 1.0 / 8388608, 65408.0 / 8388608}),
                Arguments.of(
                        "32 bit",
                        new Bytes().fmt(1, 1, 96000, 4, 32).data("00000080 ffffff7f 01000000"),
                        new double[] {-1, 2147483647.0 / 2147483648.0, 1 / 2147483648.0}),
                Arguments.of(
                        "12 bit, left-justified in 16",
                        new Bytes().fmt(1, 1, 44100, 2, 12).data("f07f 1000 0080"),
                        new double[] {2047.0 / 2048, 1.0 / 2048, -1}),
                Arguments.of(
                        "float 32",
                        new Bytes().fmt(3, 1, 48000, 4, 32).data("0000803f 000000bf 00000040"),
                        new double[] {1, -0.5, 2}),
                Arguments.of(
                        "float 64",
                        new Bytes()
                                .fmt(3, 1, 48000, 8, 64)
                                .data("000000000000f03f 000000000000e0bf"),
                        new double[] {1, -0.5}),
                Arguments.of(
                        "extensible, 20 valid bits in 24, the lower four set without meaning",
                        extensible(24, 3, 20, PCM_GUID).data("1f0000 ffff7f 0f0080"),
                        new double[] {1.0 / 524288, 524287.0 / 524288, -1}),
                Arguments.of(
                        "extensible, valid bits left 0",
                        extensible(16, 2, 0, PCM_GUID).data("0040"),
                        new double[] {0.5}),
                Arguments.of(
                        "extensible float",
                        extensible(32, 4, 32, FLOAT_GUID).data("0000803e"),
                        new double[] {0.25}));
    }

    private static Bytes extensible(int bits, int align, int valid, String guid) {
        return new Bytes()
                .text("fmt ")
                .u32(40)
                .fields(0xFFFE, 1, 48000, align, bits)
                .u16(22)
                .u16(valid)
                .u32(4)
                .hex(guid);
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("monoFiles")
    void samplesAreTheCodesInFullScaleUnits(String what, Bytes content, double[] expected)
            throws IOException {
        try (AudioFile wav = AudioFiles.open(content.inRiff().to(dir.resolve("a.wav")))) {
            assertEquals(expected.length, wav.frames());
            assertArrayEquals(expected, wav.read(0, expected.length)[0], 0);
            assertEquals(List.of(), wav.notes());
        }
    }

    @Test
    void channelsAreInterleaved() throws IOException {
        Bytes content = new Bytes().fmt(1, 2, 44100, 4, 16).data("0040 00c0 0020 00e0");
        try (AudioFile wav = AudioFiles.open(content.inRiff().to(dir.resolve("a.wav")))) {
            assertEquals(44100, wav.sampleRateHz());
            assertEquals(2, wav.channels());
            assertEquals("a.wav", wav.name());
            double[][] read = wav.read(0, 2);
            assertArrayEquals(new double[] {0.5, 0.25}, read[0], 0);
            assertArrayEquals(new double[] {-0.5, -0.25}, read[1], 0);
        }
    }

    @Test
    void outsideTheRecordingIsSilence() throws IOException {
        Bytes content = new Bytes().fmt(1, 1, 44100, 2, 16).data("0040 0020");
        try (AudioFile wav = AudioFiles.open(content.inRiff().to(dir.resolve("a.wav")))) {
            assertArrayEquals(new double[] {0, 0, 0.5, 0.25, 0}, wav.read(-2, 5)[0], 0);
            assertArrayEquals(new double[] {0.25}, wav.read(1, 1)[0], 0);
            assertArrayEquals(new double[2], wav.read(Long.MAX_VALUE - 1, 2)[0], 0);
            assertArrayEquals(new double[2], wav.read(Long.MIN_VALUE, 2)[0], 0);
            assertEquals(0, wav.read(0, 0)[0].length);
        }
    }

    @Test
    void otherChunksAreSkippedWithTheirPadByte() throws IOException {
        Bytes content =
                new Bytes()
                        .text("note")
                        .u32(3)
                        .text("abc\0")
                        .fmt(1, 1, 8000, 1, 8)
                        .text("JUNK")
                        .u32(0)
                        .data("c0")
                        .text("\0LIST")
                        .u32(4)
                        .text("INFO");
        try (AudioFile wav = AudioFiles.open(content.inRiff().to(dir.resolve("a.wav")))) {
            assertArrayEquals(new double[] {0.5}, wav.read(0, 1)[0], 0);
            assertEquals(List.of(), wav.notes());
        }
    }

    @Test
    void severalThreadsReadTheSame() throws IOException {
        Bytes content = new Bytes().fmt(1, 2, 48000, 4, 16).text("data").u32(400_000);
        IntStream.range(0, 200_000).forEach(i -> content.u16(i * 40503));
        try (AudioFile wav = AudioFiles.open(content.inRiff().to(dir.resolve("a.wav")))) {
            double[] whole = wav.read(0, 100_000)[1];
            double[] parts =
                    IntStream.range(0, 1000)
                            .parallel()
                            .mapToObj(i -> wav.read(i * 100L, 100)[1])
                            .flatMapToDouble(Arrays::stream)
                            .toArray();
            assertArrayEquals(whole, parts, 0);
            // by hand: sample 2i+1 is (2i+1)·40503 modulo 2^16; at i = 1: 121509 − 65536·2 = −9563
            assertEquals(-9563.0 / 32768, whole[1], 0);
        }
    }

    @ParameterizedTest
    @MethodSource("notFinite")
    void samplesThatAreNotFiniteAreRefusedWithTheirPlace(Bytes content) throws IOException {
        Path file = content.inRiff().to(dir.resolve("a.wav"));
        try (AudioFile wav = AudioFiles.open(file)) {
            assertEquals(0, wav.read(0, 1)[1][0], 0);
            String said =
                    assertThrows(UnusableInputException.class, () -> wav.read(0, 3)).getMessage();
            // frame 1 at 4 Hz is a quarter of a second in
            assertEquals(
                    file
                            + " holds a sample that is not a finite number at 0.250 s in channel 2."
                            + " Export the recording again, without plug-ins, or as 24-bit WAV.",
                    said);
        }
    }

    static Stream<Bytes> notFinite() {
        Bytes nan = new Bytes().fmt(3, 2, 4, 8, 32);
        Bytes infinite = new Bytes().fmt(3, 2, 4, 16, 64);
        return Stream.of(
                nan.data("00000000 00000000 00000000 0000c07f 00000000 00000000"),
                infinite.data(
                        "0000000000000000 0000000000000000 0000000000000000 000000000000f0ff"
                                + "0000000000000000 0000000000000000"));
    }
}
