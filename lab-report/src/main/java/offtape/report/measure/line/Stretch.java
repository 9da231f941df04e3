package offtape.report.measure.line;

/**
 * Evenly spaced samples, seen through a Hann window. Time counts from their middle.
 *
 * @param samples percent; changed in place when lines are taken out
 * @param rateHz samples a second
 */
record Stretch(double[] samples, double rateHz) {

    /** Samples after which a rotating phasor is computed anew. */
    private static final int ANEW = 256;

    int size() {
        return samples.length;
    }

    /** Length, seconds. */
    double seconds() {
        return samples.length / rateHz;
    }

    /** Time of a sample, seconds from the middle. */
    double at(double index) {
        return (index - (samples.length - 1) / 2.0) / rateHz;
    }

    /** Hann's window at a time. */
    double window(double seconds) {
        return 0.5 + 0.5 * Math.cos(2 * Math.PI * seconds / seconds());
    }

    /** Takes a line out, or puts it back with −1. */
    void subtract(Line line, double times) {
        Phasors p = phasors(line);
        for (int i = 0; i < samples.length; i++) {
            samples[i] -= times * (line.re() * p.cos()[i] + line.im() * p.sin()[i]);
        }
    }

    /** Cosine and sine of a line's phase at every sample. */
    record Phasors(double[] cos, double[] sin) {}

    Phasors phasors(Line line) {
        double[] cos = new double[size()];
        double[] sin = new double[size()];
        double step = 2 * Math.PI * line.hz() / rateHz;
        double stepCos = Math.cos(step);
        double stepSin = Math.sin(step);
        for (int i = 0; i < cos.length; i++) {
            if (line.moves() || i % ANEW == 0) {
                double phase = 2 * Math.PI * line.hz() * Line.turned(at(i), line.bend());
                cos[i] = Math.cos(phase);
                sin[i] = Math.sin(phase);
            } else {
                cos[i] = cos[i - 1] * stepCos - sin[i - 1] * stepSin;
                sin[i] = sin[i - 1] * stepCos + cos[i - 1] * stepSin;
            }
        }
        return new Phasors(cos, sin);
    }

    /** The windows of all samples. */
    double[] windows() {
        double[] w = new double[size()];
        for (int i = 0; i < w.length; i++) {
            w[i] = window(at(i));
        }
        return w;
    }
}
