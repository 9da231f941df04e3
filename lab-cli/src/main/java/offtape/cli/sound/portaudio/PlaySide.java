package offtape.cli.sound.portaudio;

import offtape.cli.sound.FrameRing;
import offtape.cli.sound.StreamRequest;

/**
 * The way out of a stream. Another thread puts frames into the ring; the sound thread hands them on
 * as the system takes them, and silence before the first and, when asked to drain, after the last.
 * In between it hands over nothing that was not played, so that the system notices a gap.
 */
final class PlaySide {

    private static final double CHUNK_S = 0.02;
    private static final double RING_S = 0.05;

    private final PortAudioApi api;
    private final FrameRing ring;
    private final OutputFrames frames;
    private final double[][] block;
    private final int chunk;
    private int hold;
    private int silentFrames;
    private boolean begun;
    private volatile boolean draining;
    private volatile long underruns;

    PlaySide(PortAudioApi api, StreamRequest.End end, int sampleRateHz) {
        int channels = end.channels().numbers().size();
        this.api = api;
        this.chunk = (int) (CHUNK_S * sampleRateHz);
        this.ring = new FrameRing(channels, (int) (RING_S * sampleRateHz));
        this.block = new double[channels][chunk];
        this.frames = new OutputFrames(Opening.outputWidth(end), end.channels(), chunk);
    }

    /** What is to be played. */
    FrameRing ring() {
        return ring;
    }

    long underruns() {
        return underruns;
    }

    /** Asks for silence after what is in the ring; {@link #isDraining} tells when that is heard. */
    void drain() {
        draining = true;
    }

    boolean isDraining() {
        return draining;
    }

    /** The system holds at least so many frames. */
    void holds(int atLeast) {
        hold = Math.max(hold, atLeast);
    }

    /**
     * Hands over what there is room for, without waiting; for the sound thread.
     *
     * @return how many frames
     */
    int give(long stream) {
        // looked at before the ring: when it is set, all that is played is in the ring
        boolean ending = draining;
        int count = Math.min(chunk, room(stream));
        int waiting = ring.waiting();
        boolean silent = waiting == 0;
        if (count == 0 || silent && begun && !ending) {
            return 0;
        }
        if (silent) {
            frames.silence(count);
        } else {
            count = ring.take(block, 0, Math.min(count, waiting));
            frames.encode(block, count);
        }
        write(stream, count);
        follow(silent, ending, count);
        return count;
    }

    private int room(long stream) {
        int room = api.writable(stream);
        if (room == PortAudioApi.OUTPUT_UNDERFLOWED) {
            noteUnderrun();
            return 0;
        }
        if (room < 0) {
            throw Lost.output(api, room);
        }
        holds(room);
        return room;
    }

    private void write(long stream, int count) {
        int code = api.write(stream, frames.block(), count);
        if (code == PortAudioApi.OUTPUT_UNDERFLOWED) {
            noteUnderrun();
        } else if (code < 0) {
            throw Lost.output(api, code);
        }
    }

    // before the first frame nothing can be missing from what is heard
    private void noteUnderrun() {
        if (begun) {
            underruns++;
        }
    }

    // the last frame was heard when as much silence went after it as the system holds
    private void follow(boolean silent, boolean ending, int count) {
        begun |= !silent;
        silentFrames = silent && ending ? silentFrames + count : 0;
        if (ending && silentFrames >= hold) {
            begun = false;
            draining = false;
        }
    }
}
