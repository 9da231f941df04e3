package offtape.cli.terminal;

import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;

/**
 * While open, Ctrl-C (and a polite request of the system to end) first runs an action and then
 * waits for the command to put its things in order.
 */
public final class Interrupt implements AutoCloseable {

    private static final long LONGEST_S = 10;

    private final CountDownLatch finished = new CountDownLatch(1);
    private final Thread hook = new Thread(this::interrupted, "interrupted");
    private Runnable action = () -> {};
    private boolean interrupted;

    private Interrupt() {}

    /** From now on the process waits for the command when it is told to end. */
    public static Interrupt guard() {
        Interrupt interrupt = new Interrupt();
        Runtime.getRuntime().addShutdownHook(interrupt.hook);
        return interrupt;
    }

    /** What to do first when the process is told to end, or now if it was. */
    public synchronized void first(Runnable what) {
        action = what;
        if (interrupted) {
            what.run();
        }
    }

    /** What the process does when it is told to end. */
    void interrupted() {
        act();
        await();
    }

    private synchronized void act() {
        interrupted = true;
        action.run();
    }

    private void await() {
        try {
            if (!finished.await(LONGEST_S, TimeUnit.SECONDS)) {
                // the command hangs; the process ends without it
                return;
            }
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }

    /** All is in order; the process may end. */
    @Override
    public void close() {
        finished.countDown();
        try {
            Runtime.getRuntime().removeShutdownHook(hook);
        } catch (IllegalStateException e) {
            // the process is ending already, which is what the hook was for
            return;
        }
    }
}
