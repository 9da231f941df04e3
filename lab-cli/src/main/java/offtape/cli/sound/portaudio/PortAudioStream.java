package offtape.cli.sound.portaudio;

import java.time.Duration;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.locks.LockSupport;
import offtape.cli.sound.FrameRing;
import offtape.cli.sound.SoundStream;
import offtape.cli.sound.SoundTroubleException;
import offtape.cli.sound.StreamRequest;

/** A stream whose sound thread is reached over rings, so that no caller touches the library. */
final class PortAudioStream implements SoundStream {

    /** What passes exactly, whatever kind of sample the device has. */
    static final int BITS = 24;

    private static final long PAUSE_NS = 1_000_000;
    private static final long CLOSING_MS = 2000;

    private final StreamRequest request;
    private final Duplex duplex;
    private final Thread thread;
    private final long patienceNs;

    private PortAudioStream(
            StreamRequest request, Duplex duplex, Thread thread, Duration patience) {
        this.request = request;
        this.duplex = duplex;
        this.thread = thread;
        this.patienceNs = patience.toNanos();
    }

    /**
     * Opens one.
     *
     * @param patience how long a device may neither take nor give sound before it counts as lost
     * @throws SoundTroubleException if the devices do not open so
     */
    static PortAudioStream open(PortAudioApi api, StreamRequest request, Duration patience) {
        Duplex duplex = new Duplex(api, request);
        Thread thread = new Thread(duplex::run, "sound by PortAudio");
        thread.setDaemon(true);
        thread.setPriority(Thread.MAX_PRIORITY);
        thread.start();
        PortAudioStream stream = new PortAudioStream(request, duplex, thread, patience);
        try {
            duplex.awaitOpen();
            return stream;
        } catch (RuntimeException e) {
            duplex.stop();
            throw e;
        }
    }

    @Override
    public int sampleRateHz() {
        return request.sampleRateHz();
    }

    @Override
    public int bits() {
        return BITS;
    }

    @Override
    public int outputs() {
        return request.output() == null ? 0 : request.output().channels().numbers().size();
    }

    @Override
    public int inputs() {
        return request.input() == null ? 0 : request.input().channels().numbers().size();
    }

    @Override
    public void startRecording() {
        duplex.recording().want();
        duplex.begin();
    }

    /** Until the first frame is played, the output has been fed with silence. */
    @Override
    public void startPlaying() {
        duplex.begin();
    }

    @Override
    public void play(double[][] block, int frames) {
        FrameRing ring = duplex.playing().ring();
        int done = 0;
        long since = System.nanoTime();
        while (done < frames && !duplex.isStopped()) {
            int some = ring.put(block, done, frames - done);
            done += some;
            since = some > 0 ? System.nanoTime() : since;
            if (done < frames) {
                pause(since, true);
            }
        }
    }

    @Override
    public int record(double[][] block, int frames) {
        FrameRing ring = duplex.recording().ring();
        int done = 0;
        long since = System.nanoTime();
        while (done < frames && !duplex.isStopped()) {
            int some = ring.take(block, done, frames - done);
            done += some;
            since = some > 0 ? System.nanoTime() : since;
            if (done < frames) {
                pause(since, false);
            }
        }
        return done;
    }

    // the sound thread may hang in the library when a device is lost, so that is seen from here
    private void pause(long since, boolean output) {
        duplex.rethrow();
        if (System.nanoTime() - since > patienceNs) {
            throw output ? Lost.output() : Lost.input();
        }
        LockSupport.parkNanos(PAUSE_NS);
    }

    @Override
    public long underruns() {
        return duplex.playing() == null ? 0 : duplex.playing().underruns();
    }

    @Override
    public long overruns() {
        return duplex.recording() == null ? 0 : duplex.recording().overruns();
    }

    @Override
    public void stop() {
        duplex.stop();
        LockSupport.unpark(thread);
    }

    @Override
    public void drain() {
        PlaySide playing = duplex.playing();
        playing.drain();
        long since = System.nanoTime();
        long endNs = patienceNs + (long) (2e9 * request.bufferSeconds());
        while (playing.isDraining() && !duplex.isStopped()) {
            duplex.rethrow();
            if (System.nanoTime() - since > endNs) {
                throw Lost.output();
            }
            LockSupport.parkNanos(PAUSE_NS);
        }
    }

    /** Closing a device that was lost may never come back, so it is not waited for for ever. */
    @Override
    public void close() {
        stop();
        try {
            TimeUnit.MILLISECONDS.timedJoin(thread, CLOSING_MS);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }
}
