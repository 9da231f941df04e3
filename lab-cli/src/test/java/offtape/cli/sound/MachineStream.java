package offtape.cli.sound;

import java.util.Arrays;
import java.util.concurrent.locks.LockSupport;

/** A stream through a machine, as fast as the computer can; faults can be asked for. */
public final class MachineStream implements SoundStream {

    private static final int ROOM = 2000;
    private static final long PACE_NS = 400_000;

    private final LoopMachine machine;
    private final int rateHz;
    private final int inputs;
    private double[][] played;
    private int count;
    private long recorded;
    private volatile boolean drained;
    private boolean stopped;

    /** After so many played frames the system runs out of sound once. */
    public long underrunAfter = Long.MAX_VALUE;

    /** After so many played frames so many are left out without a word. */
    public long lostAfterPlaying = Long.MAX_VALUE;

    /** How many. */
    public int lostFrames;

    /** After so many recorded frames the device is gone. */
    public long goneAfter = Long.MAX_VALUE;

    /** After so many recorded frames somebody ends the run. */
    public long stoppedAfter = Long.MAX_VALUE;

    /** What that does. */
    public Runnable stopping = () -> {};

    /** After so many recorded frames nothing more comes in. */
    public long silentAfter = Long.MAX_VALUE;

    MachineStream(LoopMachine machine, int rateHz, int outputs, int inputs) {
        this.machine = machine;
        this.rateHz = rateHz;
        this.inputs = inputs;
        this.played = new double[outputs][1 << 18];
    }

    /** All that was played on a channel. */
    public synchronized double[] played(int channel) {
        return Arrays.copyOf(played[channel], count);
    }

    @Override
    public int sampleRateHz() {
        return rateHz;
    }

    @Override
    public int bits() {
        return 24;
    }

    @Override
    public int outputs() {
        return played.length;
    }

    @Override
    public int inputs() {
        return inputs;
    }

    @Override
    public void startRecording() {
        // what is recorded before anything is played is silence
    }

    @Override
    public void startPlaying() {
        // see record
    }

    @Override
    public synchronized void play(double[][] block, int frames) {
        while (!stopped && machine.place(recorded) < count - ROOM) {
            pause();
        }
        if (count >= lostAfterPlaying) {
            count -= lostFrames;
            lostAfterPlaying = Long.MAX_VALUE;
        }
        for (int c = 0; c < played.length; c++) {
            if (count + frames > played[c].length) {
                played[c] = Arrays.copyOf(played[c], 2 * played[c].length);
            }
            for (int i = 0; i < frames; i++) {
                // a device takes whole steps of its width
                played[c][count + i] = Math.rint(block[c][i] * 8_388_608) / 8_388_608;
            }
        }
        count += frames;
        notifyAll();
    }

    @Override
    public int record(double[][] block, int frames) {
        if (drained) {
            // nobody waits for what comes now, and it shall not run ahead of those who write it
            LockSupport.parkNanos(PACE_NS);
        }
        return heard(block, frames);
    }

    private synchronized int heard(double[][] block, int frames) {
        if (recorded >= goneAfter) {
            throw new SoundTroubleException("The input is gone.");
        }
        if (recorded >= stoppedAfter) {
            stopping.run();
        }
        while (!stopped
                && !drained
                && machine.place(recorded + frames) + LoopMachine.HALF >= count
                && machine.place(recorded + frames) >= -LoopMachine.HALF) {
            pause();
        }
        for (int i = 0; i < frames; i++) {
            double place = machine.place(recorded + i);
            boolean isHeard = place > -LoopMachine.HALF && recorded + i < silentAfter;
            for (int c = 0; c < inputs; c++) {
                double[] from = played[Math.min(c, played.length - 1)];
                block[c][i] = isHeard ? machine.at(from, count, c, place) : 0;
            }
        }
        recorded += frames;
        notifyAll();
        return stopped ? 0 : frames;
    }

    private void pause() {
        try {
            wait(1);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }

    @Override
    public synchronized long underruns() {
        return count >= underrunAfter ? 1 : 0;
    }

    @Override
    public long overruns() {
        return 0;
    }

    @Override
    public synchronized void stop() {
        stopped = true;
        notifyAll();
    }

    @Override
    public synchronized void drain() {
        drained = true;
        while (!stopped && machine.place(recorded) < count) {
            pause();
        }
    }

    @Override
    public void close() {
        stop();
    }
}
