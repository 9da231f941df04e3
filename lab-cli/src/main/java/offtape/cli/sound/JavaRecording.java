package offtape.cli.sound;

import javax.sound.sampled.TargetDataLine;
import offtape.core.text.Sentences;

/** Records from an open line, a chunk at a time. */
final class JavaRecording {

    private static final Sentences SAID = Sentences.near(JavaRecording.class);

    private static final double CHUNK_S = 0.02;

    private final TargetDataLine line;
    private final FrameCoding coding;
    private final byte[] chunk;
    private final int chunkFrames;
    private final String device;
    private boolean full;
    private volatile boolean stopped;
    private volatile long overruns;

    JavaRecording(JavaEnd<TargetDataLine> end) {
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

    int record(double[][] block, int frames) {
        int done = 0;
        while (done < frames && !stopped) {
            int some = Math.min(chunkFrames, frames - done);
            noteOverrun();
            int bytes = line.read(chunk, 0, some * coding.frameBytes());
            int got = bytes / coding.frameBytes();
            coding.decode(chunk, got, block, done);
            done += got;
            if (got < some && !stopped) {
                throw new SoundTroubleException(SAID.say("gives-no-more", device));
            }
        }
        return done;
    }

    /** A buffer that is full has probably lost sound; it counts once until it has been emptied. */
    private void noteOverrun() {
        int waiting = line.available();
        if (waiting >= line.getBufferSize() - coding.frameBytes()) {
            overruns += full ? 0 : 1;
            full = true;
        } else if (waiting < line.getBufferSize() / 2) {
            full = false;
        }
    }

    long overruns() {
        return overruns;
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
