package offtape.report.measure.tone;

import java.util.List;
import offtape.core.audio.AudioSource;
import offtape.core.fault.Background;

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

    /** So many blocks are read side by side and held. */
    private static final int AT_ONCE = 256;

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
        for (long first = 0; first < count; first += AT_ONCE) {
            ToneBlock[] blocks = new ToneBlock[(int) Math.min(AT_ONCE, count - first)];
            long start = first;
            Background.range(
                    0,
                    blocks.length,
                    i ->
                            blocks[i] =
                                    reader.at(
                                            Math.round(
                                                    (fromSeconds + (start + i) * STEP_S) * rate)));
            for (int i = 0; i < blocks.length; i++) {
                tones.next(first + i, blocks[i], blocks[i].isTone(range));
                pairs.next(first + i, blocks[i], blocks[i].isPair(range));
            }
        }
        return new ToneSearch(tones.found(), pairs.found());
    }
}
