package offtape.cli.capture;

import java.util.ArrayList;
import java.util.List;

/** Says that what is going on shall end, and runs what makes it end at once. */
public final class StopSignal {

    private final List<Runnable> actions = new ArrayList<>();
    private volatile boolean given;

    /** Whether it was given. */
    public boolean isGiven() {
        return given;
    }

    /** Runs an action when the signal is given, or now if it was. */
    public synchronized void whenGiven(Runnable action) {
        if (given) {
            action.run();
        } else {
            actions.add(action);
        }
    }

    /** Gives the signal; a second time does nothing. */
    public synchronized void give() {
        if (!given) {
            given = true;
            actions.forEach(Runnable::run);
        }
    }
}
