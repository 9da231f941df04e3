package offtape.core.audio;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import offtape.reference.Source;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The worked examples of the FLAC standard, sample by sample. */
@Source("RFC 9639, Free Lossless Audio Codec, appendix D")
class FlacExamplesTest {

    @TempDir Path dir;

    private void decodesTo(String hex, int rateHz, int bits, int[]... expected) throws IOException {
        try (AudioFile flac = AudioFiles.open(new Bytes().hex(hex).to(dir.resolve("a.flac")))) {
            assertEquals(rateHz, flac.sampleRateHz());
            assertEquals(expected[0].length, flac.frames());
            // the checksum of the whole sound is verified too
            assertEquals(List.of(), flac.notes());
            double[][] sound = flac.read(0, expected[0].length);
            assertEquals(expected.length, sound.length);
            for (int c = 0; c < sound.length; c++) {
                double[] codes =
                        Arrays.stream(sound[c]).map(x -> Math.scalb(x, bits - 1)).toArray();
                assertArrayEquals(Arrays.stream(expected[c]).asDoubleStream().toArray(), codes, 0);
            }
        }
    }

    /** D.1: verbatim subframes with wasted bits. */
    @Test
    void example1() throws IOException {
        decodesTo(
                "664c6143 80000022 10001000 00000f00 000f0ac4 42f00000 00013e84 b41807dc 69030758"
                        + "6a3dad1a 2e0ffff8 69180000 bf0358fd 03128baa 9a",
                44_100,
                16,
                new int[] {25_588},
                new int[] {10_416});
    }

    /** D.2: fixed predictors, right and side, two blocks; a seek table, a comment and padding. */
    @Test
    void example2() throws IOException {
        decodesTo(
                "664c6143 00000022 00100010 00001700 00440ac4 42f00000 0013d5b0 564975e9 8b8d8b93"
                        + "0422757b 81030300 00120000 00000000 00000000 00000000 00000010 0400003a"
                        + "20000000 72656665 72656e63 65206c69 62464c41 4320312e 332e3320 32303139"
                        + "30383034 01000000 0e000000 5449544c 453dd7a9 d79cd795 d79d8100 00060000"
                        + "00000000 fff86998 000f9912 08670162 3d144299 8f5df70d 6fe00c17 caeb2100"
                        + "0ee7a77a 24a1590c 1217b603 097b784f aa9a33d2 85e070ad 5b1b4851 b4010d99"
                        + "d2cd1a68 f1e6b810 fff86918 0102a402 c382c40b c14a03ee 48dd03b6 7c1330",
                44_100,
                16,
                new int[] {
                    10372, 18041, 14942, 17876, 15627, 17899, 16242, 18077, 16824, 18263, 17295,
                    -14418, -15201, -14508, -15195, -14818, -15486, -15349, -16054
                },
                new int[] {
                    6070, 10545, 8743, 10449, 9143, 10463, 9502, 10569, 9840, 10680, 10113, -8428,
                    -8895, -8476, -8896, -8653, -9072, -8958, -9410
                });
    }

    /** D.3: a linear predictor, four partitions, one of them without Rice codes. */
    @Test
    void example3() throws IOException {
        decodesTo(
                "664c6143 80000022 10001000 00001f00 001f07d0 00700000 0018f8f9 e396f5cb cfc6dc80"
                        + "7f997790 6b32fff8 68020017 e944004f 6f313d10 47d227cb 6d090831 452bdc28"
                        + "22228057 a3",
                32_000,
                8,
                new int[] {
                    0, 79, 111, 78, 8, -61, -90, -68, -13, 42, 67, 53, 13, -27, -46, -38, -12, 14,
                    24, 19, 6, -4, -5, 0
                });
    }
}
