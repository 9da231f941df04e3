package offtape.report.measure.tone;

import java.util.List;
import offtape.core.audio.AudioSource;

/**
 * Finds the steady tones in a recording: block by block the strongest line and its share of the
 * power, then the runs of blocks in which one line rules.
 *
 * @param tones steady tones, in order of time
 * @param pairs stretches in which two tones sound at once
 */
public record ToneSearch(List<FoundTone> tones, List<FoundTone> pairs) {

    /** Distance of the blocks. */
    private static final double STEP_S = 0.1;

    /** Searches a stretch; memory does not grow with its length. */
    public static ToneSearch in(
            AudioSource source, ToneRange range, double fromSeconds, double toSeconds) {
        int rate = source.sampleRateHz();
        double end = Math.min(toSeconds, (double) source.frames() / rate);
        BlockReader reader = new BlockReader(source, range);
        reader.listen(fromSeconds, end);
        ToneRuns tones = new ToneRuns(fromSeconds, STEP_S, range);
        ToneRuns pairs = new ToneRuns(fromSeconds, STEP_S, range);
        long count = (long) Math.max(0, (end - fromSeconds) / STEP_S + 1e-9);
        for (long b = 0; b < count; b++) {
            ToneBlock block = reader.at(Math.round((fromSeconds + b * STEP_S) * rate));
            tones.next(b, block, block.isTone(range));
            pairs.next(b, block, block.isPair(range));
        }
        return new ToneSearch(tones.found(), pairs.found());
    }
}
