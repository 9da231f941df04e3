package offtape.report.measure.transport;

import java.util.ArrayList;
import java.util.List;
import offtape.report.measure.line.FoundLine;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.ArrayRealVector;
import org.apache.commons.math3.linear.RealVector;
import org.apache.commons.math3.linear.SingularValueDecomposition;

/**
 * Undoes lines one by one: each cosine and sine of the transport is heard less what it was when the
 * sound was written, and least squares under Hann's window find how much there is of each. All are
 * fitted together. What is subtracted is consistent with what is added, so that a line that was
 * found wrongly spoils nothing: the rest makes up for it.
 */
final class LineInverse {

    /** A line whose gain is uncertain by more than this share is left to the rest. */
    private static final double LARGEST_DOUBT = 0.2;

    private final double[] heard;
    private final double rateHz;
    private final Comb comb;
    private final HeardLag lag;

    /**
     * A return whose lines are to be undone.
     *
     * @param heard what is to be a plain difference, percent: the deviation, or 100 times the
     *     logarithm of its ratio
     * @param lag when each value was written
     */
    LineInverse(double[] heard, double rateHz, Comb comb, HeardLag lag) {
        this.heard = heard;
        this.rateHz = rateHz;
        this.comb = comb;
        this.lag = lag;
    }

    /** Those of the lines that can be undone. */
    List<UndoneLine> undo(List<FoundLine> lines) {
        List<FoundLine> able = lines.stream().filter(this::isAble).toList();
        if (able.isEmpty()) {
            return List.of();
        }
        double[] factors = fit(able);
        List<UndoneLine> undone = new ArrayList<>();
        for (int l = 0; l < able.size(); l++) {
            undone.add(
                    new UndoneLine(
                            able.get(l), factors[2 * l], factors[2 * l + 1], gain(able.get(l))));
        }
        return undone;
    }

    /** Whether the gain of a line is known well enough to divide by it. */
    private boolean isAble(FoundLine line) {
        double hz = line.middleHz();
        double turn = Math.PI * line.hzUncertainty() * comb.seconds();
        return comb.variance(hz) + turn * turn
                < LARGEST_DOUBT * LARGEST_DOUBT * gain(line) * gain(line);
    }

    private double gain(FoundLine line) {
        return Math.sqrt(
                (comb.power(line.startHz())
                                + 4 * comb.power(line.middleHz())
                                + comb.power(line.endHz()))
                        / 6);
    }

    private double[] fit(List<FoundLine> lines) {
        int size = 2 * lines.size();
        double[][] normal = new double[size][size];
        double[] right = new double[size];
        double[] basis = new double[size];
        for (int i = 0; i < heard.length; i++) {
            double now = at(i);
            for (int l = 0; l < lines.size(); l++) {
                double turn = turn(lines.get(l), now);
                double before = turn(lines.get(l), lag.writtenAt(i));
                basis[2 * l] = Math.cos(turn) - Math.cos(before);
                basis[2 * l + 1] = Math.sin(turn) - Math.sin(before);
            }
            double w = 0.5 + 0.5 * Math.cos(2 * Math.PI * now / seconds());
            for (int a = 0; a < size; a++) {
                double weighted = w * basis[a];
                right[a] += weighted * heard[i];
                for (int b = 0; b <= a; b++) {
                    normal[a][b] += weighted * basis[b];
                }
            }
        }
        for (int a = 0; a < size; a++) {
            for (int b = 0; b < a; b++) {
                normal[b][a] = normal[a][b];
            }
        }
        RealVector solved =
                new SingularValueDecomposition(new Array2DRowRealMatrix(normal, false))
                        .getSolver()
                        .solve(new ArrayRealVector(right, false));
        return solved.toArray();
    }

    /** What the lines do to the transport, percent. */
    double[] own(List<UndoneLine> lines) {
        double[] sum = new double[heard.length];
        for (UndoneLine line : lines) {
            for (int i = 0; i < sum.length; i++) {
                sum[i] += value(line, at(i));
            }
        }
        return sum;
    }

    /** What is heard of the lines, percent. */
    double[] heard(List<UndoneLine> lines) {
        double[] sum = new double[heard.length];
        for (UndoneLine line : lines) {
            for (int i = 0; i < sum.length; i++) {
                sum[i] += value(line, at(i)) - value(line, lag.writtenAt(i));
            }
        }
        return sum;
    }

    private double value(UndoneLine line, double fromMiddle) {
        double turn = turn(line.heard(), fromMiddle);
        return line.cos() * Math.cos(turn) + line.sin() * Math.sin(turn);
    }

    private double turn(FoundLine line, double fromMiddle) {
        return 2 * Math.PI * line.turns(fromMiddle, seconds());
    }

    private double at(int sample) {
        return (sample - (heard.length - 1) / 2.0) / rateHz;
    }

    private double seconds() {
        return heard.length / rateHz;
    }
}
