package offtape.report.apply.listen;

import offtape.core.align.Alignment;

/**
 * How B lay in time before it was brought to A.
 *
 * @param delayFrames by how much B was late at A's first frame, frames; negative if early
 * @param delayMs the same in milliseconds
 * @param fastPpm by how much B ran fast, parts in a million
 * @param partOffFrames by how much B was later in the part than that says, at its beginning,
 *     frames; 0 if the line through the whole holds there
 * @param partFastPpm by how much B ran fast in the part, parts in a million
 * @param polarity normal, inverted, or mixed if the channels differ
 * @param isPolarityTurned whether B was turned over
 */
public record ListenTime(
        double delayFrames,
        double delayMs,
        double fastPpm,
        double partOffFrames,
        double partFastPpm,
        String polarity,
        boolean isPolarityTurned) {

    static ListenTime of(AlignedPair pair, Part part) {
        Alignment found = pair.found().orElseThrow();
        Alignment used = pair.used().orElseThrow();
        double off =
                used.startFrame()
                        - found.startFrame()
                        + (used.step() - found.step()) * part.fromFrame();
        long inverted = found.gains().stream().filter(g -> g < 0).count();
        String polarity =
                inverted == 0 ? "normal" : inverted == found.gains().size() ? "inverted" : "mixed";
        return new ListenTime(
                found.startFrame(),
                1000 * found.startFrame() / pair.a().sampleRateHz(),
                found.fastPpm(),
                off,
                used.fastPpm(),
                polarity,
                pair.isTurned());
    }
}
