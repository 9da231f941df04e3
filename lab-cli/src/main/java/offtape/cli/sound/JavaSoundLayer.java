package offtape.cli.sound;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import javax.sound.sampled.AudioFormat;
import javax.sound.sampled.AudioSystem;
import javax.sound.sampled.LineUnavailableException;
import javax.sound.sampled.Mixer;
import javax.sound.sampled.SourceDataLine;
import javax.sound.sampled.TargetDataLine;

/** The sound layer that every Java machine has. */
public final class JavaSoundLayer implements SoundLayer {

    /** Tried in this order: 24 bits hold everything a converter gives. */
    private static final int[] BITS = {24, 32, 16};

    @Override
    public String name() {
        return "java";
    }

    @Override
    public List<SoundDevice> devices() {
        List<SoundDevice> devices = new ArrayList<>();
        for (Mixer.Info info : AudioSystem.getMixerInfo()) {
            DeviceSide playback = JavaProbe.playback(info);
            DeviceSide capture = JavaProbe.capture(info);
            if (playback != null || capture != null) {
                devices.add(
                        new SoundDevice(
                                name(), info.getName(), info.getDescription(), playback, capture));
            }
        }
        return devices;
    }

    @Override
    public SoundStream open(StreamRequest request) {
        LineUnavailableException first = null;
        for (int bits : BITS) {
            try {
                return open(request, bits);
            } catch (LineUnavailableException e) {
                first = first == null ? e : first;
            }
        }
        throw refused(request, first);
    }

    private SoundStream open(StreamRequest request, int bits) throws LineUnavailableException {
        JavaRecording recording = null;
        if (request.input() != null) {
            recording = recording(request, bits);
        }
        try {
            JavaPlayback playback = request.output() == null ? null : playback(request, bits);
            return new JavaStream(request.sampleRateHz(), bits, playback, recording);
        } catch (LineUnavailableException | RuntimeException e) {
            if (recording != null) {
                recording.close();
            }
            throw e;
        }
    }

    private static JavaPlayback playback(StreamRequest request, int bits)
            throws LineUnavailableException {
        StreamRequest.End end = request.output();
        int width = Math.max(2, end.channels().width());
        AudioFormat format = JavaLine.format(request.sampleRateHz(), bits, width);
        SourceDataLine line = JavaLine.line(SourceDataLine.class, mixer(end.device()), format);
        openLine(() -> line.open(format, bufferBytes(request, format)));
        return new JavaPlayback(
                line, new FrameCoding(bits, width, end.channels()), shown(end.device()));
    }

    private static JavaRecording recording(StreamRequest request, int bits)
            throws LineUnavailableException {
        StreamRequest.End end = request.input();
        int width = Math.max(2, end.channels().width());
        AudioFormat format = JavaLine.format(request.sampleRateHz(), bits, width);
        TargetDataLine line = JavaLine.line(TargetDataLine.class, mixer(end.device()), format);
        openLine(() -> line.open(format, bufferBytes(request, format)));
        return new JavaRecording(
                line, new FrameCoding(bits, width, end.channels()), shown(end.device()));
    }

    private static int bufferBytes(StreamRequest request, AudioFormat format) {
        return (int) Math.round(request.bufferSeconds() * request.sampleRateHz())
                * format.getFrameSize();
    }

    private interface Opening {
        void run() throws LineUnavailableException;
    }

    private static void openLine(Opening opening) throws LineUnavailableException {
        try {
            opening.run();
        } catch (IllegalArgumentException | SecurityException e) {
            LineUnavailableException none = new LineUnavailableException(e.getMessage());
            none.initCause(e);
            throw none;
        }
    }

    /**
     * The device of a name: exactly so, else the only one whose name begins or goes on like it,
     * since some systems cut names.
     */
    private static Mixer.Info mixer(String name) {
        if (name == null) {
            return null;
        }
        List<Mixer.Info> all = Arrays.asList(AudioSystem.getMixerInfo());
        return all.stream()
                .filter(m -> m.getName().equals(name))
                .findFirst()
                .orElseGet(() -> nearly(all, name));
    }

    private static Mixer.Info nearly(List<Mixer.Info> all, String name) {
        String wanted = name.toLowerCase(Locale.ROOT);
        List<Mixer.Info> like =
                all.stream()
                        .filter(m -> m.getName().toLowerCase(Locale.ROOT).contains(wanted))
                        .toList();
        if (like.size() == 1) {
            return like.get(0);
        }
        throw new SoundTroubleException(
                (like.isEmpty()
                                ? "There is no sound device \"" + name + "\"."
                                : "\"" + name + "\" fits more than one sound device.")
                        + " \"offtape devices\" lists them by name.");
    }

    private static String shown(String device) {
        return device == null ? "of the system" : "\"" + device + "\"";
    }

    private static SoundTroubleException refused(
            StreamRequest request, LineUnavailableException e) {
        return new SoundTroubleException(
                String.format(
                        Locale.ROOT,
                        "The sound devices do not open at %d Hz with channels %s: %s. Close other"
                                + " programs that use them, or choose a rate and channels that"
                                + " \"offtape devices\" lists.",
                        request.sampleRateHz(),
                        channels(request),
                        e.getMessage()),
                e);
    }

    private static String channels(StreamRequest request) {
        StringBuilder text = new StringBuilder();
        if (request.output() != null) {
            text.append(request.output().channels()).append(" out");
        }
        if (request.input() != null) {
            text.append(text.isEmpty() ? "" : " and ");
            text.append(request.input().channels()).append(" in");
        }
        return text.toString();
    }
}
