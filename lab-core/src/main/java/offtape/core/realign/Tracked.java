package offtape.core.realign;

import java.util.List;

/**
 * A return followed along its original.
 *
 * @param course where each frame of the original lies
 * @param frames at which its delay was read, frames of the original
 * @param curve the smoothed lateness there beside the course's line
 * @param line the straight line through the course
 * @param slope what is known of the delay from the phase
 * @param path response and noise of each channel
 */
record Tracked(
        Course course,
        double[] frames,
        Smoothed curve,
        StraightLine line,
        PhaseSlope slope,
        List<Transfer> path) {}
