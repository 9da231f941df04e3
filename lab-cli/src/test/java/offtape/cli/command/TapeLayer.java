package offtape.cli.command;

import java.nio.file.Path;
import java.util.List;
import java.util.Random;
import java.util.concurrent.locks.LockSupport;
import offtape.cli.sound.SoundDevice;
import offtape.cli.sound.SoundLayer;
import offtape.cli.sound.SoundStream;
import offtape.cli.sound.StreamRequest;

/**
 * A machine with two heads and somebody who rewinds it: what is played is recorded from the start
 * of its tape, over what was there, and what is recorded is the tape from its start.
 */
final class TapeLayer implements SoundLayer {

    private static final int RATE_HZ = 48_000;

    /** Half of what a recording may wait for the disk. */
    private static final int AHEAD = 5 * RATE_HZ;

    private final double[][] tape = new double[2][70 * RATE_HZ];
    private final double left;

    /** A file of 24 bits that is being recorded, which the tape does not run away from. */
    private final Path file;

    /**
     * A blank tape.
     *
     * @param leftDb what erasing leaves of what was on it, dB
     */
    TapeLayer(double leftDb, Path file) {
        this.left = Math.pow(10, leftDb / 20);
        this.file = file;
    }

    @Override
    public String name() {
        return "tape";
    }

    @Override
    public List<SoundDevice> devices() {
        return List.of();
    }

    @Override
    public SoundStream open(StreamRequest request) {
        return new Pass(request.output() != null ? 2 : 0, request.input() != null ? 2 : 0);
    }

    /** From the start of the tape. */
    private final class Pass implements SoundStream {

        private final int outputs;
        private final int inputs;
        private final Random hiss = new Random(1);
        private int at;
        private volatile boolean stopped;

        Pass(int outputs, int inputs) {
            this.outputs = outputs;
            this.inputs = inputs;
        }

        @Override
        public int sampleRateHz() {
            return RATE_HZ;
        }

        @Override
        public int bits() {
            return 24;
        }

        @Override
        public int outputs() {
            return outputs;
        }

        @Override
        public int inputs() {
            return inputs;
        }

        @Override
        public void startRecording() {
            // the tape runs as soon as it is asked for
        }

        @Override
        public void startPlaying() {
            // likewise
        }

        @Override
        public void play(double[][] block, int frames) {
            for (int i = 0; i < frames && !stopped; i++) {
                for (int c = 0; c < 2; c++) {
                    tape[c][at] = block[c][i] + left * tape[c][at] + 1e-4 * hiss.nextGaussian();
                }
                at++;
            }
        }

        @Override
        public int record(double[][] block, int frames) {
            while (at - file.toFile().length() / 6 > AHEAD && !stopped) {
                LockSupport.parkNanos(100_000);
            }
            for (int i = 0; i < frames; i++) {
                for (int c = 0; c < 2; c++) {
                    block[c][i] = at < tape[c].length ? tape[c][at] : 0;
                }
                at++;
            }
            return stopped ? 0 : frames;
        }

        @Override
        public long underruns() {
            return 0;
        }

        @Override
        public long overruns() {
            return 0;
        }

        @Override
        public void stop() {
            stopped = true;
        }

        @Override
        public void drain() {
            // nothing waits
        }

        @Override
        public void close() {
            stop();
        }
    }
}
