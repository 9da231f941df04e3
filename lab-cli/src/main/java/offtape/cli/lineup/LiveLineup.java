package offtape.cli.lineup;

import java.util.concurrent.locks.LockSupport;
import offtape.cli.capture.StopSignal;
import offtape.cli.sound.SoundStream;

/** A line-up over an open stream: a reading four times a second until it is to end. */
public final class LiveLineup {

    /** Time between readings. */
    public static final double STEP_S = 0.25;

    private static final long PAUSE_NS = 4_000_000;
    private static final long FADE_NS = 1_000_000_000;

    private final SoundStream stream;
    private final StopSignal stop;
    private final Desk desk;

    /** Makes ready. */
    public LiveLineup(SoundStream stream, StopSignal stop, Desk desk) {
        this.stream = stream;
        this.stop = stop;
        this.desk = desk;
    }

    /** Who looks on. */
    public interface Watcher {

        /**
         * Looks at the readings.
         *
         * @return whether to go on
         */
        boolean look(Readings readings);

        /** Gives a key that was pressed to the line-up, if any was; false ends. */
        boolean keys(Lineup lineup);
    }

    /**
     * Runs until the watcher or the stop signal ends it.
     *
     * @throws offtape.cli.sound.SoundTroubleException if a device was lost
     */
    public void run(Watcher watcher) {
        stop.whenGiven(stream::stop);
        Generator generator = new Generator(stream.sampleRateHz(), desk.limits().ceiling());
        SoundLoop loop = new SoundLoop(stream, generator);
        Lineup.Format format = new Lineup.Format(stream.sampleRateHz(), stream.inputs());
        Lineup lineup = new Lineup(desk, generator, format, loop::late);
        loop.start();
        try {
            watch(watcher, loop, lineup);
            fadeOut(loop, lineup);
        } finally {
            loop.end();
        }
    }

    private void watch(Watcher watcher, SoundLoop loop, Lineup lineup) {
        int step = (int) (STEP_S * stream.sampleRateHz());
        double[][] block = new double[stream.inputs()][step];
        while (!stop.isGiven()) {
            if (loop.take(block, step)) {
                if (loop.playingBegan() >= 0) {
                    lineup.playingBegan(loop.playingBegan());
                }
                lineup.accept(block, step);
                if (!watcher.look(lineup.readings())) {
                    return;
                }
            } else {
                LockSupport.parkNanos(PAUSE_NS);
            }
            if (!watcher.keys(lineup)) {
                return;
            }
        }
    }

    private void fadeOut(SoundLoop loop, Lineup lineup) {
        lineup.fadeOut();
        double[][] block = new double[stream.inputs()][(int) (STEP_S * stream.sampleRateHz())];
        long end = System.nanoTime() + FADE_NS;
        while (!stop.isGiven() && System.nanoTime() < end && !loop.isPlayedOut()) {
            // room for the recorder, which must not be what holds the player up
            loop.take(block, block[0].length);
            if (lineup.hasFadedOut()) {
                loop.playOut();
            }
            LockSupport.parkNanos(PAUSE_NS);
        }
    }
}
