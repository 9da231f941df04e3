package offtape.cli.lineup;

import java.util.concurrent.TimeUnit;
import java.util.concurrent.locks.LockSupport;
import offtape.cli.sound.FrameRing;
import offtape.cli.sound.SoundStream;

/**
 * Two threads that keep a stream going: one plays what the generator makes, one puts what is
 * recorded into a ring. Neither locks nor allocates once it runs.
 */
final class SoundLoop {

    private static final double RING_S = 2;
    private static final double CHUNK_S = 0.01;
    private static final long PAUSE_NS = 1_000_000;
    private static final long ENDING_MS = 1000;

    private final SoundStream stream;
    private final Generator generator;
    private final FrameRing ring;
    private final Thread player;
    private final Thread recorder;
    private volatile RuntimeException failure;
    private volatile boolean ended;
    private volatile boolean enough;
    private volatile boolean playedOut;
    private volatile long recorded;
    private volatile long playingBegan = -1;

    /** A stream without outputs is only listened to. */
    SoundLoop(SoundStream stream, Generator generator) {
        this.stream = stream;
        this.generator = generator;
        this.ring = new FrameRing(stream.inputs(), (int) (RING_S * stream.sampleRateHz()));
        this.player = daemon("playing", this::play);
        this.recorder = daemon("recording", this::record);
    }

    private Thread daemon(String name, Runnable work) {
        Thread thread =
                new Thread(
                        () -> {
                            try {
                                work.run();
                            } catch (RuntimeException e) {
                                failure = e;
                            }
                        },
                        name);
        thread.setDaemon(true);
        thread.setPriority(Thread.MAX_PRIORITY);
        return thread;
    }

    void start() {
        recorder.start();
        if (stream.outputs() > 0) {
            player.start();
        }
    }

    private void play() {
        int chunk = (int) (CHUNK_S * stream.sampleRateHz());
        double[][] block = new double[stream.outputs()][chunk];
        // only once sound really comes in are both directions under way
        while (recorded == 0 && !ended) {
            LockSupport.parkNanos(PAUSE_NS);
        }
        stream.startPlaying();
        playingBegan = recorded;
        while (!ended && !enough) {
            generator.fill(block, chunk);
            stream.play(block, chunk);
        }
        if (!ended) {
            stream.drain();
        }
        playedOut = true;
    }

    private void record() {
        int chunk = (int) (CHUNK_S * stream.sampleRateHz());
        double[][] block = new double[stream.inputs()][chunk];
        stream.startRecording();
        while (!ended) {
            int some = stream.record(block, chunk);
            for (int put = 0; put < some && !ended; ) {
                put += ring.put(block, put, some - put);
                if (put < some) {
                    // waits: what that loses, the stream itself counts
                    LockSupport.parkNanos(PAUSE_NS);
                }
            }
            recorded += some;
            if (some == 0) {
                // a stream that was stopped gives nothing; its end is near
                LockSupport.parkNanos(PAUSE_NS);
            }
        }
    }

    /** Takes a block of that many frames if there are as many. */
    boolean take(double[][] block, int count) {
        if (failure != null && !ended) {
            throw failure;
        }
        return ring.waiting() >= count && ring.take(block, 0, count) == count;
    }

    /** Frames that had been recorded when playing began; −1 before. */
    long playingBegan() {
        return playingBegan;
    }

    /** How often the computer was late. */
    long late() {
        return stream.underruns() + stream.overruns();
    }

    /** Makes nothing more, and lets what was made be heard to its end. */
    void playOut() {
        enough = true;
    }

    /** Whether all that was made has been heard. */
    boolean isPlayedOut() {
        return playedOut || stream.outputs() == 0;
    }

    /** Ends both threads; what still sounds is cut off. */
    void end() {
        ended = true;
        stream.stop();
        join(player);
        join(recorder);
    }

    private static void join(Thread thread) {
        try {
            TimeUnit.MILLISECONDS.timedJoin(thread, ENDING_MS);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }
}
