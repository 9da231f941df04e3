package offtape.core.machine;

import java.io.IOException;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import offtape.core.fault.BoundedText;
import offtape.core.fault.UnusableInputException;
import offtape.core.machine.spec.MotionFileSpec;
import offtape.core.text.Sentences;
import offtape.reference.TransportMotion;
import org.apache.commons.math3.analysis.interpolation.SplineInterpolator;
import org.apache.commons.math3.analysis.polynomials.PolynomialSplineFunction;

/**
 * The motion of a real machine from a table of how late its return came. Between the rows runs a
 * cubic spline. For any length the table repeats: its last tenth is faded into what comes before
 * its first with a raised cosine, so that neither displacement nor speed jumps.
 */
final class MeasuredMotion {

    private static final Sentences SAID = Sentences.near(MeasuredMotion.class);

    private static final int MOST_BYTES = 64 << 20;
    private static final int FEWEST_ROWS = 20;

    /** Many times what the place in a repetition is rounded by, however long the return. */
    private static final double LEAST_SECONDS = 0.1;

    private static final double FADE_SHARE = 0.1;

    private final double startSeconds;
    private final double periodSeconds;
    private final double fadeSeconds;
    private final double scale;
    private final PolynomialSplineFunction late;
    private final PolynomialSplineFunction lateSlope;

    private MeasuredMotion(double[] seconds, double[] lateSeconds, double scale) {
        double length = seconds[seconds.length - 1] - seconds[0];
        this.startSeconds = seconds[0];
        this.fadeSeconds = FADE_SHARE * length;
        this.periodSeconds = length - fadeSeconds;
        this.scale = scale;
        this.late = new SplineInterpolator().interpolate(seconds, lateSeconds);
        this.lateSlope = late.polynomialSplineDerivative();
    }

    /**
     * The motion of a description.
     *
     * @throws UnusableInputException if its file cannot be read, is no such table, has fewer than
     *     20 rows or lasts less than 0.1 s
     */
    static MeasuredMotion of(MotionFileSpec spec) {
        if (spec.csv() != null) {
            return read(spec.csv(), spec.scale());
        }
        TransportMotion recorded = TransportMotion.load(spec.recorded());
        double[] late = Arrays.stream(recorded.lateMicroseconds()).map(x -> 1e-6 * x).toArray();
        return new MeasuredMotion(recorded.seconds(), late, spec.scale());
    }

    private static MeasuredMotion read(String csv, double scale) {
        List<String> lines = lines(csv);
        List<double[]> rows = new ArrayList<>();
        for (int i = 1; i < lines.size(); i++) {
            if (!lines.get(i).isBlank()) {
                rows.add(row(lines.get(i), csv, i + 1, rows));
            }
        }
        if (rows.size() < FEWEST_ROWS) {
            throw new UnusableInputException(SAID.say("motion.too-few-rows", csv, rows.size()));
        }
        double[] seconds = rows.stream().mapToDouble(r -> r[0]).toArray();
        if (!(seconds[seconds.length - 1] - seconds[0] >= LEAST_SECONDS)) {
            throw new UnusableInputException(SAID.say("motion.too-short", csv));
        }
        double[] late = rows.stream().mapToDouble(r -> 1e-6 * r[1]).toArray();
        return new MeasuredMotion(seconds, late, scale);
    }

    double periodSeconds() {
        return periodSeconds;
    }

    /** Displacement in seconds of nominal tape: a return that is late lies further back. */
    double displacement(double seconds) {
        double x = within(seconds);
        if (x >= fadeSeconds) {
            return -scale * late.value(startSeconds + x);
        }
        double in = fadeIn(x);
        double own = late.value(startSeconds + x);
        return -scale * (own * in + tail(late, x) * (1 - in));
    }

    /** Deviation of speed, the derivative of the displacement. */
    double deviation(double seconds) {
        double x = within(seconds);
        double own = lateSlope.value(startSeconds + x);
        if (x >= fadeSeconds) {
            return -scale * own;
        }
        double in = fadeIn(x);
        double slope = Math.PI / (2 * fadeSeconds) * Math.sin(Math.PI * x / fadeSeconds);
        double jump = late.value(startSeconds + x) - tail(late, x);
        return -scale * (own * in + tail(lateSlope, x) * (1 - in) + slope * jump);
    }

    private double within(double seconds) {
        // rounding can leave a little less than nothing, which lies before the first row
        return Math.max(0, seconds - Math.floor(seconds / periodSeconds) * periodSeconds);
    }

    private double fadeIn(double x) {
        return (1 - Math.cos(Math.PI * x / fadeSeconds)) / 2;
    }

    private double tail(PolynomialSplineFunction f, double x) {
        double[] knots = f.getKnots();
        return f.value(Math.min(startSeconds + periodSeconds + x, knots[knots.length - 1]));
    }

    private static List<String> lines(String csv) {
        try {
            Path file = Path.of(csv);
            return BoundedText.read(file, MOST_BYTES)
                    .orElseThrow(
                            () -> new UnusableInputException(SAID.say("motion.too-large", csv)))
                    .lines()
                    .toList();
        } catch (IOException | InvalidPathException e) {
            throw new UnusableInputException(SAID.say("motion.unreadable", csv), e);
        }
    }

    private static double[] row(String line, String csv, int number, List<double[]> before) {
        String[] cells = line.split(",", -1);
        try {
            double seconds = Double.parseDouble(cells[0].trim());
            double late = Double.parseDouble(cells[1].trim());
            boolean rises = before.isEmpty() || seconds > before.get(before.size() - 1)[0];
            if (cells.length == 2 && rises && Math.abs(seconds) < 1e6 && Math.abs(late) < 1e6) {
                return new double[] {seconds, late};
            }
        } catch (NumberFormatException | ArrayIndexOutOfBoundsException e) {
            // told below, together with the other ways a row can be wrong
        }
        throw new UnusableInputException(SAID.say("motion.row", csv, number));
    }
}
