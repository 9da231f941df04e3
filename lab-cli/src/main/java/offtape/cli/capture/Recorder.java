package offtape.cli.capture;

import offtape.cli.sound.FrameRing;
import offtape.cli.sound.SoundStream;

/** A thread that takes what a stream records and puts it into a ring, and does nothing else. */
final class Recorder {

    private static final double RING_S = 10;
    private static final double CHUNK_S = 0.02;

    private final SoundStream stream;
    private final int channels;
    private final StopSignal stop;
    private final TroubleLog log;
    private final FrameRing ring;
    private final Thread thread;
    private volatile RuntimeException failure;
    private volatile boolean enough;

    Recorder(SoundStream stream, StopSignal stop, TroubleLog log) {
        this.stream = stream;
        this.channels = stream.inputs();
        this.stop = stop;
        this.log = log;
        this.ring = new FrameRing(channels, (int) (RING_S * stream.sampleRateHz()));
        this.thread = new Thread(this::run, "recording");
        thread.setDaemon(true);
        thread.setPriority(Thread.MAX_PRIORITY);
    }

    void start() {
        thread.start();
    }

    private void run() {
        try {
            record();
        } catch (RuntimeException e) {
            failure = e;
        } finally {
            ring.end();
        }
    }

    private void record() {
        int chunk = (int) (CHUNK_S * stream.sampleRateHz());
        double[][] block = new double[channels][chunk];
        stream.startRecording();
        long lost = 0;
        long frames = 0;
        while (!enough && !stop.isGiven()) {
            int some = stream.record(block, chunk);
            int put = ring.put(block, 0, some);
            frames += some;
            log.recorded(frames);
            long now = stream.overruns();
            // a full ring means that the disk did not keep up
            if (now > lost || put < some) {
                log.note(CaptureMarks.Kind.SOUND_LOST);
                lost = now;
            }
        }
    }

    /** No more is needed. */
    void end() {
        enough = true;
    }

    /** What was recorded and not yet written. */
    FrameRing ring() {
        return ring;
    }

    /** Why recording ended before it should, or null. */
    RuntimeException failure() {
        return failure;
    }
}
