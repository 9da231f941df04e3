package offtape.cli.sound;

import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.IntPredicate;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import javax.sound.sampled.AudioFormat;
import javax.sound.sampled.DataLine;
import javax.sound.sampled.LineUnavailableException;
import javax.sound.sampled.Mixer;
import offtape.core.text.Sentences;

/** Finds out by opening it what one direction of a device takes. */
final class JavaProbe {

    private static final Sentences SAID = Sentences.near(JavaProbe.class);

    private static final int[] CHANNELS = {32, 24, 18, 16, 12, 10, 8, 6, 4, 2, 1};
    private static final int[] RATES_HZ = {44_100, 48_000, 88_200, 96_000, 176_400, 192_000};
    private static final int[] BITS = {16, 24, 32};
    private static final int[] USUAL_RATES_HZ = {48_000, 44_100, 96_000};

    private final JavaDirection<?> direction;
    private final Mixer device;
    private final Set<String> troubles = new TreeSet<>();

    private JavaProbe(JavaDirection<?> direction, Mixer device) {
        this.direction = direction;
        this.device = device;
    }

    /** What one direction of a device takes, or null if the device does not have it. */
    static DeviceSide side(JavaDirection<?> direction, Mixer device) {
        return direction.isOf(device) ? new JavaProbe(direction, device).side() : null;
    }

    private boolean opens(int rateHz, int bits, int channels) {
        AudioFormat format = JavaDirection.format(rateHz, bits, channels);
        try (DataLine line = direction.open(device, format, StreamRequest.USUAL_BUFFER_S)) {
            return line.isOpen();
        } catch (LineUnavailableException e) {
            troubles.add(String.valueOf(e.getMessage()).toLowerCase(Locale.ROOT));
            return false;
        }
    }

    private DeviceSide side() {
        for (int rateHz : USUAL_RATES_HZ) {
            for (int bits : BITS) {
                for (int channels : CHANNELS) {
                    if (opens(rateHz, bits, channels)) {
                        return side(rateHz, bits, channels);
                    }
                }
            }
        }
        return new DeviceSide(0, List.of(), List.of(), hint());
    }

    private DeviceSide side(int rateHz, int bits, int channels) {
        int few = Math.min(2, channels);
        return new DeviceSide(
                channels,
                those(RATES_HZ, r -> opens(r, bits, few) || opens(r, bits, channels)),
                those(BITS, b -> opens(rateHz, b, few) || opens(rateHz, b, channels)),
                null);
    }

    private static List<Integer> those(int[] values, IntPredicate open) {
        return IntStream.of(values).filter(open).boxed().toList();
    }

    private String hint() {
        if (isSaid("busy", "in use")) {
            return SAID.say("busy");
        }
        if (isSaid("permission", "denied", "access")) {
            return SAID.say("no-permission");
        }
        return SAID.say("does-not-open");
    }

    // most formats are refused for other reasons than the one that matters
    private boolean isSaid(String... words) {
        return troubles.stream().anyMatch(t -> Stream.of(words).anyMatch(t::contains));
    }
}
