package offtape.report.fault.rank;

import java.util.List;
import java.util.Optional;

/**
 * How a fault moves the symptoms as it grows.
 *
 * @param code of the fault
 * @param variant which form of it, in words
 * @param side {@code both} if both channels have it or it is no matter of channels, {@code right}
 *     if the right one has it; the left one then has its mirror image
 * @param mirrored whether the mirror image is a form of its own although no one channel has it, as
 *     an azimuth the other way
 * @param moves what it moves
 */
public record Course(String code, String variant, String side, boolean mirrored, List<Move> moves) {

    /** Copies the list so that the record cannot change. */
    public Course {
        moves = List.copyOf(moves);
    }

    /** Whether it comes in a mirror image too. */
    boolean hasMirror() {
        return mirrored || side.equals("right");
    }

    /** How it moves a symptom, if it does. */
    public Optional<Move> move(String symptom) {
        return moves.stream().filter(m -> m.symptom().equals(symptom)).findFirst();
    }

    /**
     * How one symptom moves.
     *
     * @param symptom its key
     * @param course coefficients of 1, s and s², s the severity from 0 (just worth mending) to 1
     *     (gross): the change on the symptom's scale, or the place on it where the largest counts
     * @param spread standard deviation about that
     */
    public record Move(String symptom, double[] course, double spread) {

        /** The change, or the place, at a severity. */
        public double at(double severity) {
            return course[0] + severity * (course[1] + severity * course[2]);
        }
    }
}
