package offtape.cli.capture;

import java.util.concurrent.locks.LockSupport;
import offtape.cli.sound.FrameRing;
import offtape.cli.sound.SoundStream;

/**
 * Two threads that keep a stream playing: one reads the sound from the disk into a ring, one hands
 * it from there to the device and does nothing else.
 */
final class Player {

    private static final double RING_S = 3;
    private static final double CHUNK_S = 0.02;
    private static final int READ_FRAMES = 1 << 14;
    private static final long PAUSE_NS = 2_000_000;

    private final PlayList list;
    private final SoundStream stream;
    private final int channels;
    private final StopSignal stop;
    private final TroubleLog log;
    private final FrameRing ring;
    private final Thread feeder;
    private final Thread player;
    private volatile RuntimeException failure;
    private volatile boolean done;
    private volatile boolean over;
    private volatile long frames;

    Player(PlayList list, SoundStream stream, StopSignal stop, TroubleLog log) {
        this.list = list;
        this.stream = stream;
        this.channels = stream.outputs();
        this.stop = stop;
        this.log = log;
        this.ring = new FrameRing(channels, (int) (RING_S * stream.sampleRateHz()));
        this.feeder = daemon("reading what is played", this::feed);
        this.player = daemon("playing", this::play);
        player.setPriority(Thread.MAX_PRIORITY);
    }

    private Thread daemon(String name, Runnable work) {
        Thread thread =
                new Thread(
                        () -> {
                            try {
                                work.run();
                            } catch (RuntimeException e) {
                                failure = e;
                                end();
                                ring.end();
                            }
                        },
                        name);
        thread.setDaemon(true);
        return thread;
    }

    /** Reads ahead, so that playing can begin at once; what keeps it from that is thrown. */
    void prepare() {
        feeder.start();
        while (ring.waiting() < ring.room() && !ring.isEnded() && !stop.isGiven()) {
            LockSupport.parkNanos(PAUSE_NS);
        }
        rethrow();
    }

    void start() {
        player.start();
    }

    private void feed() {
        long all = list.frames();
        for (long at = 0; at < all && isWanted(); ) {
            int count = (int) Math.min(READ_FRAMES, all - at);
            double[][] block = list.read(at, count, channels);
            for (int put = 0; put < count && isWanted(); ) {
                put += ring.put(block, put, count - put);
                if (put < count) {
                    LockSupport.parkNanos(PAUSE_NS);
                }
            }
            at += count;
        }
        ring.end();
    }

    private boolean isWanted() {
        return !over && !stop.isGiven();
    }

    private void play() {
        int chunk = (int) (CHUNK_S * stream.sampleRateHz());
        double[][] block = new double[channels][chunk];
        stream.startPlaying();
        long gaps = 0;
        while (!ring.isDone() && isWanted()) {
            if (ring.waiting() < chunk && !ring.isEnded()) {
                // the disk is late, which the device's own buffer may outlast; if not, it says so
                LockSupport.parkNanos(PAUSE_NS);
                continue;
            }
            int some = ring.take(block, 0, chunk);
            stream.play(block, some);
            frames += some;
            long now = stream.underruns();
            if (now > gaps) {
                log.note(CaptureMarks.Kind.GAP_PLAYED);
                gaps = now;
            }
        }
        if (isWanted()) {
            stream.drain();
        }
        done = true;
    }

    /** No more is to be played, and nothing read. */
    void end() {
        over = true;
    }

    /** How many frames were handed to the device. */
    long frames() {
        return frames;
    }

    /** Whether all was played; what kept it from that is thrown. */
    boolean isDone() {
        rethrow();
        return done;
    }

    private void rethrow() {
        if (failure != null) {
            throw failure;
        }
    }
}
