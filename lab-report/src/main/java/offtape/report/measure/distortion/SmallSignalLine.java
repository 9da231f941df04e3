package offtape.report.measure.distortion;

import java.util.List;
import java.util.function.ToDoubleFunction;
import org.apache.commons.math3.stat.regression.SimpleRegression;

/**
 * The line that a ladder would follow without compression. Near the bottom a symmetrical
 * characteristic loses gain in proportion to the square of the amplitude (third-order term of its
 * series), so gain over squared amplitude is a straight line whose value at zero is the
 * small-signal gain.
 *
 * @param gainDb replay level less record level of a small signal, dB
 */
record SmallSignalLine(double gainDb) {

    /** Steps up to here, dB re reference, tell the small-signal gain. */
    private static final double SMALL_DB = -4;

    /**
     * Fits the lower steps.
     *
     * @return null if there are no steps
     */
    static <T> SmallSignalLine fit(
            List<T> steps, ToDoubleFunction<T> recordDb, ToDoubleFunction<T> replayDb) {
        if (steps.isEmpty()) {
            return null;
        }
        List<T> small = steps.stream().filter(s -> recordDb.applyAsDouble(s) <= SMALL_DB).toList();
        if (small.size() < 3) {
            T lowest = steps.get(0);
            return new SmallSignalLine(
                    replayDb.applyAsDouble(lowest) - recordDb.applyAsDouble(lowest));
        }
        SimpleRegression line = new SimpleRegression();
        for (T s : small) {
            double record = recordDb.applyAsDouble(s);
            line.addData(Math.pow(10, record / 10), replayDb.applyAsDouble(s) - record);
        }
        return new SmallSignalLine(line.getIntercept());
    }
}
