package offtape.cli.sound.portaudio;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.List;
import java.util.Queue;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.locks.LockSupport;

/**
 * A library whose devices give back on each channel what is played on it. Its clock goes on by a
 * few frames each time it is asked what can be read, about twice as fast as a real one, and stands
 * still while there is nothing to play, so that no sound is missed on a slow computer. Faults can
 * be asked for.
 */
final class FakePortAudio implements PortAudioApi {

    static final int BUFFER = 2400;

    private static final long STREAM = 77;
    private static final int STEP = 96;
    private static final long STEP_NS = 1_000_000;
    private static final double FULL_SCALE = 0x1p31;

    final List<HostApi> hosts =
            new ArrayList<>(List.of(new HostApi(8, "ALSA", 0, 0), new HostApi(1, "Old", 2, 2)));
    final List<Device> devices =
            new ArrayList<>(
                    List.of(
                            new Device("Interface", 0, 8, 8, 48_000),
                            new Device("Interface Two", 0, 1, 0, 48_000),
                            new Device("Interface", 1, 2, 2, 44_100)));

    /** What was called, in order, but for asking, reading and writing. */
    final List<String> calls = new ArrayList<>();

    /** By which threads. */
    final Set<Thread> callers = ConcurrentHashMap.newKeySet();

    /** What the functions answer when they go wrong; 0 means that they do not. */
    int initializing;

    int supporting;
    int opening;
    int starting;
    volatile int reading;
    volatile int writing;
    volatile int askingReadable;
    volatile int askingWritable;

    /** The most channels that open. */
    int opensChannels = 64;

    /** Whether its functions hang from now on. */
    volatile boolean hangs;

    /** After so many frames its clock stands still. */
    volatile long standsAfter = Long.MAX_VALUE;

    volatile long writtenFrames;
    private final Queue<float[]> toPlay = new ArrayDeque<>();
    private final Queue<float[]> recorded = new ArrayDeque<>();
    private long clock;
    private int inputs;
    private int outputs;

    private void note(String call) {
        calls.add(call);
        callers.add(Thread.currentThread());
    }

    private static int once(int fault, Runnable clear) {
        clear.run();
        return fault;
    }

    @Override
    public int initialize() {
        note("initialize");
        return initializing;
    }

    @Override
    public void terminate() {
        note("terminate");
    }

    @Override
    public int deviceCount() {
        return devices.size();
    }

    @Override
    public Device device(int number) {
        return devices.get(number);
    }

    @Override
    public HostApi hostApi(int number) {
        return hosts.get(number);
    }

    @Override
    public int defaultHostApi() {
        return 0;
    }

    @Override
    public int isFormatSupported(Side input, Side output, double sampleRateHz) {
        Side side = input == null ? output : input;
        boolean fits = side.channels() <= opensChannels && sampleRateHz <= 96_000;
        return supporting != 0 ? supporting : fits ? 0 : -9997;
    }

    @Override
    public Opened open(Side input, Side output, double sampleRateHz) {
        note("open");
        inputs = input == null ? 0 : input.channels();
        outputs = output == null ? 0 : output.channels();
        return new Opened(opening, opening == 0 ? STREAM : 0);
    }

    @Override
    public int start(long stream) {
        note("start");
        return starting;
    }

    @Override
    public int abort(long stream) {
        note("abort");
        return 0;
    }

    @Override
    public int close(long stream) {
        note("close");
        return 0;
    }

    @Override
    public double outputLatencySeconds(long stream) {
        return 0.01;
    }

    @Override
    public int readable(long stream) {
        callers.add(Thread.currentThread());
        if (askingReadable != 0) {
            return once(askingReadable, () -> askingReadable = 0);
        }
        LockSupport.parkNanos(STEP_NS);
        for (int i = 0; i < STEP && clock < standsAfter; i++) {
            float[] frame = outputs == 0 ? new float[inputs] : toPlay.poll();
            if (frame == null) {
                break;
            }
            recorded.add(frame);
            clock++;
        }
        return recorded.size();
    }

    @Override
    public int writable(long stream) {
        callers.add(Thread.currentThread());
        return askingWritable != 0
                ? once(askingWritable, () -> askingWritable = 0)
                : BUFFER - toPlay.size();
    }

    @Override
    public int read(long stream, ByteBuffer block, int frames) {
        callers.add(Thread.currentThread());
        hang();
        ByteBuffer to = block.duplicate().order(ByteOrder.nativeOrder());
        for (int i = 0; i < frames; i++) {
            float[] frame = recorded.isEmpty() ? new float[inputs] : recorded.remove();
            for (int c = 0; c < inputs; c++) {
                to.putFloat(c < frame.length ? frame[c] : 0);
            }
        }
        return once(reading, () -> reading = 0);
    }

    private void hang() {
        while (hangs) {
            Thread.onSpinWait();
        }
    }

    @Override
    public int write(long stream, ByteBuffer block, int frames) {
        callers.add(Thread.currentThread());
        ByteBuffer from = block.duplicate().order(ByteOrder.nativeOrder());
        for (int i = 0; i < frames; i++) {
            float[] frame = new float[outputs];
            for (int c = 0; c < outputs; c++) {
                frame[c] = (float) (from.getInt() / FULL_SCALE);
            }
            toPlay.add(frame);
        }
        writtenFrames += frames;
        return once(writing, () -> writing = 0);
    }

    @Override
    public String errorText(int code) {
        return "fault " + code;
    }
}
