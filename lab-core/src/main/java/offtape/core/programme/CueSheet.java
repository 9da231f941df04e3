package offtape.core.programme;

import java.util.List;
import java.util.stream.DoubleStream;
import java.util.stream.Stream;

/**
 * What a test programme holds and where.
 *
 * @param sampleRateHz frames per second
 * @param frames length of the programme in frames
 * @param referenceDbfs level of a sine at reference level, dB re a full-scale sine, 0 or less
 * @param tapeSpeedMmPerS nominal tape speed it was made for, or null if not stated
 * @param cues the parts, in order of their start
 */
public record CueSheet(
        int sampleRateHz,
        long frames,
        double referenceDbfs,
        Double tapeSpeedMmPerS,
        List<Cue> cues) {

    /** Copies the list so that the sheet cannot change. */
    public CueSheet {
        cues = List.copyOf(cues);
    }

    /** All cues of one kind, in order. */
    public <T extends Cue> Stream<T> cues(Class<T> kind) {
        return cues.stream().filter(kind::isInstance).map(kind::cast);
    }

    /** Peak of a sine at a level re reference, in full-scale units. */
    public double peakOf(double levelDb) {
        return Math.pow(10, (referenceDbfs + levelDb) / 20);
    }

    /** Highest level of its tones, sweeps and ladders, dB re reference. */
    public double loudestDb() {
        return cues.stream()
                .flatMapToDouble(CueSheet::levelsDb)
                .max()
                .orElse(Double.NEGATIVE_INFINITY);
    }

    private static DoubleStream levelsDb(Cue cue) {
        if (cue instanceof Cue.Tone tone) {
            return DoubleStream.of(tone.levelDb());
        }
        if (cue instanceof Cue.Sweep sweep) {
            return DoubleStream.of(sweep.levelDb());
        }
        if (cue instanceof Cue.Ladder ladder) {
            return ladder.steps().stream().mapToDouble(Cue.Step::levelDb);
        }
        return DoubleStream.empty();
    }

    /** Seconds of a number of frames. */
    public double seconds(long frameCount) {
        return (double) frameCount / sampleRateHz;
    }
}
