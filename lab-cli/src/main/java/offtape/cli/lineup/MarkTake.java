package offtape.cli.lineup;

import java.util.OptionalDouble;

/** Waits for the return of a mark. */
final class MarkTake {

    private static final double LONGEST_S = 4;

    private final Flow flow;
    private OptionalDouble lagFrames = OptionalDouble.empty();

    /** The mark has been asked for. */
    MarkTake(Flow flow) {
        this.flow = flow;
    }

    /** Looks for it in what has been recorded; gives up after some seconds. */
    boolean isDone(History history, int sampleRateHz) {
        long began = flow.began();
        if (began < 0) {
            return false;
        }
        long most = (long) ((LONGEST_S + Mark.BEHIND_S) * sampleRateHz);
        // what was recorded before playing began cannot hold it
        long from = began + flow.beganAfter();
        int count = (int) Math.min(most, history.frames() - from);
        if (count <= 0) {
            return false;
        }
        OptionalDouble found = Mark.find(loudest(history.from(from, count)), flow.mark());
        double last = count - Mark.BEHIND_S * sampleRateHz - flow.mark().length;
        if (found.isPresent() && found.getAsDouble() <= last) {
            lagFrames = OptionalDouble.of(found.getAsDouble() + from - began);
            return true;
        }
        return count >= most;
    }

    private static double[] loudest(double[][] sound) {
        double[] best = sound[0];
        for (double[] x : sound) {
            if (Mark.energy(x, 0, x.length) > Mark.energy(best, 0, best.length)) {
                best = x;
            }
        }
        return best;
    }

    /** Recorded frame less played frame of one sound, if the mark came back. */
    OptionalDouble lagFrames() {
        return lagFrames;
    }
}
