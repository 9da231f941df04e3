package offtape.cli.sound;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import javax.sound.sampled.AudioFormat;
import javax.sound.sampled.AudioSystem;
import javax.sound.sampled.DataLine;
import javax.sound.sampled.Line;
import javax.sound.sampled.LineUnavailableException;
import javax.sound.sampled.Mixer;
import javax.sound.sampled.SourceDataLine;
import javax.sound.sampled.TargetDataLine;

/** Finds out by opening it what one direction of a device takes. */
final class JavaProbe {

    private static final int[] CHANNELS = {32, 24, 18, 16, 12, 10, 8, 6, 4, 2, 1};
    private static final int[] RATES_HZ = {44_100, 48_000, 88_200, 96_000, 176_400, 192_000};
    private static final int[] BITS = {16, 24, 32};
    private static final int[] USUAL_RATES_HZ = {48_000, 44_100, 96_000};

    private interface Trial {
        void open(AudioFormat format) throws LineUnavailableException;
    }

    private final Trial trial;
    private String trouble = "";

    private JavaProbe(Trial trial) {
        this.trial = trial;
    }

    /** What a device plays, or null if it is none for playing. */
    static DeviceSide playback(Mixer.Info mixer) {
        if (!has(mixer, SourceDataLine.class)) {
            return null;
        }
        return new JavaProbe(
                        format -> {
                            try (SourceDataLine line =
                                    JavaLine.line(SourceDataLine.class, mixer, format)) {
                                line.open(format);
                            }
                        })
                .side();
    }

    /** What a device records, or null if it is none for recording. */
    static DeviceSide capture(Mixer.Info mixer) {
        if (!has(mixer, TargetDataLine.class)) {
            return null;
        }
        return new JavaProbe(
                        format -> {
                            try (TargetDataLine line =
                                    JavaLine.line(TargetDataLine.class, mixer, format)) {
                                line.open(format);
                            }
                        })
                .side();
    }

    private static boolean has(Mixer.Info info, Class<? extends DataLine> kind) {
        try {
            Mixer mixer = AudioSystem.getMixer(info);
            Line.Info[] lines =
                    kind == SourceDataLine.class
                            ? mixer.getSourceLineInfo()
                            : mixer.getTargetLineInfo();
            return Arrays.stream(lines).anyMatch(l -> kind.isAssignableFrom(l.getLineClass()));
        } catch (IllegalArgumentException | SecurityException e) {
            // the device went away after it was listed
            return false;
        }
    }

    private boolean opens(int rateHz, int bits, int channels) {
        try {
            trial.open(JavaLine.format(rateHz, bits, channels));
            return true;
        } catch (LineUnavailableException | IllegalArgumentException | SecurityException e) {
            trouble = e.getMessage() == null ? trouble : e.getMessage();
            return false;
        }
    }

    private DeviceSide side() {
        for (int rateHz : USUAL_RATES_HZ) {
            for (int channels : CHANNELS) {
                if (opens(rateHz, 16, channels)) {
                    return side(channels, rateHz);
                }
            }
        }
        return new DeviceSide(0, List.of(), List.of(), hint());
    }

    private DeviceSide side(int channels, int rateHz) {
        int few = Math.min(2, channels);
        List<Integer> rates = new ArrayList<>();
        for (int rate : RATES_HZ) {
            if (opens(rate, 16, few)) {
                rates.add(rate);
            }
        }
        List<Integer> bits = new ArrayList<>();
        for (int b : BITS) {
            if (opens(rateHz, b, few)) {
                bits.add(b);
            }
        }
        return new DeviceSide(channels, rates, bits, null);
    }

    private String hint() {
        String said = trouble.toLowerCase(Locale.ROOT);
        if (said.contains("busy") || said.contains("in use")) {
            return "busy: another program has it; close that program";
        }
        if (said.contains("permission") || said.contains("denied") || said.contains("access")) {
            return "no permission: allow this terminal the use of sound devices (on Linux be in the"
                    + " group audio)";
        }
        return "does not open: another program may have it, or this user may not use it";
    }
}
