package offtape.cli.sound;

import java.util.List;
import javax.sound.sampled.DataLine;
import javax.sound.sampled.Mixer;
import javax.sound.sampled.SourceDataLine;
import javax.sound.sampled.TargetDataLine;

/** The sound layer that every Java machine has. */
public final class JavaSoundLayer implements SoundLayer {

    @Override
    public String name() {
        return "java";
    }

    @Override
    public List<SoundDevice> devices() {
        return JavaDirection.all()
                .map(this::device)
                .filter(d -> d.playback() != null || d.capture() != null)
                .toList();
    }

    private SoundDevice device(Mixer mixer) {
        return new SoundDevice(
                name(),
                mixer.getMixerInfo().getName(),
                mixer.getMixerInfo().getDescription(),
                JavaProbe.side(JavaDirection.PLAYBACK, mixer),
                JavaProbe.side(JavaDirection.CAPTURE, mixer));
    }

    @Override
    public SoundStream open(StreamRequest request) {
        JavaEnd<TargetDataLine> input = end(JavaDirection.CAPTURE, request.input(), request);
        try {
            JavaEnd<SourceDataLine> output = end(JavaDirection.PLAYBACK, request.output(), request);
            return new JavaStream(
                    request.sampleRateHz(),
                    input == null ? output.bits() : input.bits(),
                    output == null ? null : new JavaPlayback(output),
                    input == null ? null : new JavaRecording(input));
        } catch (RuntimeException e) {
            if (input != null) {
                input.line().close();
            }
            throw e;
        }
    }

    private static <L extends DataLine> JavaEnd<L> end(
            JavaDirection<L> direction, StreamRequest.End end, StreamRequest request) {
        return end == null
                ? null
                : JavaEnd.open(direction, end, request.sampleRateHz(), request.bufferSeconds());
    }
}
