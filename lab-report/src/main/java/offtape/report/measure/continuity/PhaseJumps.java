package offtape.report.measure.continuity;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
import offtape.core.dsp.Baseband;
import org.apache.commons.math3.stat.descriptive.rank.Median;

/**
 * Moments at which the phase of a tone jumps and stays. A dropout moves it for a moment only, and
 * speed moves it slowly.
 */
final class PhaseJumps {

    private static final double SIDE_S = 0.015;
    private static final double BETWEEN_S = 0.005;

    /** A jump of this many radians is taken for one, if it is far beyond all others. */
    private static final double LEAST_RAD = 0.8;

    private static final double BEYOND_CHANCE = 10;
    private static final double MAD_TO_SIGMA = 1.4826;

    /** Where the tone is weaker than this share of its usual size, its phase is not asked. */
    private static final double CLEAR = 0.5;

    private final Baseband base;
    private final double[] phase;
    private final int side;
    private final int between;
    private final double clear;

    private PhaseJumps(Baseband base) {
        this.base = base;
        this.phase = base.unwrappedPhase();
        this.side = (int) Math.round(SIDE_S * base.rateHz());
        this.between = (int) Math.round(BETWEEN_S * base.rateHz());
        this.clear =
                CLEAR
                        * CLEAR
                        * new Median()
                                .evaluate(
                                        IntStream.range(0, base.size())
                                                .mapToDouble(base::power)
                                                .toArray());
    }

    /** Moments of the recording, seconds, in order. */
    static List<Double> in(Baseband base) {
        return new PhaseJumps(base).moments();
    }

    private List<Double> moments() {
        int reach = between + side;
        int count = phase.length - 2 * reach;
        if (side < 3 || count < 4 * reach) {
            return List.of();
        }
        double[] jumps = IntStream.range(0, count).mapToDouble(k -> jump(k + reach)).toArray();
        double sigma =
                MAD_TO_SIGMA * new Median().evaluate(Arrays.stream(jumps).map(Math::abs).toArray());
        double least = Math.max(LEAST_RAD, BEYOND_CHANCE * sigma);
        List<Integer> tops = new ArrayList<>();
        for (int k = 0; k < count; k++) {
            if (Math.abs(jumps[k]) > least) {
                add(tops, k, jumps, 2 * reach);
            }
        }
        return tops.stream().map(k -> base.seconds(k + reach)).toList();
    }

    /**
     * What is seen again within the reach of the lines is the same jump, which lies where it is
     * greatest: lines that hold a jump tilt, and show another of four fifths of its size.
     */
    private static void add(List<Integer> tops, int k, double[] jumps, int within) {
        int last = tops.size() - 1;
        if (tops.isEmpty() || k - tops.get(last) > within) {
            tops.add(k);
        } else if (Math.abs(jumps[k]) > Math.abs(jumps[tops.get(last)])) {
            tops.set(last, k);
        }
    }

    /** What the line after a moment differs from the line before it there, within half a turn. */
    private double jump(int k) {
        if (!isClear(k - between - side) || !isClear(k + between)) {
            return 0;
        }
        double difference = line(k + between, k) - line(k - between - side, k);
        return difference - 2 * Math.PI * Math.rint(difference / (2 * Math.PI));
    }

    private boolean isClear(int from) {
        for (int i = from; i < from + side; i++) {
            if (base.power(i) < clear) {
                return false;
            }
        }
        return true;
    }

    /** The straight line through some samples, at another place. */
    private double line(int from, int at) {
        double middle = from + (side - 1) / 2.0;
        double mean = 0;
        double product = 0;
        double squares = 0;
        for (int i = from; i < from + side; i++) {
            mean += phase[i] / side;
            product += (i - middle) * phase[i];
            squares += (i - middle) * (i - middle);
        }
        return mean + product / squares * (at - middle);
    }
}
