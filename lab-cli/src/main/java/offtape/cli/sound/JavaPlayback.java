package offtape.cli.sound;

import javax.sound.sampled.SourceDataLine;
import offtape.core.text.Sentences;

/** Plays through an open line, a chunk at a time. */
final class JavaPlayback {

    private static final Sentences SAID = Sentences.near(JavaPlayback.class);

    /** A line wants arrays no larger than what is written: all of an array is copied each time. */
    private static final double CHUNK_S = 0.02;

    private final SourceDataLine line;
    private final FrameCoding coding;
    private final byte[] chunk;
    private final int chunkFrames;
    private final String device;
    private boolean filled;
    private volatile boolean stopped;
    private volatile long underruns;

    JavaPlayback(JavaEnd<SourceDataLine> end) {
        this.line = end.line();
        this.coding = end.coding();
        this.device = end.name();
        this.chunkFrames = (int) Math.max(1, CHUNK_S * line.getFormat().getSampleRate());
        this.chunk = new byte[chunkFrames * coding.frameBytes()];
    }

    int channels() {
        return coding.channels();
    }

    void start() {
        line.start();
    }

    void play(double[][] block, int frames) {
        int done = 0;
        while (done < frames && !stopped) {
            int some = Math.min(chunkFrames, frames - done);
            coding.encode(block, done, some, chunk);
            noteUnderrun();
            write(some * coding.frameBytes());
            done += some;
        }
    }

    // The first answer after an under-run says that nothing is available; the later one is true.
    private void noteUnderrun() {
        if (filled) {
            line.available();
            line.getLongFramePosition();
            if (line.available() >= line.getBufferSize()) {
                underruns++;
                filled = false;
            }
        } else {
            filled = line.available() < chunk.length;
        }
    }

    private void write(int bytes) {
        int written = 0;
        while (written < bytes && !stopped) {
            int some = line.write(chunk, written, bytes - written);
            written += some;
            // a line that takes nothing though it was not stopped has lost its device
            if (some == 0 && !stopped) {
                throw new SoundTroubleException(SAID.say("takes-no-more", device));
            }
        }
    }

    long underruns() {
        return underruns;
    }

    void drain() {
        if (!stopped) {
            line.drain();
        }
    }

    void stop() {
        stopped = true;
        line.stop();
        line.flush();
    }

    void close() {
        line.close();
    }
}
