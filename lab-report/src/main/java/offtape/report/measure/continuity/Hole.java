package offtape.report.measure.continuity;

import java.util.Optional;
import java.util.stream.IntStream;
import offtape.core.audio.AudioSource;
import org.apache.commons.math3.stat.descriptive.rank.Median;

/** A stretch of silence in the middle of a tone, as is played when there is nothing to play. */
final class Hole {

    private static final double STEP_S = 0.001;

    /** Shorter ones the averaging of the level fills up. */
    private static final double SHORTEST_S = 0.008;

    /** Under this share of the usual level nothing is heard. */
    private static final double SILENT = 0.1;

    /** So much of the added time must be silent. */
    private static final double LONG_ENOUGH = 0.6;

    private Hole() {}

    /**
     * Where the only hole within a stretch begins, seconds of the recording.
     *
     * @param lateSeconds by how much time jumps somewhere there
     */
    static Optional<Double> in(
            AudioSource recording, double fromSeconds, double toSeconds, double lateSeconds) {
        if (lateSeconds < SHORTEST_S) {
            return Optional.empty();
        }
        Envelope level = Envelope.of(recording, fromSeconds, toSeconds);
        double[] levels =
                IntStream.range(0, (int) ((toSeconds - fromSeconds) / STEP_S))
                        .mapToDouble(i -> level.at(fromSeconds + i * STEP_S))
                        .toArray();
        double silent = SILENT * new Median().evaluate(levels);
        boolean[] quiet = new boolean[levels.length];
        for (int i = 0; i < levels.length; i++) {
            quiet[i] = levels[i] < silent;
        }
        return onlyRun(quiet, LONG_ENOUGH * lateSeconds / STEP_S)
                .map(i -> fromSeconds + i * STEP_S);
    }

    private static Optional<Integer> onlyRun(boolean[] quiet, double least) {
        int begin = -1;
        int found = 0;
        int run = 0;
        for (int i = 0; i < quiet.length; i++) {
            run = quiet[i] ? run + 1 : 0;
            if (run >= least && run - 1 < least) {
                begin = i - run + 1;
                found++;
            }
        }
        return found == 1 ? Optional.of(begin) : Optional.empty();
    }
}
