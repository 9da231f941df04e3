package offtape.cli.sound;

import java.util.concurrent.TimeUnit;

/** A stream over two lines of Java's own sound layer, or over one of them. */
final class JavaStream implements SoundStream {

    private static final long CLOSING_MS = 2000;

    private final int sampleRateHz;
    private final int bits;
    private final JavaPlayback playback;
    private final JavaRecording recording;

    /** Either end may be null. */
    JavaStream(int sampleRateHz, int bits, JavaPlayback playback, JavaRecording recording) {
        this.sampleRateHz = sampleRateHz;
        this.bits = bits;
        this.playback = playback;
        this.recording = recording;
    }

    @Override
    public int sampleRateHz() {
        return sampleRateHz;
    }

    @Override
    public int bits() {
        return bits;
    }

    @Override
    public int outputs() {
        return playback == null ? 0 : playback.channels();
    }

    @Override
    public int inputs() {
        return recording == null ? 0 : recording.channels();
    }

    @Override
    public void startRecording() {
        recording.start();
    }

    @Override
    public void startPlaying() {
        playback.start();
    }

    @Override
    public void play(double[][] block, int frames) {
        playback.play(block, frames);
    }

    @Override
    public int record(double[][] block, int frames) {
        return recording.record(block, frames);
    }

    @Override
    public long underruns() {
        return playback == null ? 0 : playback.underruns();
    }

    @Override
    public long overruns() {
        return recording == null ? 0 : recording.overruns();
    }

    @Override
    public void stop() {
        if (playback != null) {
            playback.stop();
        }
        if (recording != null) {
            recording.stop();
        }
    }

    @Override
    public void drain() {
        playback.drain();
    }

    /** Closing a device that was lost may never come back, so it is not waited for for ever. */
    @Override
    public void close() {
        Thread closer = new Thread(this::closeLines, "closing the sound devices");
        closer.setDaemon(true);
        closer.start();
        try {
            TimeUnit.MILLISECONDS.timedJoin(closer, CLOSING_MS);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }

    private void closeLines() {
        if (playback != null) {
            playback.close();
        }
        if (recording != null) {
            recording.close();
        }
    }
}
