package offtape.core.fault;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.List;
import java.util.concurrent.atomic.AtomicIntegerArray;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

class BackgroundTest {

    @Test
    void resultsComeInTheOrderOfTheThings() {
        List<Integer> things = IntStream.range(0, 500).boxed().toList();
        assertEquals(things.stream().map(i -> i * i).toList(), Background.each(things, i -> i * i));
    }

    @Test
    void everyNumberOfARangeIsTakenOnce() {
        for (int length : new int[] {0, 1, 7, 1000}) {
            AtomicIntegerArray taken = new AtomicIntegerArray(length);
            Background.range(5, 5 + length, n -> taken.incrementAndGet(n - 5));
            int[] expected = new int[length];
            Arrays.fill(expected, 1);
            assertArrayEquals(
                    expected, IntStream.range(0, length).map(taken::get).toArray(), "" + length);
        }
    }

    /** More work that waits for work than there are threads must not stand still. */
    @Test
    void workMayWaitForOtherWork() {
        List<Integer> outer = IntStream.range(0, 64).boxed().toList();
        List<Integer> sums =
                Background.each(
                        outer,
                        i ->
                                Background.each(List.of(1, 2, 3), k -> i * k).stream()
                                        .mapToInt(Integer::intValue)
                                        .sum());
        assertEquals(outer.stream().map(i -> 6 * i).toList(), sums);
    }

    @Test
    void failuresComeOutAsTheyWentIn() {
        UnusableInputException failure = new UnusableInputException("No.");
        assertSame(
                failure,
                assertThrows(
                        UnusableInputException.class,
                        () ->
                                Background.each(
                                        List.of(1),
                                        i -> {
                                            throw failure;
                                        })));
    }

    @Test
    void threadsDoNotKeepTheProgramAlive() {
        assertTrue(Background.result(Background.start(() -> Thread.currentThread().isDaemon())));
    }
}
