package offtape.report.apply.listen;

import java.util.Collections;
import java.util.List;
import java.util.Optional;
import offtape.core.align.Alignment;
import offtape.core.align.StraightenedSound;
import offtape.core.audio.AudioSource;
import offtape.core.fault.UnusableInputException;

/**
 * Two sounds of one rate and as many channels, B in A's time.
 *
 * @param a the first as it is
 * @param b the second, read at the places and the speed of A
 * @param returned the second as it is
 * @param found where B lay and how it came back, or empty if both were taken as they are
 * @param used by which B is read: what was found, or what was found nearer to the part
 * @param isTurned whether the polarity of B was turned over
 * @param firstFrame the first frame of A at which both sound
 * @param endFrame the frame behind the last one
 */
record AlignedPair(
        AudioSource a,
        AudioSource b,
        AudioSource returned,
        Optional<Alignment> found,
        Optional<Alignment> used,
        boolean isTurned,
        long firstFrame,
        long endFrame) {

    /**
     * Brings two sounds together.
     *
     * @throws UnusableInputException if they cannot be compared or B is not found in A's time
     */
    static AlignedPair of(
            AudioSource first, AudioSource second, ListenChoice choice, AlignmentSearch search) {
        ComparableSounds.require(first, second);
        int channels = Math.max(first.channels(), second.channels());
        AudioSource a = spread(first, channels);
        AudioSource b = spread(second, channels);
        if (!choice.isAligned()) {
            long end = Math.min(a.frames(), b.frames());
            Optional<Alignment> none = Optional.empty();
            return new AlignedPair(a, b, b, none, none, false, 0, end);
        }
        Alignment found = search.find(a, b);
        boolean isInverted = found.gains().stream().anyMatch(g -> g < 0);
        return placed(a, b, found, found, isInverted && choice.turnsPolarity());
    }

    /** The same with B read by another alignment. */
    AlignedPair by(Alignment nearer) {
        return placed(a, returned, found.orElseThrow(), nearer, isTurned);
    }

    private static AlignedPair placed(
            AudioSource a, AudioSource b, Alignment found, Alignment used, boolean isTurned) {
        // level is matched by loudness and balance stays B's own: of the gains only the sign counts
        List<Double> signs =
                isTurned
                        ? found.gains().stream().map(Math::signum).toList()
                        : Collections.nCopies(b.channels(), 1.0);
        Alignment place = new Alignment(used.startFrame(), used.step(), signs, 0, used.isBroken());
        AudioSource moved = new StraightenedSound(b, place, 1, a.frames());
        long from = (long) Math.ceil(Math.max(0, -used.startFrame() / used.step()));
        long behind = (long) Math.floor((b.frames() - used.startFrame()) / used.step());
        long end = Math.min(a.frames(), behind);
        return new AlignedPair(
                a, moved, b, Optional.of(found), Optional.of(used), isTurned, from, end);
    }

    private static AudioSource spread(AudioSource sound, int channels) {
        return sound.channels() < channels ? new TwoSides(sound) : sound;
    }
}
