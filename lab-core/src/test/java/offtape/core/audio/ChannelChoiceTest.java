package offtape.core.audio;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** One or two channels of many. */
class ChannelChoiceTest {

    private static final AudioSource FOUR =
            new MemoryAudio(
                    "four.wav",
                    48_000,
                    new double[] {0.1},
                    new double[] {0.2},
                    new double[] {0.3},
                    new double[] {0.4});

    @Test
    void twoInTheirOrder() {
        AudioSource pair = ChannelChoice.parse("4,2").of(FOUR);
        assertEquals(2, pair.channels());
        assertArrayEquals(new double[][] {{0.4, 0}, {0.2, 0}}, pair.read(0, 2));
        assertEquals(FOUR.frames(), pair.frames());
        assertEquals(FOUR.sampleRateHz(), pair.sampleRateHz());
        assertEquals("four.wav", pair.name());
    }

    @Test
    void one() {
        AudioSource single = ChannelChoice.parse("3").of(FOUR);
        assertArrayEquals(new double[][] {{0.3}}, single.read(0, 1));
    }

    @Test
    void theFirstTwoIfNothingIsSaid() {
        AudioSource pair = ChannelChoice.firstTwo(FOUR);
        assertArrayEquals(new double[][] {{0.1}, {0.2}}, pair.read(0, 1));
        assertEquals(false, ((ChosenChannels) pair).isAskedFor());
        assertSame(pair, ChannelChoice.firstTwo(pair));
    }

    @ParameterizedTest
    @ValueSource(strings = {"0", "a", "", "1,", ",1", "1,2,3", "-1", "1.5", "3, 4", "99999", "1;2"})
    void anotherFormIsRefused(String text) {
        String said =
                assertThrows(IllegalArgumentException.class, () -> ChannelChoice.parse(text))
                        .getMessage();
        assertEquals(
                "\""
                        + text
                        + "\" does not name channels; write one or two numbers counted from 1, such"
                        + " as 3,4 or 2",
                said);
    }

    @Test
    void oneChannelIsNotBoth() {
        assertEquals(
                "channel 3 cannot be left and right at once",
                assertThrows(IllegalArgumentException.class, () -> ChannelChoice.parse("3,3"))
                        .getMessage());
    }

    @Test
    void theNumbersOfAChoiceAreChecked() {
        for (List<Integer> numbers : List.of(List.<Integer>of(), List.of(0), List.of(1, 2, 3))) {
            assertThrows(IllegalArgumentException.class, () -> new ChannelChoice(numbers));
        }
    }

    @Test
    void aChannelThatIsNotThereIsNamed() {
        assertEquals(
                "four.wav has 4 channels; there is no channel 9",
                assertThrows(
                                IllegalArgumentException.class,
                                () -> ChannelChoice.parse("1,9").of(FOUR))
                        .getMessage());
        AudioSource mono = new MemoryAudio("mono.wav", 48_000, new double[1]);
        assertEquals(
                "mono.wav has one channel only; there is no channel 2",
                assertThrows(
                                IllegalArgumentException.class,
                                () -> ChannelChoice.parse("2").of(mono))
                        .getMessage());
    }
}
