package offtape.core.music;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

class MadeUpMusicTest {

    private static final int RATE_HZ = 48_000;

    @ParameterizedTest
    @EnumSource(MadeUpMusic.Kind.class)
    void peaksNearSixDecibelsBelowFullScale(MadeUpMusic.Kind kind) {
        double[][] all = MadeUpMusic.of(kind, RATE_HZ, 40, 7).read(0, 40 * RATE_HZ);
        double peak =
                Arrays.stream(all)
                        .flatMapToDouble(Arrays::stream)
                        .map(Math::abs)
                        .max()
                        .orElseThrow();
        assertTrue(peak > 0.35 && peak < 0.8, "peak " + peak);
    }

    @ParameterizedTest
    @EnumSource(MadeUpMusic.Kind.class)
    void stretchesAreThoseOfTheWhole(MadeUpMusic.Kind kind) {
        MadeUpMusic piece = MadeUpMusic.of(kind, 44_100, 6, 3);
        assertEquals(6 * 44_100, piece.frames());
        double[] whole = piece.read(0, (int) piece.frames())[1];
        double[] part = piece.read(100_000, 50_000)[1];
        assertArrayEquals(Arrays.copyOfRange(whole, 100_000, 150_000), part);
        double[] beyond = piece.read(-10, (int) piece.frames() + 20)[1];
        assertArrayEquals(new double[10], Arrays.copyOf(beyond, 10));
        assertEquals(0, beyond[beyond.length - 1]);
    }

    @Test
    void noTwoBarsAreAlike() {
        int bar = (int) Math.round(Part.BAR_SECONDS * RATE_HZ);
        double[] x = MadeUpMusic.of(MadeUpMusic.Kind.MIX, RATE_HZ, 60, 1).read(0, 20 * bar)[0];
        double power = 0;
        double alike = 0;
        for (int i = 0; i < 12 * bar; i++) {
            power += x[i] * x[i];
            alike += x[i] * x[i + 8 * bar];
        }
        assertTrue(Math.abs(alike / power) < 0.5, "likeness " + alike / power);
    }

    @Test
    void seedsMakeOtherPieces() {
        double[] one = MadeUpMusic.of(MadeUpMusic.Kind.VOICE, RATE_HZ, 9, 1).read(0, 200_000)[0];
        double[] other = MadeUpMusic.of(MadeUpMusic.Kind.VOICE, RATE_HZ, 9, 2).read(0, 200_000)[0];
        assertTrue(!Arrays.equals(one, other));
    }
}
