package offtape.core.align;

/** A mark as a path returns it, written down from the mark's formula: nothing is interpolated. */
final class HeardMark {

    /** A rate at which a mark is small: 2000 frames, from 500 Hz to 0.4 of it, 1600 Hz. */
    static final int RATE = 4000;

    private HeardMark() {}

    /**
     * Adds a mark to a sound.
     *
     * @param x the sound
     * @param rate its sample rate, Hz
     * @param middle where the mark's middle lies, frames
     * @param speed how fast it came back, 1 if as it was sent
     * @param gain its peak
     */
    static void add(double[] x, int rate, double middle, double speed, double gain) {
        AlignmentMark mark = new AlignmentMark(rate);
        for (int i = 0; i < x.length; i++) {
            double t = (i - middle) * speed / rate;
            x[i] +=
                    Math.abs(t) < AlignmentMark.GLIDE_S
                            ? gain * mark.envelope(t) * Math.cos(mark.phase(t))
                            : 0;
        }
    }

    /** Adds a hum of 50 Hz. */
    static void hum(double[] x, int rate, double peak) {
        for (int i = 0; i < x.length; i++) {
            x[i] += peak * Math.sin(2 * Math.PI * 50 * i / rate);
        }
    }

    /** Sum of squares. */
    static double energy(double[] x) {
        double sum = 0;
        for (double v : x) {
            sum += v * v;
        }
        return sum;
    }
}
