package offtape.cli.sound.portaudio;

import offtape.cli.sound.FrameRing;
import offtape.cli.sound.StreamRequest;

/**
 * The way into a stream: the sound thread puts what the system has recorded into the ring, another
 * takes it from there. What came before it was wanted is dropped.
 */
final class RecordSide {

    private static final double CHUNK_S = 0.02;
    private static final double RING_S = 2;

    private final PortAudioApi api;
    private final FrameRing ring;
    private final InputFrames frames;
    private final double[][] block;
    private final int chunk;
    private final long patienceNs;
    private long quietSinceNs;
    private boolean full;
    private volatile boolean wanted;
    private volatile long overruns;

    RecordSide(PortAudioApi api, StreamRequest.End end, StreamRequest request) {
        int channels = end.channels().numbers().size();
        int sampleRateHz = request.sampleRateHz();
        this.api = api;
        this.chunk = (int) (CHUNK_S * sampleRateHz);
        this.ring = new FrameRing(channels, (int) (RING_S * sampleRateHz));
        this.block = new double[channels][chunk];
        this.frames = new InputFrames(Opening.inputWidth(end), end.channels(), chunk);
        this.patienceNs = (long) (request.bufferSeconds() * 1e9);
        this.quietSinceNs = System.nanoTime() - patienceNs;
    }

    /** What was recorded. */
    FrameRing ring() {
        return ring;
    }

    long overruns() {
        return overruns;
    }

    /** What comes from now on is wanted. */
    void want() {
        wanted = true;
    }

    /**
     * Takes what there is; for the sound thread. It waits for a frame only at the beginning and
     * when none came for long, since some systems record only once they are asked to wait.
     *
     * @return how many frames
     */
    int take(long stream) {
        int count = Math.min(chunk, waiting(stream));
        if (count == 0 && System.nanoTime() - quietSinceNs < patienceNs) {
            return 0;
        }
        count = Math.max(1, count);
        int code = api.read(stream, frames.block(), count);
        quietSinceNs = System.nanoTime();
        if (code == PortAudioApi.INPUT_OVERFLOWED) {
            overruns++;
        } else if (code < 0) {
            throw Lost.input(api, code);
        }
        if (wanted) {
            frames.decode(block, count);
            keep(count);
        }
        return count;
    }

    private int waiting(long stream) {
        int waiting = api.readable(stream);
        if (waiting == PortAudioApi.INPUT_OVERFLOWED) {
            overruns++;
            return 0;
        }
        if (waiting < 0) {
            throw Lost.input(api, waiting);
        }
        return waiting;
    }

    // nobody took what is in the ring: that is one loss until there is room again
    private void keep(int count) {
        boolean lost = ring.put(block, 0, count) < count;
        if (lost && !full) {
            overruns++;
        }
        full = lost;
    }
}
