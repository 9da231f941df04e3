package offtape.core.audio;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Files with 64-bit sizes, written down from EBU Tech 3306 (RF64) and ITU-R BS.2088 (BW64): outer
 * and data sizes of FFFFFFFF, and a ds64 chunk of 28 bytes and more that holds the true ones
 * (layout from memory).
 */
class LongWavTest {

    @TempDir Path dir;

    private static Bytes head(String outer, long outerSize, long dataSize, long frames) {
        return new Bytes()
                .text(outer)
                .u32(0xFFFFFFFFL)
                .text("WAVE")
                .text("ds64")
                .u32(28)
                .u64(outerSize)
                .u64(dataSize)
                .u64(frames)
                .u32(0)
                .fmt(1, 1, 48000, 2, 16)
                .text("data")
                .u32(0xFFFFFFFFL);
    }

    @ParameterizedTest
    @ValueSource(strings = {"RF64", "BW64"})
    void sizesBeyondFourGibibytesAreRead(String outer) throws IOException {
        long dataBytes = 5_000_000_000L;
        Path file = dir.resolve("long.wav");
        byte[] head = head(outer, 72 + dataBytes, dataBytes, dataBytes / 2).array();
        writeSparse(file, head, dataBytes, new Bytes().hex("0040").array());
        try (AudioFile wav = AudioFiles.open(file)) {
            assertEquals(2_500_000_000L, wav.frames());
            assertArrayEquals(new double[] {0, 0.5, 0}, wav.read(2_499_999_998L, 3)[0], 0);
            assertEquals(List.of(), wav.notes());
        }
    }

    // the file's middle is never written and takes no room on the disk
    private static void writeSparse(Path file, byte[] head, long dataBytes, byte[] last)
            throws IOException {
        try (FileChannel channel =
                FileChannel.open(
                        file,
                        StandardOpenOption.CREATE_NEW,
                        StandardOpenOption.SPARSE,
                        StandardOpenOption.WRITE)) {
            channel.write(ByteBuffer.wrap(head), 0);
            channel.write(ByteBuffer.wrap(last), head.length + dataBytes - last.length);
        }
    }

    @Test
    void otherLongChunksAreLookedUpInTheTable() throws IOException {
        Bytes content =
                new Bytes()
                        .text("RF64")
                        .u32(0xFFFFFFFFL)
                        .text("WAVE")
                        .text("ds64")
                        .u32(40)
                        .u64(0)
                        .u64(2)
                        .u64(1)
                        .u32(1)
                        .text("big1")
                        .u64(6)
                        .text("big1")
                        .u32(0xFFFFFFFFL)
                        .zeros(6)
                        .fmt(1, 1, 48000, 2, 16)
                        .text("data")
                        .u32(0xFFFFFFFFL)
                        .hex("0020");
        try (AudioFile wav = AudioFiles.open(content.to(dir.resolve("a.wav")))) {
            assertArrayEquals(new double[] {0.25}, wav.read(0, 1)[0], 0);
            assertEquals(List.of(), wav.notes());
        }
    }

    @Test
    void aShortSizeInAnRf64FileCounts() throws IOException {
        Bytes content =
                new Bytes()
                        .text("RF64")
                        .u32(0xFFFFFFFFL)
                        .text("WAVE")
                        .text("ds64")
                        .u32(28)
                        .u64(0)
                        .u64(99)
                        .u64(1)
                        .u32(0)
                        .fmt(1, 1, 48000, 2, 16)
                        .data("0020");
        try (AudioFile wav = AudioFiles.open(content.to(dir.resolve("a.wav")))) {
            assertEquals(1, wav.frames());
            assertEquals(List.of(), wav.notes());
        }
    }

    @ParameterizedTest
    @ValueSource(longs = {0, -1, Long.MIN_VALUE})
    void anUnfinishedLongFileIsReadToItsEnd(long dataSize) throws IOException {
        Bytes content = head("RF64", 0, dataSize, 0).hex("0020 0040 0080 0000 0000");
        try (AudioFile wav = AudioFiles.open(content.to(dir.resolve("a.wav")))) {
            assertEquals(5, wav.frames());
            assertEquals(
                    List.of(
                            "the header was left unfinished and does not state the length; all"
                                    + " 0.0 s that the file holds are used"),
                    wav.notes());
        }
    }
}
