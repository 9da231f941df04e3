package offtape.cli.capture;

import java.util.concurrent.locks.LockSupport;
import offtape.cli.sound.SoundStream;
import offtape.cli.sound.SoundTroubleException;

/** A stream that gives back what is played, some frames later; faults can be asked for. */
public final class LoopStream implements SoundStream {

    private static final int RATE_HZ = 48_000;
    private static final int ROOM = 9600;

    private final FrameRing wire;
    private final int channels;
    private final int delay;
    private long recorded;
    private volatile boolean stopped;
    private volatile boolean drained;
    private volatile long playedFrames;

    /** After so many played frames the system runs out of sound once. */
    public long underrunAfter = Long.MAX_VALUE;

    /** After so many recorded frames somebody stops it. */
    public long stoppedAfter = Long.MAX_VALUE;

    /** What stopping it does. */
    public Runnable stopping = () -> {};

    /** After so many recorded frames the device is gone. */
    public long lostAfter = Long.MAX_VALUE;

    /** So many channels, back after so many frames. */
    public LoopStream(int channels, int delay) {
        this.channels = channels;
        this.delay = delay;
        this.wire = new FrameRing(channels, ROOM);
    }

    @Override
    public int sampleRateHz() {
        return RATE_HZ;
    }

    @Override
    public int bits() {
        return 24;
    }

    @Override
    public int outputs() {
        return channels;
    }

    @Override
    public int inputs() {
        return channels;
    }

    @Override
    public void startRecording() {
        // what is recorded before anything is played is silence
    }

    @Override
    public void startPlaying() {
        // see record
    }

    @Override
    public void play(double[][] block, int frames) {
        for (int done = 0; done < frames && !stopped; ) {
            int some = wire.put(block, done, frames - done);
            done += some;
            playedFrames += some;
            pause(some);
        }
    }

    @Override
    public int record(double[][] block, int frames) {
        for (int i = 0; i < frames; i++) {
            while (recorded >= delay && wire.waiting() == 0 && !drained && !stopped) {
                pause(0);
            }
            if (recorded == stoppedAfter) {
                stopping.run();
            }
            if (recorded >= lostAfter) {
                throw new SoundTroubleException("The input is gone.");
            }
            for (double[] x : block) {
                x[i] = 0;
            }
            if (recorded >= delay && !stopped) {
                wire.take(block, i, 1);
            }
            recorded++;
        }
        if (drained) {
            pause(0);
        }
        return stopped ? 0 : frames;
    }

    private static void pause(int done) {
        if (done == 0) {
            LockSupport.parkNanos(100_000);
        }
    }

    long played() {
        return playedFrames;
    }

    @Override
    public long underruns() {
        return playedFrames >= underrunAfter ? 1 : 0;
    }

    @Override
    public long overruns() {
        return 0;
    }

    @Override
    public void stop() {
        stopped = true;
    }

    @Override
    public void drain() {
        while (wire.waiting() > 0 && !stopped) {
            pause(0);
        }
        drained = true;
    }

    @Override
    public void close() {
        stop();
    }
}
