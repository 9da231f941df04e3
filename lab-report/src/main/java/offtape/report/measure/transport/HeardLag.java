package offtape.report.measure.transport;

/**
 * When what is heard was written. How late the return comes follows from the heard deviation
 * itself: the moment of writing runs 1 + r times as fast as that of hearing.
 */
final class HeardLag {

    private final double[] written;

    private HeardLag(double[] written) {
        this.written = written;
    }

    /**
     * Follows the delay through a stretch.
     *
     * @param heard deviation, percent, about 0
     * @param meanSeconds mean delay
     */
    static HeardLag of(double[] heard, double rateHz, double meanSeconds) {
        double[] early = new double[heard.length];
        double sum = 0;
        double mean = 0;
        for (int i = 0; i < early.length; i++) {
            early[i] = sum;
            mean += sum / early.length;
            int next = Math.min(i + 1, early.length - 1);
            sum += (heard[i] + heard[next]) / 200 / rateHz;
        }
        double[] written = new double[early.length];
        double middle = (early.length - 1) / 2.0;
        for (int i = 0; i < written.length; i++) {
            written[i] = (i - middle) / rateHz - meanSeconds + early[i] - mean;
        }
        return new HeardLag(written);
    }

    /** When the sample was written, seconds from the middle of the stretch. */
    double writtenAt(int sample) {
        return written[sample];
    }
}
