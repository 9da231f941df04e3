package offtape.core.audio;

import java.nio.ByteBuffer;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import offtape.core.fault.UnusableInputException;
import offtape.core.text.Sentences;

/**
 * An audio file open for reading, whatever its kind. Opened by {@link AudioFiles#open}.
 *
 * <p>Every read takes just the stretch it asks for from the file, through a buffer of 64 KiB: cost
 * in memory does not depend on the file's length. Reading from several threads at once is safe.
 */
public final class AudioFile implements AudioSource {

    private static final Sentences SAID = Sentences.near(AudioFile.class);

    private static final int BUFFER_BYTES = 1 << 16;

    private final Path path;
    private final FileBytes file;
    private final SoundFormat format;
    private final long dataStart;
    private final long frames;
    private final List<String> notes;
    private final Optional<BroadcastNote> said;

    /**
     * Sound that lies plainly in a file.
     *
     * @param path what the user named
     * @param file where its samples are; this object's from now on
     * @param dataStart where the first of them is, in bytes
     * @param said what the file says of itself
     */
    AudioFile(
            Path path,
            FileBytes file,
            SoundFormat format,
            long dataStart,
            long frames,
            List<String> notes,
            Optional<BroadcastNote> said) {
        this.path = path;
        this.file = file;
        this.format = format;
        this.dataStart = dataStart;
        this.frames = frames;
        this.notes = List.copyOf(notes);
        this.said = said;
    }

    /** Sound in a chunk of a file. */
    static AudioFile in(
            FileBytes file, SoundPlace sound, SoundFormat format, Optional<BroadcastNote> said) {
        DataExtent extent = new DataExtent(file, sound, format);
        return new AudioFile(
                file.path(), file, format, sound.start(), extent.frames(), extent.notes(), said);
    }

    /**
     * What a file is to say of itself that holds what came of this sound and lies where it lies in
     * its project: place and history are this one's, if it tells them.
     *
     * @param description what the other file holds
     */
    public BroadcastNote describing(String description) {
        return said.map(note -> note.describing(description))
                .orElseGet(() -> BroadcastNote.of(description));
    }

    /**
     * What does not agree in the file though it can be used, as after a recorder that crashed.
     *
     * @return plain clauses without a capital and a full stop, none if all is well
     */
    public List<String> notes() {
        return notes;
    }

    @Override
    public int sampleRateHz() {
        return format.sampleRateHz();
    }

    @Override
    public int channels() {
        return format.channels();
    }

    @Override
    public long frames() {
        return frames;
    }

    /**
     * {@inheritDoc}
     *
     * @throws UnusableInputException also if a float sample is not a finite number
     */
    @Override
    public double[][] read(long startFrame, int count) {
        double[][] out = new double[channels()][count];
        long from = Math.max(0, startFrame);
        // of two ends the nearer one, without the sum running over
        long to = startFrame > frames - count ? frames : startFrame + count;
        int frameBytes = format.frameBytes();
        int block = Math.max(1, BUFFER_BYTES / frameBytes);
        byte[] bytes = new byte[(int) Math.min(block, Math.max(0, to - from)) * frameBytes];
        for (long at = from; at < to; at += block) {
            int n = (int) Math.min(block, to - at);
            file.fill(
                    ByteBuffer.wrap(bytes, 0, n * frameBytes).slice(), dataStart + at * frameBytes);
            int offset = (int) (at - startFrame);
            for (int c = 0; c < out.length; c++) {
                int first = c * format.coding().bytes();
                format.coding().decode(bytes, first, frameBytes, out[c], offset, n);
            }
            requireFinite(out, offset, n, at);
        }
        return out;
    }

    private void requireFinite(double[][] out, int offset, int n, long frame) {
        if (!format.coding().isFloating()) {
            return;
        }
        for (int i = 0; i < n; i++) {
            for (int c = 0; c < out.length; c++) {
                if (!Double.isFinite(out[c][offset + i])) {
                    throw notFinite(frame + i, c);
                }
            }
        }
    }

    private UnusableInputException notFinite(long frame, int channel) {
        return new UnusableInputException(
                SAID.say("not-finite", path, (double) frame / sampleRateHz(), channel + 1));
    }

    @Override
    public String name() {
        return String.valueOf(path.getFileName());
    }

    @Override
    public void close() {
        file.close();
    }
}
