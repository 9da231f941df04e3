package offtape.core.machine;

import com.fasterxml.jackson.annotation.JsonPropertyOrder;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.json.JsonMapper;
import java.util.List;
import java.util.stream.DoubleStream;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import offtape.core.json.BoundedJson;
import offtape.core.json.JsonLayout;

/**
 * The truth about a return: what every measurement of it should find. Members are null where a
 * thing is not there. Left and right are the inputs of the recording: where the two are exchanged
 * on the way, what is told of the left is that of the machine's right channel. What poor erasure
 * leaves of an earlier recording is not in it.
 *
 * @param format always {@link #FORMAT}
 * @param version always {@link #VERSION}
 * @param mode capture mode
 * @param returnSampleRate frames a second of the return
 * @param returnFrames length of the return
 * @param referenceDbfs level of a sine at reference in the programme
 * @param referenceReturnDbfs level of the returned reference tone (1 kHz at 0 dB), left and right
 * @param response one entry a channel
 * @param distortion per channel, tones of 315 Hz, 1 kHz and 10 kHz
 * @param noise one entry a channel
 */
@JsonPropertyOrder({"format", "version"})
public record MachineTruth(
        String format,
        int version,
        String mode,
        int returnSampleRate,
        long returnFrames,
        double tapeSpeedMmPerS,
        double referenceDbfs,
        List<Double> referenceReturnDbfs,
        TimingTruth timing,
        SpeedTruth speed,
        List<ResponseTruth> response,
        List<DistortionTruth> distortion,
        List<NoiseTruth> noise,
        ChannelsTruth channels,
        List<DropoutTruth> dropouts,
        TimeMapTruth timeMap) {

    /** The value of {@code format}. */
    public static final String FORMAT = "offtape-machine-truth";

    /** The version written here. */
    public static final int VERSION = 1;

    private static final List<String> NAMES = List.of("left", "right");
    private static final double[] LADDERS_HZ = {315, 1000, 10_000};

    static MachineTruth of(MachineRun run) {
        List<SteadyTone> tones = List.of(run.tone(0), run.tone(1));
        return new MachineTruth(
                FORMAT,
                VERSION,
                run.spec().mode().key(),
                run.sampleRateHz(),
                run.frames(),
                run.spec().tapeSpeedMmPerS(),
                20 * Math.log10(run.referencePeak()),
                tones.stream().map(t -> 20 * Math.log10(t.referenceReturnPeak())).toList(),
                TimingTruth.of(run),
                SpeedTruth.of(run.spec(), run.timeMap()),
                IntStream.range(0, 2)
                        .mapToObj(c -> ResponseTruth.of(NAMES.get(c), tones.get(c)))
                        .toList(),
                IntStream.range(0, 2).boxed().flatMap(c -> distortion(c, tones.get(c))).toList(),
                IntStream.range(0, 2)
                        .mapToObj(c -> NoiseTruth.of(NAMES.get(c), run, c, tones.get(c)))
                        .toList(),
                ChannelsTruth.of(run, tones.get(0), tones.get(1)),
                DropoutTruth.of(run),
                TimeMapTruth.of(run.timeMap()));
    }

    /** The truth as JSON, ending with a line feed. */
    public String toJson() {
        try {
            // nothing is read by it
            JsonMapper mapper = BoundedJson.mapper(0).build();
            return mapper.writer(JsonLayout.objects()).writeValueAsString(this) + "\n";
        } catch (JsonProcessingException e) {
            throw new IllegalStateException("the truth could not be written", e);
        }
    }

    private static Stream<DistortionTruth> distortion(int channel, SteadyTone tone) {
        return DoubleStream.of(LADDERS_HZ)
                .filter(f -> f < 0.92 * tone.bandHz())
                .mapToObj(f -> DistortionTruth.of(NAMES.get(channel), tone, f));
    }
}
