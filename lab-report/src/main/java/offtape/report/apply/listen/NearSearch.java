package offtape.report.apply.listen;

import java.util.Optional;
import offtape.core.align.Alignment;
import offtape.core.audio.AudioSource;
import offtape.core.fault.UnusableInputException;

/**
 * B in A's time within the part that is listened to. A tape's speed changes over minutes, so a
 * straight line through the whole of a long return may be off by milliseconds in any one part; a
 * second search over the part alone says by how much.
 */
final class NearSearch {

    /** What B is searched in beside the part itself, and the most that is believed, seconds. */
    private static final double AROUND_SECONDS = 0.5;

    /** Shorter parts are too little to search in, seconds. */
    private static final double SHORTEST_SECONDS = 3;

    /** What differs by less is left to the line through the whole, which has more to go by. */
    private static final double LEAST_FRAMES = 0.5;

    private NearSearch() {}

    /** The alignment for the part, if it differs from the one found over the whole. */
    static Optional<Alignment> find(AlignedPair pair, Part part, AlignmentSearch search) {
        AudioSource a = pair.a();
        boolean isLong = part.frames() >= SHORTEST_SECONDS * a.sampleRateHz();
        boolean isPartOnly = part.frames() < a.frames();
        if (pair.found().isEmpty() || !isLong || !isPartOnly) {
            return Optional.empty();
        }
        Alignment whole = pair.found().get();
        long around = Math.round(AROUND_SECONDS * a.sampleRateHz());
        long from = Math.round(at(whole, part.fromFrame())) - around;
        long length = Math.round(whole.step() * part.frames()) + 2 * around;
        try {
            Alignment heard =
                    search.find(
                            new Excerpt(a, part.fromFrame(), part.frames()),
                            new Excerpt(pair.returned(), from, length));
            double start = from + heard.startFrame() - heard.step() * part.fromFrame();
            Alignment near = new Alignment(start, heard.step(), whole.gains(), 0, whole.isBroken());
            double off = farthest(whole, near, part);
            return off >= LEAST_FRAMES && off <= around ? Optional.of(near) : Optional.empty();
        } catch (UnusableInputException e) {
            // a part that says too little by itself, such as one long note
            return Optional.empty();
        }
    }

    private static double at(Alignment alignment, long frame) {
        return alignment.startFrame() + alignment.step() * frame;
    }

    private static double farthest(Alignment one, Alignment other, Part part) {
        long end = part.fromFrame() + part.frames();
        return Math.max(
                Math.abs(at(one, part.fromFrame()) - at(other, part.fromFrame())),
                Math.abs(at(one, end) - at(other, end)));
    }
}
