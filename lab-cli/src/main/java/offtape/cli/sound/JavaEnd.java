package offtape.cli.sound;

import java.util.stream.IntStream;
import javax.sound.sampled.AudioFormat;
import javax.sound.sampled.DataLine;
import javax.sound.sampled.LineUnavailableException;
import javax.sound.sampled.Mixer;
import offtape.core.text.Sentences;

/**
 * One end of a stream, open.
 *
 * @param line the device's line
 * @param coding how its frames hold the channels that were asked for
 * @param name what the device is called at the start of a sentence
 * @param <L> the kind of line
 */
record JavaEnd<L extends DataLine>(L line, FrameCoding coding, String name) {

    private static final Sentences SAID = Sentences.near(JavaEnd.class);

    /** Tried in this order: 24 bits hold everything a converter gives. */
    private static final int[] BITS = {24, 32, 16};

    /** Some devices open with all of their channels only. */
    private static final int[] WIDTHS = {2, 4, 6, 8, 10, 12, 16, 18, 24, 32};

    /**
     * Opens it in the first format that the device takes.
     *
     * @throws SoundTroubleException if the device is not there, is busy, or takes none
     */
    static <L extends DataLine> JavaEnd<L> open(
            JavaDirection<L> direction, StreamRequest.End end, int rateHz, double bufferSeconds) {
        Mixer device = end.device() == null ? null : direction.device(end.device());
        String name = direction.shown(end.device());
        LineUnavailableException first = null;
        for (int bits : BITS) {
            for (int width : widths(end.channels().width())) {
                AudioFormat format = JavaDirection.format(rateHz, bits, width);
                try {
                    L line = direction.open(device, format, bufferSeconds);
                    return new JavaEnd<>(line, new FrameCoding(bits, width, end.channels()), name);
                } catch (LineUnavailableException e) {
                    first = first == null ? e : first;
                }
            }
        }
        throw new SoundTroubleException(
                direction.devices().isEmpty()
                        ? none(direction)
                        : refused(name, rateHz, end.channels()),
                first);
    }

    // two first, even for one: systems mix a pair down to a single channel, or spread it
    private static int[] widths(int needed) {
        IntStream narrow = needed == 1 ? IntStream.of(2, 1) : IntStream.of(needed);
        int from = Math.max(2, needed);
        return IntStream.concat(narrow, IntStream.of(WIDTHS).filter(w -> w > from)).toArray();
    }

    private static String none(JavaDirection<?> direction) {
        return SAID.say("no-device-at-all", direction.verb());
    }

    private static String refused(String name, int rateHz, ChannelPair channels) {
        return SAID.say(
                channels.numbers().size() == 1 ? "not-open-channel" : "not-open-channels",
                name,
                rateHz,
                channels);
    }

    /** Width of its samples. */
    int bits() {
        return line.getFormat().getSampleSizeInBits();
    }
}
