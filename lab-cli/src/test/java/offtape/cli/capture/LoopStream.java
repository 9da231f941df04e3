package offtape.cli.capture;

import java.nio.file.Path;
import java.util.concurrent.locks.LockSupport;
import offtape.cli.sound.FrameRing;
import offtape.cli.sound.SoundStream;
import offtape.cli.sound.SoundTroubleException;

/** A stream that gives back what is played, some frames later; faults can be asked for. */
public final class LoopStream implements SoundStream {

    private static final int RATE_HZ = 48_000;
    private static final int ROOM = 9600;

    /** Half of what a recording may wait for the disk. */
    private static final int AHEAD = 5 * RATE_HZ;

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

    /** What they do to stop it. */
    public Runnable stopping = () -> {};

    /** After so many recorded frames the device is gone. */
    public long lostAfter = Long.MAX_VALUE;

    /** After so many played frames the device that plays is gone. */
    public long outputLostAfter = Long.MAX_VALUE;

    /** After so many recorded frames some are lost once. */
    public long overrunAfter = Long.MAX_VALUE;

    /**
     * A file of 24 bits that is being recorded, which this stream does not run away from: it knows
     * no clock, and is faster than some disks.
     */
    public Path file;

    /** Whether nothing but silence comes back. */
    public boolean muted;

    /** One that gives back so many channels, so many frames later. */
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
        if (playedFrames >= outputLostAfter) {
            throw new SoundTroubleException("The output is gone.");
        }
    }

    @Override
    public int record(double[][] block, int frames) {
        while (recorded - written() > AHEAD && !stopped) {
            pause(0);
        }
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
            silence(block, i);
            if (recorded >= delay && !stopped) {
                wire.take(block, i, 1);
            }
            if (muted) {
                silence(block, i);
            }
            recorded++;
        }
        if (drained) {
            pause(0);
        }
        return stopped ? 0 : frames;
    }

    private long written() {
        return file == null ? recorded : file.toFile().length() / (3L * channels);
    }

    private static void silence(double[][] block, int at) {
        for (double[] x : block) {
            x[at] = 0;
        }
    }

    private static void pause(int done) {
        if (done == 0) {
            LockSupport.parkNanos(100_000);
        }
    }

    long played() {
        return playedFrames;
    }

    /** Whether it was stopped. */
    public boolean isStopped() {
        return stopped;
    }

    @Override
    public long underruns() {
        return playedFrames >= underrunAfter ? 1 : 0;
    }

    @Override
    public long overruns() {
        return recorded >= overrunAfter ? 1 : 0;
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
