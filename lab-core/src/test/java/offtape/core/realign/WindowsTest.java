package offtape.core.realign;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import offtape.core.audio.MemoryAudio;
import org.junit.jupiter.api.Test;

/** Overlapping windows of original and return. */
class WindowsTest {

    /** 2000 frames are no whole number of hops of 1024: the border lies within a hop. */
    @Test
    void aWindowOnABorderComesOnce() {
        MemoryAudio sound = new MemoryAudio("sound", 48_000, new double[20_000]);
        Windows windows = new Windows(sound, sound, 0.043);
        List<Integer> numbers = new ArrayList<>();
        for (Stretch part : List.of(new Stretch(0, 2000), new Stretch(2000, 10_000))) {
            windows.each(part, Course.line(5000, 1), pair -> numbers.add(pair.number()));
        }
        assertEquals(IntStream.range(0, 10).boxed().toList(), numbers);
    }
}
