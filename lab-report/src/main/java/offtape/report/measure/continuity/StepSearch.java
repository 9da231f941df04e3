package offtape.report.measure.continuity;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import offtape.report.locate.LateMoment;
import org.apache.commons.math3.stat.descriptive.rank.Median;

/**
 * Steps in the lateness of a return: what is heard on one side of a place comes later against what
 * is heard on the other than its tones' frequencies say.
 */
final class StepSearch {

    /** Edges are read to some tenths of a millisecond. */
    private static final double LEAST_S = 0.0015;

    /** In units of the median size of such differences, scaled to a standard deviation. */
    private static final double BEYOND_CHANCE = 8;

    private static final double MAD_TO_SIGMA = 1.4826;

    /** In units of what changes of speed may do. */
    private static final double BEYOND_SPEED = 5;

    /** So many moments on each side are compared. */
    private static final int SIDE = 4;

    /** Of a step, so much lies between the two moments next to it. */
    private static final double AT_ONCE = 0.6;

    private static final int FEWEST = 2 * SIDE + 2;

    private final List<LateMoment> moments;
    private final double[] rest;
    private final double[] doubt;

    private StepSearch(List<LateMoment> moments, ExpectedTime expected) {
        this.moments = moments;
        this.rest = new double[moments.size()];
        this.doubt = new double[moments.size() - 1];
        for (int i = 0; i + 1 < rest.length; i++) {
            LateMoment a = moments.get(i);
            LateMoment b = moments.get(i + 1);
            Optional<ExpectedTime.Later> later =
                    expected.between(a.programmeSeconds(), b.programmeSeconds());
            // where no speed is known no step is known either
            double step = b.lateSeconds() - a.lateSeconds();
            rest[i + 1] = rest[i] + later.map(l -> step - l.seconds()).orElse(0.0);
            doubt[i] = later.map(ExpectedTime.Later::doubtSeconds).orElse(0.0);
        }
    }

    /** Steps, in order. */
    static List<Jump> of(List<LateMoment> moments, ExpectedTime expected) {
        return moments.size() < FEWEST ? List.of() : new StepSearch(moments, expected).jumps();
    }

    private List<Jump> jumps() {
        int n = doubt.length;
        double[] steps = IntStream.range(0, n).mapToDouble(this::sides).toArray();
        double sigma =
                MAD_TO_SIGMA * new Median().evaluate(Arrays.stream(steps).map(Math::abs).toArray());
        double least = Math.max(LEAST_S, BEYOND_CHANCE * sigma);
        List<Jump> jumps = new ArrayList<>();
        for (int i = 0; i < n; i++) {
            double here = rest[i + 1] - rest[i];
            if (Math.abs(steps[i]) > Math.max(least, BEYOND_SPEED * doubt[i])
                    && Math.signum(here) == Math.signum(steps[i])
                    && Math.abs(here) > AT_ONCE * Math.abs(steps[i])) {
                jumps.add(new Jump(heard(i), heard(i + 1), here));
            }
        }
        return jumps;
    }

    private double heard(int i) {
        return moments.get(i).programmeSeconds() + moments.get(i).lateSeconds();
    }

    /** What lies after a place less what lies before it, each the median of some moments. */
    private double sides(int i) {
        double before =
                new Median().evaluate(Arrays.copyOfRange(rest, Math.max(0, i + 1 - SIDE), i + 1));
        double after =
                new Median()
                        .evaluate(
                                Arrays.copyOfRange(
                                        rest, i + 1, Math.min(rest.length, i + 1 + SIDE)));
        return after - before;
    }
}
