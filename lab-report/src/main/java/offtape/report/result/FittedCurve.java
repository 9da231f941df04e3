package offtape.report.result;

/**
 * A smooth curve through the steps of a ladder.
 *
 * @param recordLevelDb record levels, rising, dB re reference
 * @param value the curve there
 * @param uncertainty its expanded uncertainty there, k = 2
 * @param misfit scatter of the steps about the curve over what their noise and the curve's
 *     stiffness lead to expect; 1 and less is smooth
 */
public record FittedCurve(
        double[] recordLevelDb, double[] value, double[] uncertainty, double misfit) {

    /** Checks that the lists belong together. */
    public FittedCurve {
        Columns.requireEven(recordLevelDb, value, uncertainty);
        if (value.length == 0) {
            throw new IllegalArgumentException("a curve has a point");
        }
    }
}
