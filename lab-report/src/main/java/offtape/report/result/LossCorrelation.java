package offtape.report.result;

/**
 * How alike two causes look on this recording.
 *
 * @param one name as in {@link LossCause}
 * @param other another one
 * @param coefficient correlation of their figures if these two alone are fitted: near −1, more of
 *     one and less of the other gives the same curve
 */
public record LossCorrelation(String one, String other, double coefficient) {}
