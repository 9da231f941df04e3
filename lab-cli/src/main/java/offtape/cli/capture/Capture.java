package offtape.cli.capture;

import java.util.Arrays;
import java.util.concurrent.locks.LockSupport;
import offtape.cli.sound.FrameRing;
import offtape.cli.sound.SoundStream;
import offtape.core.audio.WavWriter;

/**
 * Plays and records at the same time. Recording begins first and is known to run before anything
 * sounds; the file is kept readable while it grows.
 */
public final class Capture {

    private static final double CHECKPOINT_S = 0.5;
    private static final double TELL_S = 0.1;
    private static final int BLOCK = 4096;
    private static final long PAUSE_NS = 5_000_000;

    /**
     * The highest sample of 16 bits: a converter of fewer bits than the samples goes no higher, and
     * what comes so close to full scale is as good as there.
     */
    public static final double FULL = 1 - Math.scalb(1.0, -15);

    private final SoundStream stream;
    private final int inputs;
    private final StopSignal stop;
    private final CaptureProgress progress;

    /** Makes ready. */
    public Capture(SoundStream stream, StopSignal stop, CaptureProgress progress) {
        this.stream = stream;
        this.inputs = stream.inputs();
        this.stop = stop;
        this.progress = progress;
    }

    /**
     * Plays a list and records until it has been played.
     *
     * @param wav receives what comes back; the caller closes it
     * @throws offtape.cli.sound.SoundTroubleException if a device was lost; what was recorded
     *     before is in the file
     */
    public CaptureResult run(PlayList list, WavWriter wav) {
        TroubleLog log = new TroubleLog(stream.sampleRateHz());
        Player player = new Player(list, stream, stop, log);
        player.prepare();
        return record(player, (double) list.frames() / stream.sampleRateHz(), wav, log);
    }

    /** Records for a time, or until the signal is given, without playing. */
    public CaptureResult record(double seconds, WavWriter wav) {
        return record(null, seconds, wav, new TroubleLog(stream.sampleRateHz()));
    }

    /** Plays a list without recording; troubles are placed by what was played. */
    public CaptureResult play(PlayList list) {
        stop.whenGiven(stream::stop);
        TroubleLog log = new TroubleLog(stream.sampleRateHz());
        Player player = new Player(list, stream, stop, log);
        player.prepare();
        player.start();
        double seconds = (double) list.frames() / stream.sampleRateHz();
        double told = 0;
        while (!player.isDone()) {
            LockSupport.parkNanos(PAUSE_NS);
            log.recorded(player.frames());
            double now = (double) player.frames() / stream.sampleRateHz();
            if (now - told >= TELL_S) {
                progress.tell(now, seconds, new double[0], false);
                told = now;
            }
        }
        return new CaptureResult(0, !stop.isGiven(), new double[0], 0, log.marks());
    }

    private CaptureResult record(Player player, double seconds, WavWriter wav, TroubleLog log) {
        stop.whenGiven(stream::stop);
        Recorder recorder = new Recorder(stream, stop, log);
        recorder.start();
        Writing writing = new Writing(recorder.ring(), wav, seconds);
        try {
            follow(recorder, player, writing);
        } finally {
            recorder.end();
            if (player != null) {
                player.end();
            }
        }
        if (recorder.failure() != null) {
            wav.checkpoint();
            throw recorder.failure();
        }
        return writing.result(!stop.isGiven(), log.marks());
    }

    private static void follow(Recorder recorder, Player player, Writing writing) {
        boolean playing = false;
        while (!recorder.ring().isDone()) {
            if (!writing.some()) {
                LockSupport.parkNanos(PAUSE_NS);
            }
            if (player != null && !playing && writing.frames > 0) {
                player.start();
                playing = true;
            }
            if (player == null ? writing.isEnough() : playing && player.isDone()) {
                recorder.end();
            }
        }
    }

    /** Writes what the ring holds, and keeps an eye on its level. */
    private final class Writing {

        private final FrameRing ring;
        private final WavWriter wav;
        private final double ofSeconds;
        private final double[] peaks = new double[inputs];
        private final double[] recent = new double[inputs];
        private long frames;
        private long clipped;
        private long checkpoint;
        private long told;

        Writing(FrameRing ring, WavWriter wav, double ofSeconds) {
            this.ring = ring;
            this.wav = wav;
            this.ofSeconds = ofSeconds;
        }

        boolean some() {
            int count = Math.min(BLOCK, ring.waiting());
            if (count == 0) {
                return false;
            }
            double[][] block = new double[inputs][count];
            ring.take(block, 0, count);
            wav.write(block);
            frames += count;
            look(block, count);
            if (frames - checkpoint >= CHECKPOINT_S * stream.sampleRateHz()) {
                wav.checkpoint();
                checkpoint = frames;
            }
            if (frames - told >= TELL_S * stream.sampleRateHz()) {
                progress.tell(seconds(), ofSeconds, recent.clone(), clipped > 0);
                Arrays.fill(recent, 0);
                told = frames;
            }
            return true;
        }

        private void look(double[][] block, int count) {
            for (int i = 0; i < count; i++) {
                boolean atFullScale = false;
                for (int c = 0; c < inputs; c++) {
                    double size = Math.abs(block[c][i]);
                    recent[c] = Math.max(recent[c], size);
                    atFullScale |= size >= FULL;
                }
                clipped += atFullScale ? 1 : 0;
            }
            for (int c = 0; c < inputs; c++) {
                peaks[c] = Math.max(peaks[c], recent[c]);
            }
        }

        boolean isEnough() {
            return seconds() >= ofSeconds;
        }

        double seconds() {
            return (double) frames / stream.sampleRateHz();
        }

        CaptureResult result(boolean complete, CaptureMarks marks) {
            return new CaptureResult(frames, complete, peaks, clipped, marks);
        }
    }
}
