package offtape.report.measure.sweep;

import java.util.Arrays;

/**
 * What a filter's answer to a sweep lacks of its steady answer. With H = exp(a + iθ) over u = ln ω,
 * a sweep whose frequency grows e-fold in L seconds comes back as H·(1 + ε), Re ε = (θ″ − θ′ +
 * 2a′θ′) / (2Lω): from h(τ) against φ(t − τ) = φ − ωτ + ω̇τ²/2 with ω̇ = ω/L. For a high-pass of
 * second order at 28 Hz and L = 1.7 s that is −0.02 dB at its edge. The phase is taken to be the
 * least that goes with the magnitude, or what share of it the path turns ({@link PhaseShare}): the
 * measured one holds the flutter too.
 *
 * <p>Source of the phase: H. W. Bode, "Network Analysis and Feedback Amplifier Design", 1945: θ(u)
 * = (1/π) ∫ a′(v) ln coth(|v − u|/2) dv.
 */
final class SweepLag {

    private static final double NEPERS_A_DB = Math.log(10) / 20;

    /** Distance over which the phase is differentiated: a quarter of an octave. */
    private static final double STEP = Math.log(2) / 4;

    /** The slope below the sweep's start is that of so much above it. */
    private static final double END = Math.log(2) / 3;

    private static final int BEYOND = 200;

    private final double[] u;
    private final double[] nepers;
    private final double growthSeconds;

    /**
     * @param hz frequencies, rising
     * @param db magnitude at each
     * @param growthSeconds L
     */
    SweepLag(double[] hz, double[] db, double growthSeconds) {
        this.u = Arrays.stream(hz).map(f -> Math.log(2 * Math.PI * f)).toArray();
        this.nepers = Arrays.stream(db).map(d -> NEPERS_A_DB * d).toArray();
        this.growthSeconds = growthSeconds;
    }

    /** The least phase that goes with the magnitude, radians. */
    double[] leastPhase() {
        return Arrays.stream(u).map(this::phase).toArray();
    }

    /**
     * How much too loud each frequency of the curve is read, dB, if the path turns the phase.
     *
     * @param phase as {@link #leastPhase}
     */
    double[] excessDb(double[] phase) {
        double[] excess = new double[u.length];
        for (int i = 0; i < u.length; i++) {
            double below = u[i] - STEP;
            double low = below < u[0] ? phase(below) : at(phase, below);
            double high = at(phase, u[i] + STEP);
            double slope = (high - low) / (2 * STEP);
            double bend = (high - 2 * phase[i] + low) / (STEP * STEP);
            double rise = (at(nepers, u[i] + STEP / 4) - at(nepers, u[i] - STEP / 4)) / (STEP / 2);
            double share = (bend - slope + 2 * rise * slope) / (2 * growthSeconds * Math.exp(u[i]));
            excess[i] = share / NEPERS_A_DB;
        }
        return excess;
    }

    /** Least phase at a place, radians. */
    double phase(double place) {
        double sum = 0;
        for (int j = 0; j + 1 < u.length; j++) {
            sum += (nepers[j + 1] - nepers[j]) * weight(u[j], u[j + 1], place);
        }
        double slope = (at(nepers, u[0] + END) - nepers[0]) / END;
        double width = STEP / 4;
        for (int k = 0; k < BEYOND; k++) {
            double to = u[0] - k * width;
            sum += slope * width * weight(to - width, to, place);
        }
        return sum / Math.PI;
    }

    /** Mean of ln coth(|v − place|/2) between two places. */
    private static double weight(double from, double to, double place) {
        double distance = Math.abs((from + to) / 2 - place);
        double width = to - from;
        return distance < width
                ? Math.log(2 / width) + 1
                : -Math.log(StrictMath.tanh(distance / 2));
    }

    /** Straight between points, on with the last slope beyond them. */
    private double at(double[] y, double place) {
        int i = Arrays.binarySearch(u, place);
        int left = Math.max(0, Math.min(u.length - 2, i >= 0 ? i : -i - 2));
        double part = (place - u[left]) / (u[left + 1] - u[left]);
        return y[left] + part * (y[left + 1] - y[left]);
    }
}
