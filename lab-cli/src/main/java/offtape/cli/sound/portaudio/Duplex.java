package offtape.cli.sound.portaudio;

import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.locks.LockSupport;
import offtape.cli.sound.SoundTroubleException;
import offtape.cli.sound.StreamRequest;
import offtape.core.text.Sentences;

/**
 * The life of a stream, all on one thread: the library is not safe to be called by two at once, not
 * even reading by one and writing by the other. It never waits in the library while sound goes on,
 * so that it can fall silent at once.
 */
final class Duplex {

    private static final Sentences SAID = Sentences.near(Duplex.class);

    private static final long PAUSE_NS = 1_000_000;
    private static final long OPENING_S = 20;

    private final PortAudioApi api;
    private final StreamRequest request;
    private final PlaySide playing;
    private final RecordSide recording;
    private final CountDownLatch opened = new CountDownLatch(1);
    private final CountDownLatch begun = new CountDownLatch(1);
    private volatile boolean stopped;
    private volatile RuntimeException failure;

    Duplex(PortAudioApi api, StreamRequest request) {
        this.api = api;
        this.request = request;
        this.playing =
                request.output() == null
                        ? null
                        : new PlaySide(api, request.output(), request.sampleRateHz());
        this.recording =
                request.input() == null ? null : new RecordSide(api, request.input(), request);
    }

    /** The way out, or null. */
    PlaySide playing() {
        return playing;
    }

    /** The way in, or null. */
    RecordSide recording() {
        return recording;
    }

    /** Lives until {@link #stop} or until the device is lost. */
    void run() {
        try {
            int code = api.initialize();
            if (code != 0) {
                throw new SoundTroubleException(SAID.say("portaudio-start", api.errorText(code)));
            }
            try {
                open();
            } finally {
                api.terminate();
            }
        } catch (RuntimeException e) {
            failure = e;
        } finally {
            opened.countDown();
        }
    }

    private void open() {
        long stream = new Opening(api, request).open();
        try {
            opened.countDown();
            begun.await();
            if (!stopped) {
                flow(stream);
            }
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        } finally {
            api.abort(stream);
            api.close(stream);
        }
    }

    private void flow(long stream) {
        int code = api.start(stream);
        if (code < 0) {
            throw playing == null ? Lost.input(api, code) : Lost.output(api, code);
        }
        if (playing != null) {
            playing.holds((int) (api.outputLatencySeconds(stream) * request.sampleRateHz()));
            while (!stopped && playing.give(stream) > 0) {
                // the system's buffer is filled with silence before recording is waited for
            }
        }
        while (!stopped) {
            int moved = playing == null ? 0 : playing.give(stream);
            moved += recording == null ? 0 : recording.take(stream);
            if (moved == 0) {
                LockSupport.parkNanos(PAUSE_NS);
            }
        }
    }

    /**
     * Waits until it is open.
     *
     * @throws SoundTroubleException if it does not open
     */
    void awaitOpen() {
        try {
            if (!opened.await(OPENING_S, TimeUnit.SECONDS)) {
                throw new SoundTroubleException(SAID.say("portaudio-late", OPENING_S));
            }
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
        rethrow();
    }

    /** Begins; again does nothing. */
    void begin() {
        begun.countDown();
    }

    void stop() {
        stopped = true;
        begun.countDown();
    }

    boolean isStopped() {
        return stopped;
    }

    /** Throws what ended the stream, if anything did. */
    void rethrow() {
        if (failure != null) {
            throw failure;
        }
    }
}
