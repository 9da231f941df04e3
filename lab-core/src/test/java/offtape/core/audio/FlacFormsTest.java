package offtape.core.audio;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Stream;
import offtape.core.fault.UnusableInputException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

/** Forms of FLAC that encoders seldom write, and files that do not agree with themselves. */
class FlacFormsTest {

    private static final long[] RAMP = {-40, -20, 0, 20, 40, 60, 55, 50};

    @TempDir Path dir;

    private AudioFile open(Bytes content) throws IOException {
        return AudioFiles.open(content.to(dir.resolve("a.flac")));
    }

    private static Bytes head(long frames) {
        return FlacBytes.head(10, 1, 8, frames, "");
    }

    private static byte[] block(int number) {
        return FlacBytes.block(false, number, 0, 8, FlacBytes::differences, RAMP);
    }

    private static double[] codes(AudioFile file, int channel, int bits) {
        double[] x = file.read(0, (int) file.frames())[channel];
        return Arrays.stream(x).map(v -> Math.scalb(v, bits - 1)).toArray();
    }

    private static double[] doubles(long... x) {
        return Arrays.stream(x).asDoubleStream().toArray();
    }

    /** Left 5, −3 and right 2, 4: difference 3, −7; half of the sum 3, 0 (7 and 1, halved down). */
    @Test
    void pairsAreUndone() throws IOException {
        long[] left = {5, -3};
        long[] right = {2, 4};
        long[] side = {3, -7};
        long[] mid = {3, 0};
        FlacBytes.Coding plain = FlacBytes::verbatim;
        Bytes content =
                FlacBytes.head(48_000, 2, 16, 6, "")
                        .raw(FlacBytes.block(false, 0, FlacBytes.LEFT_SIDE, 16, plain, left, side))
                        .raw(
                                FlacBytes.block(
                                        false, 1, FlacBytes.SIDE_RIGHT, 16, plain, side, right))
                        .raw(FlacBytes.block(false, 2, FlacBytes.MID_SIDE, 16, plain, mid, side));
        try (AudioFile flac = open(content)) {
            assertArrayEquals(doubles(5, -3, 5, -3, 5, -3), codes(flac, 0, 16), 0);
            assertArrayEquals(doubles(2, 4, 2, 4, 2, 4), codes(flac, 1, 16), 0);
        }
    }

    /** The largest numbers of 32 bits, whose difference takes 33. */
    @Test
    void thirtyTwoBits() throws IOException {
        long high = Integer.MAX_VALUE;
        long low = Integer.MIN_VALUE;
        byte[] pair =
                FlacBytes.block(
                        false,
                        0,
                        FlacBytes.LEFT_SIDE,
                        32,
                        FlacBytes::verbatim,
                        new long[] {high, low},
                        new long[] {high - low, low - high});
        try (AudioFile flac = open(FlacBytes.head(384_000, 2, 32, 2, "").raw(pair))) {
            assertArrayEquals(doubles(high, low), codes(flac, 0, 32), 0);
            assertArrayEquals(doubles(low, high), codes(flac, 1, 32), 0);
        }
    }

    @Test
    void blocksOfAnySize() throws IOException {
        long[] long200 = new long[200];
        Arrays.fill(long200, 7);
        Bytes content =
                head(209)
                        .raw(FlacBytes.block(true, 0, 0, 8, FlacBytes::differences, RAMP))
                        .raw(FlacBytes.block(true, 8, 0, 8, FlacBytes::constant, long200))
                        .raw(FlacBytes.block(true, 208, 0, 8, FlacBytes::verbatim, new long[] {9}));
        try (AudioFile flac = open(content)) {
            double[] x = codes(flac, 0, 8);
            assertEquals(209, x.length);
            assertArrayEquals(doubles(RAMP), Arrays.copyOf(x, 8), 0);
            assertArrayEquals(doubles(50, 7, 7), Arrays.copyOfRange(x, 7, 10), 0);
            assertArrayEquals(doubles(7, 9), Arrays.copyOfRange(x, 207, 209), 0);
        }
    }

    /** ID3v2: the size in four bytes of seven bits, here 130 = 1·128 + 2. */
    @Test
    void tagsAroundTheStream() throws IOException {
        Bytes content =
                new Bytes()
                        .text("ID3")
                        .hex("0400 00 00000102")
                        .zeros(130)
                        .raw(head(8).raw(block(0)).text("TAG").zeros(125).array());
        try (AudioFile flac = open(content)) {
            assertArrayEquals(doubles(RAMP), codes(flac, 0, 8), 0);
            assertEquals(List.of(), flac.notes());
        }
    }

    @Test
    void aTagWithoutAStreamIsSomethingElse() throws IOException {
        Path file =
                new Bytes().text("ID3").hex("0400 10 7f7f7f7f").zeros(50).to(dir.resolve("a.flac"));
        String said =
                assertThrows(UnusableInputException.class, () -> AudioFiles.open(file))
                        .getMessage();
        assertEquals(
                file + " is an MP3 file. Export the recording as WAV and name that file.", said);
    }

    @Test
    void aPictureBetweenHeadAndSoundIsSkipped() throws IOException {
        byte[] head = head(8).array();
        head[4] = 0; // the description is no longer the last block
        Bytes content = new Bytes().raw(head).hex("86 030d40").raw(new byte[200_000]).raw(block(0));
        try (AudioFile flac = open(content)) {
            assertArrayEquals(doubles(RAMP), codes(flac, 0, 8), 0);
        }
    }

    static Stream<Arguments> notes() {
        byte[] cut = Arrays.copyOf(block(2), block(2).length - 1);
        return Stream.of(
                // a length that was not known is no fault
                Arguments.of(head(0).raw(block(0)).raw(block(1)), 16, List.of()),
                // cut out of a longer stream
                Arguments.of(head(16).raw(block(5)).raw(block(6)), 16, List.of()),
                Arguments.of(
                        head(24).raw(block(0)).raw(block(1)).raw(cut),
                        16,
                        List.of(
                                "the header states more sound than the file holds (2.4 s stated,"
                                        + " 1.6 s there); the recording is cut short or was not"
                                        + " finished, and what is there is used")),
                Arguments.of(
                        head(0).raw(block(0)).raw(block(1)).raw(cut),
                        16,
                        List.of(
                                "the sound ends within a block; the incomplete last block is left"
                                        + " out")),
                Arguments.of(head(0), 0, List.of("the file holds a header but no sound")),
                Arguments.of(
                        FlacBytes.head(10, 1, 8, 8, "01".repeat(16)).raw(block(0)),
                        8,
                        List.of(
                                "the checksum of the whole sound (MD5) does not agree with the one"
                                        + " in the header; copy or export it again")));
    }

    @ParameterizedTest
    @MethodSource("notes")
    void whatIsThereIsUsed(Bytes content, long frames, List<String> notes) throws IOException {
        try (AudioFile flac = open(content)) {
            assertEquals(frames, flac.frames());
            assertEquals(notes, flac.notes());
        }
    }

    static Stream<Arguments> refusals() {
        byte[] hit = block(1);
        hit[hit.length - 4] ^= 1;
        byte[] hitHead = block(1);
        hitHead[4] ^= 1;
        String again = ". Export or copy the recording again.";
        String linear = ". Export the recording as linear WAV (16 or 24 bit, or float).";
        return Stream.of(
                Arguments.of(
                        head(24).raw(block(0)).raw(hit).raw(block(2)),
                        " is damaged at 0.8 s: the checksum of a block does not agree" + again),
                Arguments.of(
                        head(24).raw(block(0)).raw(hitHead).raw(block(2)),
                        " is damaged at 0.8 s: the checksum of a block's head does not agree"
                                + again),
                Arguments.of(
                        head(24).raw(block(0)).raw(block(2)),
                        " is damaged at 0.8 s: blocks are missing or in the wrong order" + again),
                Arguments.of(
                        head(24).raw(block(0)).zeros(40),
                        " is damaged at 0.8 s: no block of sound begins where one should" + again),
                Arguments.of(
                        head(24).raw(
                                        FlacBytes.block(
                                                false, 0, 1, 8, FlacBytes::verbatim, RAMP, RAMP)),
                        " is damaged at 0.0 s: a block has another format than the file says"
                                + again),
                Arguments.of(
                        new Bytes().text("fLaC").hex("80000022").zeros(20),
                        " is a damaged or cut FLAC file: the file ends too early" + again),
                Arguments.of(
                        new Bytes().text("fLaC").hex("81000004").zeros(20),
                        " is a damaged or cut FLAC file: its description (STREAMINFO) is missing or"
                                + " impossible"
                                + again),
                Arguments.of(
                        FlacBytes.head(0, 1, 16, 0, ""),
                        " cannot be used: its header states a sample rate of 0 Hz" + linear),
                Arguments.of(
                        FlacBytes.head(1_000_000, 1, 16, 0, ""),
                        " cannot be used: its header states a sample rate of 1000000 Hz; up to"
                                + " 768000 Hz are read"
                                + linear),
                Arguments.of(
                        FlacBytes.head(48_000, 1, 6, 0, ""),
                        " cannot be used: its header states samples of 6 bits; 8 to 32 are read"
                                + linear));
    }

    @ParameterizedTest
    @MethodSource("refusals")
    void damageIsNamedWithItsPlace(Bytes content, String said) throws IOException {
        Path file = content.to(dir.resolve("a.flac"));
        assertEquals(
                file + said,
                assertThrows(UnusableInputException.class, () -> AudioFiles.open(file))
                        .getMessage());
    }

    /** 300 blocks of 65536 samples from 5 kB of file: the temporary file is gone afterwards. */
    @Test
    void nothingIsLeftBehind() throws IOException {
        Path temporary = Path.of(System.getProperty("java.io.tmpdir"));
        Bytes content = FlacBytes.head(48_000, 1, 8, 0, "");
        long[] still = new long[65_536];
        for (int i = 0; i < 300; i++) {
            content.raw(FlacBytes.block(false, i, 0, 8, FlacBytes::constant, still));
        }
        List<Path> before = sounds(temporary);
        try (AudioFile flac = open(content)) {
            assertEquals(300 * 65_536, flac.frames());
            assertEquals(0, flac.read(flac.frames() - 1, 1)[0][0]);
        }
        assertEquals(before, sounds(temporary));
    }

    private static List<Path> sounds(Path folder) throws IOException {
        try (Stream<Path> all = Files.list(folder)) {
            return all.filter(p -> p.toString().endsWith(".sound")).sorted().toList();
        }
    }
}
