package offtape.cli.command;

import java.util.List;
import java.util.concurrent.locks.LockSupport;
import java.util.function.IntToDoubleFunction;
import offtape.cli.capture.LoopStream;
import offtape.cli.sound.SoundDevice;
import offtape.cli.sound.SoundLayer;
import offtape.cli.sound.SoundLayers;
import offtape.cli.sound.SoundStream;
import offtape.cli.sound.StreamRequest;

/** Sound devices with a made-up way between them. */
final class MadeStream implements SoundStream {

    private static final int DELAY = 4801;

    private final LoopStream loop = new LoopStream(2, DELAY);
    private final double rightGain;
    private final IntToDoubleFunction tape;
    private final double[][] sent = new double[2][4800];
    private int frame;
    private volatile boolean stopped;

    private MadeStream(double rightGain, IntToDoubleFunction tape) {
        this.rightGain = rightGain;
        this.tape = tape;
    }

    /** What is played returns, right with a gain. */
    static SoundLayers loop(double rightGain) {
        return layers(new MadeStream(rightGain, null));
    }

    /** A tape is replayed whatever is played: its samples by their number, on both channels. */
    static SoundLayers tape(IntToDoubleFunction samples) {
        return layers(new MadeStream(1, samples));
    }

    /** What is played returns until the device is gone, after so many frames. */
    static SoundLayers lost(long afterFrames) {
        MadeStream stream = new MadeStream(1, null);
        stream.loop.lostAfter = afterFrames;
        return layers(stream);
    }

    private static SoundLayers layers(MadeStream stream) {
        return new SoundLayers(
                List.of(
                        new SoundLayer() {
                            @Override
                            public String name() {
                                return "made";
                            }

                            @Override
                            public List<SoundDevice> devices() {
                                return List.of();
                            }

                            @Override
                            public SoundStream open(StreamRequest request) {
                                if (stream.tape != null && request.output() != null) {
                                    throw new IllegalStateException("nothing may be played");
                                }
                                return stream;
                            }
                        }));
    }

    @Override
    public int sampleRateHz() {
        return loop.sampleRateHz();
    }

    @Override
    public int bits() {
        return loop.bits();
    }

    @Override
    public int outputs() {
        return tape == null ? 2 : 0;
    }

    @Override
    public int inputs() {
        return 2;
    }

    @Override
    public void startRecording() {
        loop.startRecording();
    }

    @Override
    public void startPlaying() {
        loop.startPlaying();
    }

    @Override
    public void play(double[][] block, int frames) {
        for (int i = 0; i < frames; i++) {
            sent[0][i] = block[0][i];
            sent[1][i] = rightGain * block[1][i];
        }
        loop.play(sent, frames);
    }

    @Override
    public int record(double[][] block, int frames) {
        if (tape == null) {
            return loop.record(block, frames);
        }
        for (int i = 0; i < frames; i++) {
            block[0][i] = tape.applyAsDouble(frame);
            block[1][i] = block[0][i];
            frame++;
        }
        LockSupport.parkNanos(1000);
        return stopped ? 0 : frames;
    }

    @Override
    public long underruns() {
        return loop.underruns();
    }

    @Override
    public long overruns() {
        return loop.overruns();
    }

    @Override
    public void stop() {
        stopped = true;
        loop.stop();
    }

    @Override
    public void drain() {
        loop.drain();
    }

    @Override
    public void close() {
        stop();
    }
}
