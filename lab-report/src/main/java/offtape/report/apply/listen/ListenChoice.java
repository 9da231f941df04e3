package offtape.report.apply.listen;

import java.util.OptionalDouble;

/**
 * What was asked for.
 *
 * @param fromSeconds where in A the part begins that is listened to, or empty for the loudest part
 * @param lengthSeconds its length, or empty for the usual one
 * @param trials of a round, {@link #FEWEST_TRIALS} to {@link #MOST_TRIALS}
 * @param isTraining whether each answer is told at once and nothing counts
 * @param isAligned whether B is brought in time with A; otherwise both begin at their first frame
 * @param turnsPolarity whether a B that came back inverted is turned over again
 */
public record ListenChoice(
        OptionalDouble fromSeconds,
        OptionalDouble lengthSeconds,
        int trials,
        boolean isTraining,
        boolean isAligned,
        boolean turnsPolarity) {

    /** With fewer trials not even all right would be rarer than 5 % by luck: 1/2⁴ is 6 %. */
    public static final int FEWEST_TRIALS = 5;

    /** Nobody listens with care any longer; common practice, no source. */
    public static final int MOST_TRIALS = 100;

    /** What is usual. */
    public static final int USUAL_TRIALS = 16;

    /** The shortest part that has a loudness, seconds. */
    public static final double SHORTEST_SECONDS = 0.4;

    /** The longest part, seconds. */
    public static final double LONGEST_SECONDS = 120;

    /** The length without a wish, seconds. */
    public static final double USUAL_SECONDS = 30;
}
