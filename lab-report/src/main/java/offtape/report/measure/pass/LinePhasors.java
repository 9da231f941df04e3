package offtape.report.measure.pass;

import java.util.List;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.CholeskyDecomposition;
import org.apache.commons.math3.linear.DecompositionSolver;
import org.apache.commons.math3.linear.RealMatrix;

/** Peak and phase of the same lines in several replays, all lines together by least squares. */
final class LinePhasors {

    private final List<TapeLine> lines;
    private final RealMatrix factors;

    private LinePhasors(List<TapeLine> lines, RealMatrix factors) {
        this.lines = lines;
        this.factors = factors;
    }

    /**
     * Reads the lines and takes them out.
     *
     * @param lines apart from each other by more than a bin
     * @param series one a replay, equally long; changed in place
     */
    static LinePhasors takenOut(List<TapeLine> lines, double[][] series, double rateHz) {
        int size = 2 * lines.size();
        int n = series[0].length;
        if (size == 0) {
            return new LinePhasors(lines, null);
        }
        double[][] normal = new double[size][size];
        double[][] right = new double[size][series.length];
        double[] basis = new double[size];
        for (int i = 0; i < n; i++) {
            basis(lines, (i - (n - 1) / 2.0) / rateHz, basis);
            for (int a = 0; a < size; a++) {
                for (int b = 0; b <= a; b++) {
                    normal[a][b] += basis[a] * basis[b];
                    normal[b][a] = normal[a][b];
                }
                for (int p = 0; p < series.length; p++) {
                    right[a][p] += basis[a] * series[p][i];
                }
            }
        }
        DecompositionSolver solver =
                new CholeskyDecomposition(new Array2DRowRealMatrix(normal, false)).getSolver();
        LinePhasors all =
                new LinePhasors(lines, solver.solve(new Array2DRowRealMatrix(right, false)));
        all.takeOut(series, rateHz, basis);
        return all;
    }

    private void takeOut(double[][] series, double rateHz, double[] basis) {
        int n = series[0].length;
        for (int i = 0; i < n; i++) {
            basis(lines, (i - (n - 1) / 2.0) / rateHz, basis);
            for (int p = 0; p < series.length; p++) {
                for (int a = 0; a < basis.length; a++) {
                    series[p][i] -= factors.getEntry(a, p) * basis[a];
                }
            }
        }
    }

    private static void basis(List<TapeLine> lines, double seconds, double[] basis) {
        for (int l = 0; l < lines.size(); l++) {
            double phase = lines.get(l).phase(seconds);
            basis[2 * l] = Math.cos(phase);
            basis[2 * l + 1] = Math.sin(phase);
        }
    }

    /** A line in each replay, {cosine, sine}, percent peak. */
    double[][] of(int line) {
        double[][] z = new double[factors.getColumnDimension()][2];
        for (int p = 0; p < z.length; p++) {
            z[p][0] = factors.getEntry(2 * line, p);
            z[p][1] = factors.getEntry(2 * line + 1, p);
        }
        return z;
    }
}
