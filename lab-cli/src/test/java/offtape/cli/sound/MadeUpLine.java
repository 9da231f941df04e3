package offtape.cli.sound;

import java.io.ByteArrayOutputStream;
import java.lang.reflect.Method;
import java.lang.reflect.Proxy;
import javax.sound.sampled.AudioFormat;
import javax.sound.sampled.Line;
import javax.sound.sampled.LineUnavailableException;
import javax.sound.sampled.SourceDataLine;
import javax.sound.sampled.TargetDataLine;

/**
 * A line that keeps what is played and gives what it is told to. It behaves as lines of the JDK
 * were seen to: a lost device takes and gives nothing from then on, and after an under-run the
 * first answer about room says that there is none.
 */
final class MadeUpLine {

    private final Class<?> kind;
    private final MadeUpDevice device;
    private AudioFormat format;
    private int bufferBytes;
    private boolean open;
    private boolean dry;
    private boolean askedSinceDry;
    private int waiting;
    private int read;

    /** What was played. */
    final ByteArrayOutputStream played = new ByteArrayOutputStream();

    /** What is recorded next. */
    byte[] heard = {};

    /** How many bytes lie ready to be read, as the line says it. */
    int ready;

    /** Takes no more than so many bytes at once. */
    int most = Integer.MAX_VALUE;

    boolean lost;
    boolean started;
    boolean flushed;
    boolean drained;

    /** What happens while something is written or read. */
    Runnable meanwhile = () -> {};

    MadeUpLine(Class<?> kind, MadeUpDevice device) {
        this.kind = kind;
        this.device = device;
    }

    /** One that is open, and of no device. */
    static MadeUpLine open(Class<? extends Line> kind, AudioFormat format, int bufferBytes) {
        MadeUpLine line = new MadeUpLine(kind, null);
        line.format = format;
        line.bufferBytes = bufferBytes;
        line.open = true;
        return line;
    }

    Class<?> kind() {
        return kind;
    }

    boolean isOpen() {
        return open;
    }

    int bufferBytes() {
        return bufferBytes;
    }

    SourceDataLine source() {
        return (SourceDataLine) line();
    }

    TargetDataLine target() {
        return (TargetDataLine) line();
    }

    Line line() {
        return (Line)
                Proxy.newProxyInstance(
                        getClass().getClassLoader(), new Class<?>[] {kind}, this::answer);
    }

    /** Everything was heard, and nothing more came in time. */
    void runDry() {
        waiting = 0;
        dry = true;
        askedSinceDry = false;
    }

    private Object answer(Object self, Method method, Object... args)
            throws LineUnavailableException {
        switch (method.getName()) {
            case "open" -> open((AudioFormat) args[0], (int) args[1]);
            case "isOpen" -> {
                return open;
            }
            case "getFormat" -> {
                return format;
            }
            case "getBufferSize" -> {
                return bufferBytes;
            }
            case "available" -> {
                return available();
            }
            case "getLongFramePosition" -> {
                return (long) played.size() / format.getFrameSize();
            }
            case "write" -> {
                return write((byte[]) args[0], (int) args[1], (int) args[2]);
            }
            case "read" -> {
                return read((byte[]) args[0], (int) args[1], (int) args[2]);
            }
            case "start" -> started = true;
            case "stop" -> started = false;
            case "flush" -> flushed = true;
            case "drain" -> drained = true;
            case "close" -> open = false;
            default -> throw new UnsupportedOperationException(method.getName());
        }
        return null;
    }

    private void open(AudioFormat wanted, int bytes) throws LineUnavailableException {
        device.opening(this);
        format = wanted;
        bufferBytes = bytes;
        open = true;
    }

    private int available() {
        if (kind == TargetDataLine.class) {
            return ready;
        }
        boolean first = dry && !askedSinceDry;
        askedSinceDry = true;
        return first ? 0 : bufferBytes - waiting;
    }

    private int write(byte[] bytes, int from, int count) {
        meanwhile.run();
        int some = lost ? 0 : Math.min(most, count);
        played.write(bytes, from, some);
        waiting = Math.min(bufferBytes, waiting + some);
        dry = false;
        return some;
    }

    private int read(byte[] into, int from, int count) {
        meanwhile.run();
        int some = lost ? 0 : Math.min(count, heard.length - read);
        System.arraycopy(heard, read, into, from, some);
        read += some;
        return some;
    }
}
