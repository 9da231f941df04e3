package offtape.report.measure.line;

import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.ArrayRealVector;
import org.apache.commons.math3.linear.DecompositionSolver;
import org.apache.commons.math3.linear.LUDecomposition;
import org.apache.commons.math3.linear.RealMatrix;

/**
 * Least squares for one sine, weighted by Hann's window, by Gauss's and Newton's steps. What the
 * residual has in phase with the line changes its peak; what stands at right angles changes its
 * phase, and over time its frequency and bend.
 */
final class LineFit {

    private static final int MOST_STEPS = 12;

    /** A step of frequency shorter than this share of a bin is the last. */
    private static final double SETTLED = 1e-6;

    /** A line may not leave its place by more bins than this in one step. */
    private static final double LONGEST_STEP = 1;

    private final Stretch stretch;
    private final double[] windows;
    private final boolean bends;

    /**
     * A fit to what is in a stretch.
     *
     * @param bends whether the frequency may move
     */
    LineFit(Stretch stretch, boolean bends) {
        this.stretch = stretch;
        this.windows = stretch.windows();
        this.bends = bends;
    }

    /** The best line near a first guess of its frequency and bend. */
    Line fit(double hz, double bend) {
        Line line = amplitude(new Line(hz, bend, 0, 0));
        for (int i = 0; i < MOST_STEPS; i++) {
            double[] step = step(line);
            double limit = LONGEST_STEP / stretch.seconds();
            double df = Math.max(-limit, Math.min(limit, step[1]));
            double db = bends ? step[2] * (step[1] == 0 ? 1 : df / step[1]) : 0;
            line = amplitude(new Line(line.hz() + df, held(line.bend() + db), 0, 0));
            if (Math.abs(df) * stretch.seconds() < SETTLED) {
                break;
            }
        }
        return line;
    }

    /** The pack of a reel ends before its radius is nothing. */
    private double held(double bend) {
        double most = BendGrid.MOST_TURN / stretch.seconds();
        return Math.max(-most, Math.min(most, bend));
    }

    /** Cosine and sine by two normal equations, exact for any number of periods. */
    private Line amplitude(Line line) {
        Stretch.Phasors p = stretch.phasors(line);
        double cc = 0;
        double cs = 0;
        double ss = 0;
        double xc = 0;
        double xs = 0;
        for (int i = 0; i < windows.length; i++) {
            double c = windows[i] * p.cos()[i];
            double s = windows[i] * p.sin()[i];
            cc += c * p.cos()[i];
            cs += c * p.sin()[i];
            ss += s * p.sin()[i];
            xc += c * stretch.samples()[i];
            xs += s * stretch.samples()[i];
        }
        double det = cc * ss - cs * cs;
        return new Line(
                line.hz(), line.bend(), (xc * ss - xs * cs) / det, (xs * cc - xc * cs) / det);
    }

    /** Phase, frequency and bend by which the residual asks to move. */
    private double[] step(Line line) {
        int size = bends ? 3 : 2;
        double[][] normal = new double[size][size];
        double[] right = new double[size];
        double[] basis = new double[size];
        Stretch.Phasors p = stretch.phasors(line);
        for (int i = 0; i < windows.length; i++) {
            double value = line.re() * p.cos()[i] + line.im() * p.sin()[i];
            double turned = line.im() * p.cos()[i] - line.re() * p.sin()[i];
            basis(line, stretch.at(i), basis);
            double e = stretch.samples()[i] - value;
            for (int a = 0; a < size; a++) {
                double weighted = windows[i] * basis[a] * turned;
                right[a] += weighted * e;
                for (int b = 0; b <= a; b++) {
                    normal[a][b] += weighted * basis[b] * turned;
                    normal[b][a] = normal[a][b];
                }
            }
        }
        DecompositionSolver solver =
                new LUDecomposition(new Array2DRowRealMatrix(normal, false), 0).getSolver();
        return solver.solve(new ArrayRealVector(right, false)).toArray();
    }

    /** What phase, frequency and bend do to the phase at a time. */
    private static void basis(Line line, double seconds, double[] basis) {
        basis[0] = 1;
        basis[1] = 2 * Math.PI * Line.turned(seconds, line.bend());
        if (basis.length > 2) {
            basis[2] = 2 * Math.PI * line.hz() * Line.turnedByBend(seconds, line.bend());
        }
    }

    /**
     * Standard deviations of frequency and bend of a line in noise: the Cramér-Rao bound of D. C.
     * Rife and R. R. Boorstyn ("Single-tone parameter estimation from discrete-time observations",
     * IEEE Trans. Inf. Theory 20(5), 1974), which holds for a flat window, widened by what Hann's
     * window costs: 1.22 times for the peak and 1.53 times for the frequency.
     *
     * @param noise mean power of the noise as {@link LinePower} counts it
     * @return {frequency, bend}, and the second as 0 if the line is not bent
     */
    double[] deviations(Line line, double noise) {
        int size = bends ? 3 : 2;
        double[][] normal = new double[size][size];
        double[][] squared = new double[size][size];
        double[] basis = new double[size];
        double sum = 0;
        double sumOfSquares = 0;
        for (int i = 0; i < windows.length; i++) {
            double w = windows[i];
            sum += w;
            sumOfSquares += w * w;
            basis(line, stretch.at(i), basis);
            for (int a = 0; a < size; a++) {
                for (int b = 0; b < size; b++) {
                    normal[a][b] += w * basis[a] * basis[b];
                    squared[a][b] += w * w * basis[a] * basis[b];
                }
            }
        }
        RealMatrix inverse =
                new LUDecomposition(new Array2DRowRealMatrix(normal, false), 0)
                        .getSolver()
                        .getInverse();
        RealMatrix spread =
                inverse.multiply(new Array2DRowRealMatrix(squared, false)).multiply(inverse);
        double perSample = noise / 2 * sum * sum / sumOfSquares;
        double scale = Math.sqrt(perSample) / line.peak();
        return new double[] {
            scale * Math.sqrt(spread.getEntry(1, 1)),
            bends ? scale * Math.sqrt(spread.getEntry(2, 2)) : 0
        };
    }
}
