package offtape.cli.batch;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;

/** How many returns the heap bears at once. */
class HeapShareTest {

    private static final long MIB = 1 << 20;

    @Test
    void aPartFollowsTheSizeOfTheFile() {
        // three quarters of 1024 MiB are 768; 53 MiB is three minutes at 48 kHz in 24 bit
        HeapShare heap = new HeapShare(1024 * MIB);
        assertEquals(48, heap.part(0));
        assertEquals(48 + 3 * 53, heap.part(53 * MIB));
        assertEquals(768, heap.part(5000 * MIB));
        assertEquals(768, heap.part(Long.MAX_VALUE / 4));
    }

    @Test
    void theSmallestHeapLetsOneThrough() {
        HeapShare heap = new HeapShare(1);
        int part = heap.take(100 * MIB);
        assertEquals(1, part);
        heap.giveBack(part);
        assertEquals(1, heap.take(0));
    }
}
