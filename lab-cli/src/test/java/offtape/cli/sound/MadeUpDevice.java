package offtape.cli.sound;

import java.lang.reflect.Proxy;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.stream.Stream;
import javax.sound.sampled.AudioFormat;
import javax.sound.sampled.AudioSystem;
import javax.sound.sampled.DataLine;
import javax.sound.sampled.Line;
import javax.sound.sampled.LineUnavailableException;
import javax.sound.sampled.Mixer;
import javax.sound.sampled.Port;
import javax.sound.sampled.SourceDataLine;
import javax.sound.sampled.TargetDataLine;

/** A device that is not there, with lines that take what it is said to take. */
final class MadeUpDevice {

    private final Mixer.Info info;
    private final List<Class<? extends Line>> kinds;
    private final Set<Integer> channels;
    private final Set<Integer> bits;
    private final Set<Integer> ratesHz;

    /** Why it does not open, or null if it does. */
    String trouble;

    /** All formats with which a line was asked for. */
    final List<AudioFormat> tried = new ArrayList<>();

    /** All lines that were opened. */
    final List<MadeUpLine> opened = new ArrayList<>();

    private MadeUpDevice(
            String name,
            List<Class<? extends Line>> kinds,
            Set<Integer> channels,
            Set<Integer> bits,
            Set<Integer> ratesHz) {
        this.info = new Mixer.Info(name, "nobody", "made up for tests", "1") {};
        this.kinds = kinds;
        this.channels = channels;
        this.bits = bits;
        this.ratesHz = ratesHz;
    }

    /** One for both directions. */
    static MadeUpDevice duplex(
            String name, Set<Integer> channels, Set<Integer> bits, Set<Integer> ratesHz) {
        return new MadeUpDevice(
                name, List.of(SourceDataLine.class, TargetDataLine.class), channels, bits, ratesHz);
    }

    /** One that only records. */
    static MadeUpDevice microphone(
            String name, Set<Integer> channels, Set<Integer> bits, Set<Integer> ratesHz) {
        return new MadeUpDevice(name, List.of(TargetDataLine.class), channels, bits, ratesHz);
    }

    /**
     * Volume controls without sound, as systems list them under nearly the name of their device.
     */
    static MadeUpDevice controls(String name) {
        return new MadeUpDevice(name, List.of(Port.class), Set.of(), Set.of(), Set.of());
    }

    Mixer.Info info() {
        return info;
    }

    /** The only line that is open now. */
    MadeUpLine line(Class<? extends DataLine> kind) {
        List<MadeUpLine> open =
                opened.stream().filter(l -> l.kind() == kind && l.isOpen()).toList();
        if (open.size() != 1) {
            throw new IllegalStateException(open.size() + " lines are open");
        }
        return open.get(0);
    }

    Mixer mixer() {
        return (Mixer)
                Proxy.newProxyInstance(
                        getClass().getClassLoader(),
                        new Class<?>[] {Mixer.class},
                        (self, method, args) ->
                                switch (method.getName()) {
                                    case "getMixerInfo" -> info;
                                    case "getSourceLineInfo" -> infos(SourceDataLine.class);
                                    case "getTargetLineInfo" -> infos(TargetDataLine.class);
                                    case "isLineSupported" -> takes((Line.Info) args[0]);
                                    case "getMaxLines" -> AudioSystem.NOT_SPECIFIED;
                                    case "getLine" -> line((DataLine.Info) args[0]);
                                    default ->
                                            throw new UnsupportedOperationException(
                                                    method.getName());
                                });
    }

    private Line.Info[] infos(Class<? extends Line> kind) {
        return Stream.concat(Stream.of(kind), Stream.of(Port.class))
                .filter(kinds::contains)
                .map(Line.Info::new)
                .toArray(Line.Info[]::new);
    }

    private boolean takes(Line.Info wanted) {
        return wanted instanceof DataLine.Info data
                && kinds.contains(data.getLineClass())
                && takes(data.getFormats()[0]);
    }

    private boolean takes(AudioFormat format) {
        return channels.contains(format.getChannels())
                && bits.contains(format.getSampleSizeInBits())
                && ratesHz.contains((int) format.getSampleRate())
                && !format.isBigEndian();
    }

    /** As Java does it: what is not listed is an illegal argument. */
    private Line line(DataLine.Info wanted) {
        tried.add(wanted.getFormats()[0]);
        if (!takes(wanted)) {
            throw new IllegalArgumentException("Line unsupported: " + wanted);
        }
        return new MadeUpLine(wanted.getLineClass(), this).line();
    }

    void opening(MadeUpLine line) throws LineUnavailableException {
        if (trouble != null) {
            throw new LineUnavailableException(trouble);
        }
        opened.add(line);
    }
}
