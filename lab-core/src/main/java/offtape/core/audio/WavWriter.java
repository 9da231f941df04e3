package offtape.core.audio;

import java.io.Closeable;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.channels.FileChannel;
import java.nio.channels.SeekableByteChannel;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.Arrays;
import java.util.Optional;
import offtape.core.fault.RefusedOutputException;
import offtape.core.output.DiskTrouble;
import offtape.core.output.StagedPlace;
import offtape.core.text.Sentences;

/**
 * Writes a WAV file stretch by stretch; cost in memory does not depend on its length. Beyond 4 GiB
 * the file becomes RF64. The header is completed when the writer is closed.
 *
 * <p>Samples are in full-scale units and must be finite. In the integer encodings a sample is
 * rounded to the nearest of the values k / 2^(n−1), halves to the even k, after dither if there is
 * any; magnitudes up to 1 are accepted, and what would round to beyond the largest or smallest
 * value, such as exactly +1, becomes that value; a magnitude above 1 is refused, never clipped.
 * Float takes any magnitude that fits. How the sound is divided into stretches does not change the
 * bytes. Not for use from several threads at once.
 */
public final class WavWriter implements Closeable {

    private static final Sentences SAID = Sentences.near(WavWriter.class);

    private static final int BUFFER_BYTES = 1 << 16;

    private final Path file;
    private final SeekableByteChannel channel;
    private final WavFormat format;
    private final Optional<BroadcastNote> note;
    private final Optional<TpdfDither> dither;
    private final ByteBuffer buffer;
    private long frames;

    WavWriter(
            Path file,
            SeekableByteChannel channel,
            WavFormat format,
            Optional<BroadcastNote> note,
            Optional<TpdfDither> dither) {
        this.file = file;
        this.channel = channel;
        this.format = format;
        this.note = note;
        this.dither = dither;
        int block = Math.max(1, BUFFER_BYTES / format.frameBytes()) * format.frameBytes();
        this.buffer = ByteBuffer.allocate(block).order(ByteOrder.LITTLE_ENDIAN);
    }

    /**
     * Begins a new file, without dither.
     *
     * @throws RefusedOutputException if the file exists or cannot be made
     */
    public static WavWriter create(Path file, WavFormat format) {
        return begin(file, format, Optional.empty(), Optional.empty());
    }

    /**
     * Begins a new Broadcast WAV file, without dither.
     *
     * @param note what the file says of itself; a line for its own format is added to the history
     * @throws RefusedOutputException if the file exists or cannot be made
     */
    public static WavWriter create(Path file, WavFormat format, BroadcastNote note) {
        return begin(file, format, Optional.of(note), Optional.empty());
    }

    /**
     * Begins a new file in an integer encoding, with triangular dither of ±1 quantisation step.
     *
     * @param seed the same seed and the same sound give the same bytes
     * @throws IllegalArgumentException if the encoding is float, which needs no dither
     * @throws RefusedOutputException if the file exists or cannot be made
     */
    public static WavWriter createDithered(Path file, WavFormat format, long seed) {
        if (format.encoding().isFloating()) {
            throw new IllegalArgumentException("float is not dithered");
        }
        return begin(file, format, Optional.empty(), Optional.of(new TpdfDither(seed)));
    }

    private static WavWriter begin(
            Path file,
            WavFormat format,
            Optional<BroadcastNote> note,
            Optional<TpdfDither> dither) {
        try {
            SeekableByteChannel channel =
                    FileChannel.open(file, StandardOpenOption.CREATE_NEW, StandardOpenOption.WRITE);
            WavWriter writer = new WavWriter(file, channel, format, note, dither);
            writer.putHeader();
            return writer;
        } catch (FileAlreadyExistsException e) {
            throw new RefusedOutputException(SAID.say("exists", file), e);
        } catch (IOException e) {
            throw refused(file, e);
        }
    }

    private static RefusedOutputException refused(Path file, IOException trouble) {
        return new RefusedOutputException(
                SAID.say("unwritable", StagedPlace.of(file), DiskTrouble.words(trouble)), trouble);
    }

    /** Number of frames written so far. */
    public long frames() {
        return frames;
    }

    /**
     * Writes one stretch. Nothing of it is written if a sample is refused.
     *
     * @param samples one array a channel, all of one length; not modified
     * @throws IllegalArgumentException if the number of channels or the lengths do not fit, or a
     *     sample is not finite or exceeds what the encoding holds; the message names its place
     * @throws RefusedOutputException if the disk refuses it
     */
    public void write(double[][] samples) {
        requireShape(samples);
        int count = samples[0].length;
        requireRange(samples, count);
        try {
            for (int i = 0; i < count; i++) {
                for (double[] channelSamples : samples) {
                    put(channelSamples[i]);
                }
                if (!buffer.hasRemaining()) {
                    flush();
                }
            }
            frames += count;
        } catch (IOException e) {
            throw refused(file, e);
        }
    }

    private void requireShape(double[][] samples) {
        if (samples.length != format.channels()
                || Arrays.stream(samples).anyMatch(c -> c.length != samples[0].length)) {
            throw new IllegalArgumentException(
                    "expected " + format.channels() + " channels of one length");
        }
    }

    private void requireRange(double[][] samples, int count) {
        double largest = format.encoding().isFloating() ? Float.MAX_VALUE : 1;
        for (int i = 0; i < count; i++) {
            for (int c = 0; c < samples.length; c++) {
                // written so that what is not a number fails too
                if (!(Math.abs(samples[c][i]) <= largest)) {
                    throw new IllegalArgumentException(
                            "sample "
                                    + samples[c][i]
                                    + " at frame "
                                    + (frames + i)
                                    + " in channel "
                                    + (c + 1)
                                    + " does not fit "
                                    + format.encoding());
                }
            }
        }
    }

    private void put(double sample) {
        if (format.encoding().isFloating()) {
            buffer.putFloat((float) sample);
            return;
        }
        int code = code(sample);
        buffer.putShort((short) code);
        if (format.encoding() == WavEncoding.PCM_24) {
            buffer.put((byte) (code >> 16));
        }
    }

    private int code(double sample) {
        double scale = 1 << (format.encoding().bits() - 1);
        double steps = sample * scale + dither.map(TpdfDither::nextSteps).orElse(0.0);
        return (int) Math.max(-scale, Math.min(scale - 1, Math.rint(steps)));
    }

    private void flush() throws IOException {
        buffer.flip();
        writeAll(buffer);
        buffer.clear();
    }

    private void putHeader() throws IOException {
        writeAll(new WavHeader(format, note, frames).bytes());
    }

    private void writeAll(ByteBuffer bytes) throws IOException {
        while (bytes.hasRemaining()) {
            channel.write(bytes);
        }
    }

    /**
     * Makes what was written so far readable, should the process end now: the header is brought up
     * to date, and writing goes on behind.
     *
     * @throws RefusedOutputException if the disk refuses it
     */
    public void checkpoint() {
        try {
            flush();
            long end = channel.position();
            channel.position(0);
            putHeader();
            channel.position(end);
            // so that it outlasts a power cut as well
            if (channel instanceof FileChannel disk) {
                disk.force(false);
            }
        } catch (IOException e) {
            throw refused(file, e);
        }
    }

    /**
     * Completes the file.
     *
     * @throws RefusedOutputException if the disk refuses it
     */
    @Override
    public void close() {
        if (!channel.isOpen()) {
            return;
        }
        try (channel) {
            flush();
            if ((frames * format.frameBytes() & 1) != 0) {
                writeAll(ByteBuffer.allocate(1));
            }
            channel.position(0);
            putHeader();
        } catch (IOException e) {
            throw refused(file, e);
        }
    }
}
