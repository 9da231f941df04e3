package offtape.report.result;

/**
 * Phase of the right channel less that of the left over frequency, from a sweep on both. Motion is
 * common to both channels and not in it; delay and half turns are.
 *
 * @param frequencyHz frequencies of the programme, rising
 * @param degrees the difference, without jumps of whole turns, negative where right is late
 * @param uncertaintyDegrees its expanded uncertainty, k = 2
 */
public record PairPhaseCurve(double[] frequencyHz, double[] degrees, double[] uncertaintyDegrees) {

    /** Checks that the lists belong together. */
    public PairPhaseCurve {
        Columns.requireEven(frequencyHz, degrees, uncertaintyDegrees);
    }
}
