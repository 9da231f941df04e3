package offtape.cli.sound;

import java.util.Arrays;
import java.util.List;
import java.util.function.Function;
import java.util.stream.Stream;
import javax.sound.sampled.AudioFormat;
import javax.sound.sampled.AudioSystem;
import javax.sound.sampled.DataLine;
import javax.sound.sampled.Line;
import javax.sound.sampled.LineUnavailableException;
import javax.sound.sampled.Mixer;
import javax.sound.sampled.SourceDataLine;
import javax.sound.sampled.TargetDataLine;
import offtape.core.text.Sentences;

/**
 * One of the two directions of Java's own sound layer: its devices, and how their lines are opened.
 *
 * @param <L> the kind of line
 */
final class JavaDirection<L extends DataLine> {

    private static final Sentences SAID = Sentences.near(JavaDirection.class);

    /** From here to a device. */
    static final JavaDirection<SourceDataLine> PLAYBACK =
            new JavaDirection<>(
                    SourceDataLine.class,
                    "output",
                    "plays",
                    Mixer::getSourceLineInfo,
                    (line, format, bytes) -> line.open(format, bytes));

    /** From a device to here. */
    static final JavaDirection<TargetDataLine> CAPTURE =
            new JavaDirection<>(
                    TargetDataLine.class,
                    "input",
                    "records",
                    Mixer::getTargetLineInfo,
                    (line, format, bytes) -> line.open(format, bytes));

    private interface Opening<L> {
        void open(L line, AudioFormat format, int bufferBytes) throws LineUnavailableException;
    }

    private final Class<L> kind;
    private final String noun;
    private final String verb;
    private final Function<Mixer, Line.Info[]> lines;
    private final Opening<L> opening;

    private JavaDirection(
            Class<L> kind,
            String noun,
            String verb,
            Function<Mixer, Line.Info[]> lines,
            Opening<L> opening) {
        this.kind = kind;
        this.noun = noun;
        this.verb = verb;
        this.lines = lines;
        this.opening = opening;
    }

    /** Whether a device has it. */
    boolean isOf(Mixer device) {
        return Arrays.stream(lines.apply(device))
                .anyMatch(l -> kind.isAssignableFrom(l.getLineClass()));
    }

    /**
     * All devices that have it; not, for instance, the volume controls that bear the same names.
     */
    List<Mixer> devices() {
        return all().filter(this::isOf).toList();
    }

    /** All devices that Java knows, in its order. Looking them up takes a moment. */
    static Stream<Mixer> all() {
        return Arrays.stream(AudioSystem.getMixerInfo()).flatMap(JavaDirection::there);
    }

    private static Stream<Mixer> there(Mixer.Info info) {
        try {
            return Stream.of(AudioSystem.getMixer(info));
        } catch (IllegalArgumentException | SecurityException e) {
            // it went away after it was listed, or is none of this user's
            return Stream.empty();
        }
    }

    /**
     * The device of a name, or the only one that has it as a part of its name.
     *
     * @throws SoundTroubleException if there is none, or more than one
     */
    Mixer device(String name) {
        return new DeviceChoice(devices(), verb).named(name);
    }

    /** What a device is called at the start of a sentence; null is the system's own choice. */
    String shown(String device) {
        return device == null ? SAID.say("own-" + noun) : SAID.say("named-" + noun, device);
    }

    /** As in "a device that plays". */
    String verb() {
        return verb;
    }

    /**
     * Opens a line of a device.
     *
     * @param device null for the system's own choice
     * @throws LineUnavailableException if the device is busy or has no such line
     */
    L open(Mixer device, AudioFormat format, double bufferSeconds) throws LineUnavailableException {
        DataLine.Info info = new DataLine.Info(kind, format);
        int bytes = (int) Math.round(bufferSeconds * format.getFrameRate()) * format.getFrameSize();
        try {
            L line = kind.cast(device == null ? AudioSystem.getLine(info) : device.getLine(info));
            opening.open(line, format, bytes);
            return line;
        } catch (IllegalArgumentException | SecurityException e) {
            // what is not there is told by this exception as well, depending on the system
            LineUnavailableException none = new LineUnavailableException(e.getMessage());
            none.initCause(e);
            throw none;
        }
    }

    /** Linear integers, little-endian. */
    static AudioFormat format(int rateHz, int bits, int channels) {
        return new AudioFormat(
                AudioFormat.Encoding.PCM_SIGNED,
                rateHz,
                bits,
                channels,
                channels * bits / 8,
                rateHz,
                false);
    }
}
