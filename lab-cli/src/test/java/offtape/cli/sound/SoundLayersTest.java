package offtape.cli.sound;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The choice of a way to the devices, and the ceiling of what they are given. */
class SoundLayersTest {

    private record Named(String name) implements SoundLayer {

        @Override
        public List<SoundDevice> devices() {
            return List.of();
        }

        @Override
        public SoundStream open(StreamRequest request) {
            throw new SoundTroubleException("none");
        }
    }

    private final SoundLayer one = new Named("one");
    private final SoundLayer two = new Named("two");
    private final SoundLayers layers = new SoundLayers(List.of(one, two));

    @Test
    void theFirstIsTheUsualOne() {
        assertSame(one, layers.named(null));
        assertSame(two, layers.named("two"));
    }

    @Test
    void anUnknownOneIsRefusedWithThoseThereAre() {
        assertEquals(
                "There is no sound layer \"three\" here; there are: one, two.",
                assertThrows(SoundTroubleException.class, () -> layers.named("three"))
                        .getMessage());
    }

    /** −6 dB is 10^(−6/20) = 0.50119; a hundredth of a decibel more is rounding. */
    @Test
    void theCeilingIsAPeak() {
        LevelCeiling ceiling = new LevelCeiling(-6);
        assertEquals(0.50119, ceiling.peak(), 5e-6);
        assertFalse(ceiling.isExceededBy(0.5012));
        assertTrue(ceiling.isExceededBy(0.5019));
        assertFalse(LevelCeiling.FULL_SCALE.isExceededBy(1));
        ceiling.check(0.5, "That", "No.");
        assertEquals(
                "That reaches -5.2 dBFS, above the highest level of -6.0 dBFS that was allowed. Turn"
                        + " it down.",
                assertThrows(
                                TooLoudException.class,
                                () -> ceiling.check(0.55, "That", "Turn it down."))
                        .getMessage());
    }

    @ParameterizedTest
    @ValueSource(doubles = {0.1, -100.1, Double.NaN})
    void aCeilingOutsideTheScaleIsNone(double dbfs) {
        assertEquals(
                "The highest level lies from -100 to 0 dBFS.",
                assertThrows(IllegalArgumentException.class, () -> new LevelCeiling(dbfs))
                        .getMessage());
    }
}
