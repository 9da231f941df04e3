package offtape.cli.terminal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.concurrent.CountDownLatch;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

/** What happens between Ctrl-C and the end of the process, without ending this one. */
@Timeout(30)
class InterruptTest {

    private final CountDownLatch stopped = new CountDownLatch(1);

    private static Thread ending(Interrupt interrupt) {
        Thread thread = new Thread(interrupt::interrupted);
        thread.start();
        return thread;
    }

    @Test
    void theProcessWaitsForTheCommandToPutItsThingsInOrder() throws InterruptedException {
        Interrupt interrupt = Interrupt.guard();
        interrupt.first(stopped::countDown);
        Thread process = ending(interrupt);
        stopped.await();
        process.join(50);
        assertTrue(process.isAlive());
        interrupt.close();
        process.join();
        assertFalse(process.isAlive());
    }

    @Test
    void whoIsLateIsToldAtOnce() throws InterruptedException {
        Interrupt interrupt = Interrupt.guard();
        Thread process = ending(interrupt);
        while (process.getState() != Thread.State.TIMED_WAITING) {
            Thread.onSpinWait();
        }
        interrupt.first(stopped::countDown);
        assertEquals(0, stopped.getCount());
        interrupt.close();
        process.join();
    }

    @Test
    void whoIsNotInterruptedRunsNothing() {
        try (Interrupt interrupt = Interrupt.guard()) {
            interrupt.first(stopped::countDown);
        }
        assertEquals(1, stopped.getCount());
    }
}
