package offtape.core.audio;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.SeekableByteChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Optional;
import offtape.core.fault.RefusedOutputException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Written files byte by byte, against the layout written down by hand. */
class WavWriterTest {

    @TempDir Path dir;

    private byte[] written(WavFormat format, double[]... samples) throws IOException {
        Path file = dir.resolve("a.wav");
        try (WavWriter writer = WavWriter.create(file, format)) {
            writer.write(samples);
            assertEquals(samples[0].length, writer.frames());
        }
        return Files.readAllBytes(file);
    }

    private static Bytes junk() {
        return new Bytes().text("JUNK").u32(28).zeros(28);
    }

    @Test
    void sixteenBitsAreRoundedToTheNearestAndHalvesToTheEvenCode() throws IOException {
        double step = 1.0 / 32768;
        byte[] expected =
                junk().fmt(1, 1, 44100, 2, 16)
                        .data("0080 ff7f ff7f 0000 0200 0200 feff 0300")
                        .inRiff()
                        .array();
        assertArrayEquals(
                expected,
                written(
                        new WavFormat(44100, 1, WavEncoding.PCM_16),
                        new double[] {
                            -1,
                            1,
                            1 - step,
                            0.5 * step,
                            1.5 * step,
                            2.5 * step,
                            -2.5 * step,
                            2.51 * step
                        }));
    }

    @Test
    void anOddLengthGetsAPadByteThatTheDataSizeLeavesOut() throws IOException {
        byte[] expected = junk().fmt(1, 1, 48000, 3, 24).data("000040").zeros(1).inRiff().array();
        assertArrayEquals(
                expected, written(new WavFormat(48000, 1, WavEncoding.PCM_24), new double[] {0.5}));
    }

    @Test
    void floatHasAnExtensionSizeAndAFactChunk() throws IOException {
        byte[] expected =
                junk().text("fmt ")
                        .u32(18)
                        .fields(3, 2, 96000, 8, 32)
                        .u16(0)
                        .text("fact")
                        .u32(4)
                        .u32(1)
                        .data("00000040 000000bf")
                        .inRiff()
                        .array();
        assertArrayEquals(
                expected,
                written(
                        new WavFormat(96000, 2, WavEncoding.FLOAT_32),
                        new double[] {2},
                        new double[] {-0.5}));
    }

    @Test
    void moreThanTwoChannelsAreExtensible() throws IOException {
        byte[] expected =
                junk().text("fmt ")
                        .u32(40)
                        .fields(0xFFFE, 3, 48000, 6, 16)
                        .u16(22)
                        .u16(16)
                        .u32(0)
                        .hex("0100 0000 0000 1000 8000 00aa00389b71")
                        .data("0040 0020 00c0")
                        .inRiff()
                        .array();
        assertArrayEquals(
                expected,
                written(
                        new WavFormat(48000, 3, WavEncoding.PCM_16),
                        new double[] {0.5},
                        new double[] {0.25},
                        new double[] {-0.5}));
    }

    /**
     * The header is 12 + 36 + 24 + 8 = 80 bytes for plain PCM, so the outer size is the sound plus
     * 72 and the largest 32-bit file holds FFFFFFFE − 72 bytes of sound, for stereo of 16 bits
     * 4294967220 (a multiple of 4). One frame more makes it RF64 (EBU Tech 3306).
     */
    @ParameterizedTest
    @CsvSource({"1073741805,false", "1073741806,true", "2000000000,true"})
    void aLongFileBecomesRf64(long frames, boolean isLong) {
        byte[] actual =
                new WavHeader(new WavFormat(48000, 2, WavEncoding.PCM_16), Optional.empty(), frames)
                        .bytes()
                        .array();
        Bytes expected = new Bytes();
        if (isLong) {
            expected.text("RF64").u32(0xFFFFFFFFL).text("WAVEds64").u32(28);
            expected.u64(frames * 4 + 72).u64(frames * 4).u64(frames).u32(0);
            expected.fmt(1, 2, 48000, 4, 16).text("data").u32(0xFFFFFFFFL);
        } else {
            expected.text("RIFF").u32(4294967292L).text("WAVE").raw(junk().array());
            expected.fmt(1, 2, 48000, 4, 16).text("data").u32(4294967220L);
        }
        assertArrayEquals(expected.array(), actual);
    }

    @ParameterizedTest
    @CsvSource({
        "PCM_16, 1.0001, 1.0001",
        "PCM_24, -1.0000001, -1.0000001",
        "PCM_16, NaN, NaN",
        "FLOAT_32, NaN, NaN",
        "FLOAT_32, Infinity, Infinity",
        "FLOAT_32, 1e39, 1.0E39"
    })
    void whatDoesNotFitIsRefusedWithItsPlace(WavEncoding encoding, double sample, String words)
            throws IOException {
        WavFormat format = new WavFormat(48000, 2, encoding);
        Path file = dir.resolve("a.wav");
        try (WavWriter writer = WavWriter.create(file, format)) {
            writer.write(new double[2][5]);
            double[][] bad = {{0, 0}, {0, sample}};
            assertEquals(
                    "sample " + words + " at frame 6 in channel 2 does not fit " + encoding,
                    assertThrows(IllegalArgumentException.class, () -> writer.write(bad))
                            .getMessage());
        }
        try (AudioFile wav = AudioFiles.open(file)) {
            assertEquals(5, wav.frames());
        }
    }

    @Test
    void theShapeMustFit() {
        WavFormat format = new WavFormat(48000, 2, WavEncoding.PCM_16);
        try (WavWriter writer = WavWriter.create(dir.resolve("a.wav"), format)) {
            assertThrows(IllegalArgumentException.class, () -> writer.write(new double[][] {{0}}));
            assertThrows(
                    IllegalArgumentException.class, () -> writer.write(new double[][] {{0}, {}}));
        }
        assertThrows(IllegalArgumentException.class, () -> new WavFormat(0, 1, WavEncoding.PCM_16));
        assertThrows(
                IllegalArgumentException.class, () -> new WavFormat(48000, 65, WavEncoding.PCM_16));
    }

    @Test
    void anExistingFileIsNotTouched() throws IOException {
        Path file = Files.writeString(dir.resolve("a.wav"), "mine");
        WavFormat format = new WavFormat(48000, 1, WavEncoding.PCM_16);
        assertEquals(
                file + " exists already. Choose another name or remove it.",
                assertThrows(RefusedOutputException.class, () -> WavWriter.create(file, format))
                        .getMessage());
        assertEquals("mine", Files.readString(file));
    }

    @Test
    void howTheSoundIsDividedDoesNotChangeTheBytes() throws IOException {
        WavFormat format = new WavFormat(48000, 1, WavEncoding.PCM_16);
        double[] sound = new double[100_000];
        Arrays.setAll(sound, i -> 0.9 * Math.sin(0.1 * i));
        Path whole = dir.resolve("whole.wav");
        Path parts = dir.resolve("parts.wav");
        try (WavWriter writer = WavWriter.createDithered(whole, format, 7)) {
            writer.write(new double[][] {sound});
        }
        try (WavWriter writer = WavWriter.createDithered(parts, format, 7)) {
            for (int i = 0; i < sound.length; i += 777) {
                int end = Math.min(sound.length, i + 777);
                writer.write(new double[][] {Arrays.copyOfRange(sound, i, end)});
            }
        }
        assertEquals(-1, Files.mismatch(whole, parts));
    }

    @Test
    void aFullDiskIsReportedInWords() {
        WavFormat format = new WavFormat(48000, 1, WavEncoding.PCM_16);
        Path file = dir.resolve("a.wav");
        WavWriter writer =
                new WavWriter(file, new FullDisk(), format, Optional.empty(), Optional.empty());
        assertEquals(
                file
                        + " cannot be written: the disk is full; make room or choose another"
                        + " disk.",
                assertThrows(
                                RefusedOutputException.class,
                                () -> writer.write(new double[1][100_000]))
                        .getMessage());
    }

    /** Refuses every byte, as a full disk does. */
    private static final class FullDisk implements SeekableByteChannel {

        @Override
        public int write(ByteBuffer bytes) throws IOException {
            throw new IOException("No space left on device");
        }

        @Override
        public int read(ByteBuffer bytes) {
            return -1;
        }

        @Override
        public long position() {
            return 0;
        }

        @Override
        public SeekableByteChannel position(long position) {
            return this;
        }

        @Override
        public long size() {
            return 0;
        }

        @Override
        public SeekableByteChannel truncate(long size) {
            return this;
        }

        @Override
        public boolean isOpen() {
            return true;
        }

        @Override
        public void close() {
            // holds nothing
        }
    }
}
