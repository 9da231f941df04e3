package offtape.core.model;

import offtape.core.random.Draw;

/**
 * A sum of steady sines.
 *
 * @param frequencyHz of each, above 0
 * @param peak of each
 * @param phase of each at time 0, radians
 */
public record SteadyLines(double[] frequencyHz, double[] peak, double[] phase) {

    /** Lines whose phases are drawn. */
    public static SteadyLines drawn(double[] frequencyHz, double[] peak, long seed) {
        Draw draw = Draw.ofSeed(seed);
        double[] phase = new double[peak.length];
        for (int i = 0; i < phase.length; i++) {
            phase[i] = 2 * Math.PI * draw.at(i + 1);
        }
        return new SteadyLines(frequencyHz, peak, phase);
    }

    /** Adds the lines to samples of a rate, from a frame on. */
    public void addTo(double[] out, long startFrame, double rateHz) {
        for (int n = 0; n < peak.length; n++) {
            double step = 2 * Math.PI * frequencyHz[n] / rateHz;
            for (int i = 0; i < out.length; i++) {
                out[i] += peak[n] * Math.sin(step * (startFrame + i) + phase[n]);
            }
        }
    }

    /** The time integral of the lines, each without its constant. */
    public SteadyLines integral() {
        double[] size = new double[peak.length];
        double[] turned = new double[peak.length];
        for (int n = 0; n < size.length; n++) {
            size[n] = peak[n] / (2 * Math.PI * frequencyHz[n]);
            turned[n] = phase[n] - Math.PI / 2;
        }
        return new SteadyLines(frequencyHz, size, turned);
    }
}
