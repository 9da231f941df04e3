package offtape.core.realign;

import java.util.List;
import java.util.OptionalDouble;
import offtape.core.align.Alignment;
import offtape.core.align.StraightenedSound;
import offtape.core.audio.AudioSource;

/**
 * A return that was found.
 *
 * @param alignment where it lies on the whole: the line of mean delay and speed; a difference that
 *     is below three standard uncertainties is none
 * @param delayDoubtFrames standard uncertainty of the delay, frames
 * @param measuredPpm by how much it came back fast, parts in a million, as measured
 * @param ppmDoubt standard uncertainty of that
 * @param warp what remains of the way of time beside that line
 * @param coherence mean squared coherence of original and return from 500 Hz to 8 kHz, after all
 *     delays are taken out
 * @param isWholeRange whether the delay is that of the range 500 Hz to 8 kHz; false if too little
 *     sounds there
 * @param other delay that the levels alone would allow as well, seconds, if nothing in the sound
 *     tells the two apart
 */
public record FoundTrack(
        Alignment alignment,
        double delayDoubtFrames,
        double measuredPpm,
        double ppmDoubt,
        Warp warp,
        double coherence,
        boolean isWholeRange,
        OptionalDouble other) {

    /**
     * The way of time beside a straight line, where something sounds.
     *
     * @param rmsMicroseconds how far it swings
     * @param doubtMicroseconds standard uncertainty of the course that was followed, rms: what is
     *     expected to be left if it is taken out
     * @param isSignificant whether there is any: else nothing is to be taken out
     * @param swingsHz frequencies of the lines in it, the strongest first
     * @param course where each frame lies, delay and speed included
     */
    public record Warp(
            double rmsMicroseconds,
            double doubtMicroseconds,
            boolean isSignificant,
            List<Double> swingsHz,
            Way course) {}

    /** Where frames of the original lie in the return. */
    @FunctionalInterface
    public interface Way {

        /** Place of a frame, frames of the return, fractional. */
        double at(double frame);
    }

    /**
     * The return in time with its original.
     *
     * @param isUnwarped whether slow errors of time are taken out too, where there are any
     * @param isLevelSet whether the path's gain is taken back; its polarity is in any case
     * @param frames length of the original
     */
    public AudioSource straightened(
            AudioSource returned, boolean isUnwarped, boolean isLevelSet, long frames) {
        Alignment taken = isLevelSet ? alignment : alignment.levelled();
        if (isUnwarped && warp.isSignificant() && warp.course() instanceof Course course) {
            return new LevelledSound(
                    new CourseSound(returned, course, frames), taken.gains(), frames);
        }
        return new StraightenedSound(returned, taken, 1, frames);
    }
}
