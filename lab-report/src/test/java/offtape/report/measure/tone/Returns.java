package offtape.report.measure.tone;

import java.util.Arrays;
import java.util.List;
import java.util.function.DoubleUnaryOperator;
import java.util.stream.IntStream;
import offtape.core.audio.MemoryAudio;
import offtape.core.programme.ChannelSet;
import offtape.core.programme.Cue;
import offtape.core.programme.CueSheet;
import offtape.core.programme.Programme;
import offtape.report.locate.Location;
import offtape.report.locate.ProgrammeReturn;
import offtape.report.locate.TimeMap;

/** Returns of steady tones, written by formula at 8 kHz, that lie where the programme does. */
final class Returns {

    static final int RATE = 8000;

    private Returns() {}

    /** A tone cue; times in seconds. */
    static Cue.Tone tone(double from, double seconds, double hz, double levelDb) {
        return new Cue.Tone(
                "tone-" + from,
                ChannelSet.BOTH,
                Math.round(from * RATE),
                Math.round(seconds * RATE),
                hz,
                levelDb);
    }

    static double[] sound(double seconds, DoubleUnaryOperator x) {
        return IntStream.range(0, (int) Math.round(seconds * RATE))
                .mapToDouble(i -> x.applyAsDouble((double) i / RATE))
                .toArray();
    }

    /**
     * A return that holds the whole programme.
     *
     * @param signs for each channel +1 upright, −1 inverted, 0 not heard
     */
    static ProgrammeReturn of(
            List<Cue> cues, double[] programme, List<Integer> signs, double[]... channels) {
        double seconds = (double) programme.length / RATE;
        Location location =
                new Location(
                        TimeMap.straight(0, 1, seconds),
                        seconds,
                        0,
                        0,
                        signs,
                        true,
                        true,
                        0,
                        seconds,
                        List.of());
        return new ProgrammeReturn(
                new Programme(
                        new CueSheet(RATE, programme.length, -20, null, cues),
                        new MemoryAudio("programme", RATE, programme)),
                new MemoryAudio("return", RATE, channels),
                location);
    }

    /** A return in which all cues sound as they do in the programme; what they are is not asked. */
    static ProgrammeReturn of(List<Cue> cues, double[]... channels) {
        Integer[] signs = new Integer[channels.length];
        Arrays.fill(signs, 1);
        return of(cues, new double[channels[0].length], List.of(signs), channels);
    }
}
