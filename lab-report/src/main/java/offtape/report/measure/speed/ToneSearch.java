package offtape.report.measure.speed;

import java.util.List;
import offtape.core.audio.AudioSource;

/**
 * Finds the steady tones in a recording: block by block the strongest line and its share of the
 * power, then the runs of blocks in which one line rules.
 *
 * @param tones steady tones of a second or more, in order of time
 * @param pairs stretches of a second or more in which two tones sound at once
 */
record ToneSearch(List<FoundTone> tones, List<FoundTone> pairs) {

    private static final double BLOCK_S = 0.1;

    /** Searches a stretch; memory does not grow with its length. */
    static ToneSearch in(AudioSource source, double fromSeconds, double toSeconds) {
        int rate = source.sampleRateHz();
        double end = Math.min(toSeconds, (double) source.frames() / rate);
        int size = Integer.highestOneBit((int) (BLOCK_S * rate));
        ToneBlock.Reader reader = new ToneBlock.Reader(source, size);
        ToneRuns tones = new ToneRuns(fromSeconds, BLOCK_S);
        ToneRuns pairs = new ToneRuns(fromSeconds, BLOCK_S);
        long count = (long) Math.max(0, (end - fromSeconds) / BLOCK_S + 1e-9);
        for (long b = 0; b < count; b++) {
            ToneBlock block = reader.at(Math.round((fromSeconds + b * BLOCK_S) * rate));
            tones.next(b, block, block.isTone());
            pairs.next(b, block, block.isPair());
        }
        return new ToneSearch(tones.found(), pairs.found());
    }
}
