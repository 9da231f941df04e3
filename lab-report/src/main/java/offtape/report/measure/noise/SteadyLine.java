package offtape.report.measure.noise;

/** Whether a line is as steady as the mains: neither decaying nor moving nor trembling. */
final class SteadyLine {

    private static final double BLOCK_S = 0.5;
    private static final int MOST_BLOCKS = 8;

    /** The power of a steady line stays within this factor of its mean, beside noise. */
    private static final double STEADY = 2;

    /** Beside noise of so many deviations. */
    private static final double DEVIATIONS = 4;

    /** The line's frequency may tremble by this share, rms: more than wow does, less than music. */
    private static final double TREMBLE = 0.006;

    private static final double TREMBLE_FROM_LINES = 3;
    private static final double TREMBLE_TO_HZ = 8;

    /** A steady line holds all power within so many lines to either side … */
    private static final double NEXT_LINES = 2.5;

    /** … and may seem wider by this factor. */
    private static final double WIDER = 1.4;

    /** A line may lie this many lines of the spectrum off its place. */
    private static final double OFF_PLACE = 0.6;

    private SteadyLine() {}

    /**
     * Judges a line.
     *
     * @param hz where it should lie
     * @param noise mean square that noise alone shows there
     */
    static boolean is(LineSpectrum spectrum, double hz, double noise) {
        double off = Math.abs(spectrum.highest(hz, 1.5) - hz) * spectrum.seconds();
        return off < OFF_PLACE
                && narrow(spectrum, hz, noise)
                && holds(spectrum, hz, noise)
                && calm(spectrum, hz, noise);
    }

    /**
     * Power in the lines next to it belongs to it alone: a note that is struck again and again is
     * wider. The noise of so many lines has a deviation of its root.
     */
    private static boolean narrow(LineSpectrum spectrum, double hz, double noise) {
        double lines = 2 * NEXT_LINES / LineSpectrum.WIDTH;
        double around = spectrum.powerAround(hz, NEXT_LINES) - lines * noise;
        double line = spectrum.power(hz);
        double room = DEVIATIONS * Math.sqrt(2 * line * noise + lines * noise * noise);
        return around < WIDER * line + room;
    }

    /** Its power in each of several blocks is about the same. */
    private static boolean holds(LineSpectrum spectrum, double hz, double noise) {
        int blocks = (int) Math.min(MOST_BLOCKS, Math.floor(spectrum.seconds() / BLOCK_S));
        double[] x = spectrum.samples();
        int length = x.length / Math.max(1, blocks);
        double[] power = new double[blocks];
        double mean = 0;
        for (int b = 0; b < blocks; b++) {
            power[b] = blockPower(x, b * length, length, hz / spectrum.rateHz());
            mean += power[b] / blocks;
        }
        double blockNoise = noise * blocks;
        double room = DEVIATIONS * Math.sqrt(2 * mean * blockNoise + blockNoise * blockNoise);
        for (double p : power) {
            if (p > STEADY * mean + room || p < mean / STEADY - room) {
                return false;
            }
        }
        return blocks > 1;
    }

    /** Mean square of a sine of so many turns a sample, under a Hann window. */
    private static double blockPower(double[] x, int from, int length, double turns) {
        double re = 0;
        double im = 0;
        double sum = 0;
        double turn = 2 * Math.PI * turns;
        double stepCos = Math.cos(turn);
        double stepSin = Math.sin(turn);
        double cos = 1;
        double sin = 0;
        for (int i = 0; i < length; i++) {
            double w = 0.5 - 0.5 * Math.cos(2 * Math.PI * (i + 0.5) / length);
            sum += w;
            re += w * x[from + i] * cos;
            im += w * x[from + i] * sin;
            double next = cos * stepCos - sin * stepSin;
            sin = sin * stepCos + cos * stepSin;
            cos = next;
        }
        return 2 * (re * re + im * im) / (sum * sum);
    }

    /**
     * Modulation puts power p at ±δ on both sides; Σ p·δ² over the power of the line is the mean
     * square of its frequency's deviation. What lies on one side only is another line. Counted is
     * what stands out of the noise by four deviations.
     */
    private static boolean calm(LineSpectrum spectrum, double hz, double noise) {
        double line = 1 / spectrum.seconds();
        double squares = 0;
        double doubt = 0;
        for (double d = TREMBLE_FROM_LINES * line; d < TREMBLE_TO_HZ; d += line) {
            double both = Math.min(spectrum.power(hz - d), spectrum.power(hz + d));
            squares += 2 * (both - noise) * d * d / LineSpectrum.WIDTH;
            doubt += 4 * noise * noise * d * d * d * d;
        }
        double limit = TREMBLE * hz * TREMBLE * hz * spectrum.power(hz);
        return squares - DEVIATIONS * Math.sqrt(doubt) < limit;
    }
}
