package offtape.report.apply.model;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import offtape.core.model.Emphasis;
import offtape.report.result.HarmonicCurve;
import offtape.report.result.PairPhaseCurve;
import offtape.report.result.Response;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.RealMatrix;

/**
 * The phases of both channels and the delay between them. A sweep on moving tape hides them, since
 * motion turns 10 kHz by whole turns. What is known beforehand: amplifiers turn the least phase
 * that goes with their magnitude, losses between tape and head none. How much of the least phase
 * each band of slopes really turns is then corrected by what is free of motion: the harmonics of
 * the loud sweep, which sound together with their fundamental (the phase of order n less n times
 * the fundamental's is θ(nf) − n·θ(f) of what lies behind the curve), and the phase of one channel
 * against the other. Least squares with what is expected as a normal prior.
 */
final class PhaseFit {

    private static final int UNKNOWNS = 2 * PhaseBasis.SIZE + 2;
    private static final int DELAY = UNKNOWNS - 2;
    private static final int SWEEP_DELAY = UNKNOWNS - 1;
    private static final double MICROSECOND = 1e-6;
    private static final double DELAY_DEVIATION = 30;
    private static final double SWEEP_DELAY_DEVIATION = 300;

    /** Motion moves neighbouring frequencies alike, so that many of them tell little more. */
    private static final double ALIKE = 3;

    private static final double OWN_SWEEP_RADIANS = Math.toRadians(0.5);

    /** From here on a turn is not told from whole ones. */
    private static final double MOST_RADIANS = 1;

    private static final double HIGHEST_HZ = 21_000;

    /** What a model of curve and emphasis may be off, radians. */
    private static final double OWN_RADIANS = Math.toRadians(1);

    private static final int SWEEP_STEP = 4;
    private static final double SWEEP_FROM = 1.5;
    private static final double NEPER_DB = 20 / Math.log(10);
    private static final double[] START_SHARES = {0, 0.5, 1};
    private static final double OWN_PAIR_RADIANS = Math.toRadians(0.2);

    private final PhaseBasis[] channels;
    private final double[] mean = new double[UNKNOWNS];
    private final TurnedFit fit;

    /**
     * @param channels left and right
     * @param lateMicroseconds by how much right is thought to be late
     */
    PhaseFit(PhaseBasis[] channels, double lateMicroseconds) {
        this.channels = channels;
        RealMatrix prior = new Array2DRowRealMatrix(UNKNOWNS, UNKNOWNS);
        for (int c = 0; c < 2; c++) {
            int first = c * PhaseBasis.SIZE;
            for (int i = 0; i < PhaseBasis.SIZE; i++) {
                mean[first + i] = channels[c].mean(i);
                for (int j = 0; j < PhaseBasis.SIZE; j++) {
                    prior.setEntry(first + i, first + j, PhaseBasis.covariance(i, j));
                }
            }
        }
        mean[DELAY] = lateMicroseconds;
        prior.setEntry(DELAY, DELAY, DELAY_DEVIATION * DELAY_DEVIATION);
        prior.setEntry(SWEEP_DELAY, SWEEP_DELAY, SWEEP_DELAY_DEVIATION * SWEEP_DELAY_DEVIATION);
        fit = new TurnedFit(mean, prior);
    }

    /**
     * Takes the harmonics of a sweep on a channel into account.
     *
     * @param emphasis what turns ahead of the curve and back behind it
     */
    void hear(int channel, List<HarmonicCurve> harmonics, Emphasis emphasis) {
        for (HarmonicCurve curve : harmonics) {
            boolean turned = curve.order() == 3 || evenTurned(curve);
            for (HarmonicCurve.Point p : curve.points()) {
                if (p.phaseDegrees() != null && curve.order() * p.frequencyHz() < HIGHEST_HZ) {
                    hear(channel, p, curve.order(), turned ? Math.PI : 0, emphasis);
                }
            }
        }
    }

    /** Whether the second harmonic is that of a curve that bends to the negative side. */
    static boolean evenTurned(HarmonicCurve curve) {
        double sum = 0;
        for (HarmonicCurve.Point p : curve.points()) {
            if (p.phaseDegrees() != null && p.frequencyHz() > 200 && p.frequencyHz() < 2500) {
                sum += Math.cos(Math.toRadians(p.phaseDegrees())) / p.phaseUncertaintyDegrees();
            }
        }
        return curve.order() == 2 && sum < 0;
    }

    private void hear(
            int channel, HarmonicCurve.Point p, int order, double turned, Emphasis emphasis) {
        double f = p.frequencyHz();
        double[] row = new double[UNKNOWNS];
        for (int k = 0; k < PhaseBasis.SIZE; k++) {
            row[channel * PhaseBasis.SIZE + k] =
                    channels[channel].turn(k, order * f) - order * channels[channel].turn(k, f);
        }
        double emphasised = emphasis.phase(order * f) - order * emphasis.phase(f);
        double own = Math.toRadians(p.phaseUncertaintyDegrees() / 2);
        fit.add(
                order * f,
                row,
                Math.toRadians(p.phaseDegrees()) - turned + emphasised,
                Math.hypot(OWN_RADIANS, own));
    }

    /**
     * Takes the phase of a sweep itself into account as far as motion leaves it.
     *
     * @param sweep the quietest one of a channel
     * @param lateSeconds root mean square of the lateness that motion gives
     * @param turned whether the channel is turned over
     */
    void hear(int channel, Response sweep, double lateSeconds, boolean turned) {
        double[] hz = sweep.frequencyHz();
        for (int i = 0; sweep.phaseDegrees() != null && i < hz.length; i += SWEEP_STEP) {
            double f = hz[i];
            double moved = ALIKE * 2 * Math.PI * f * lateSeconds;
            double noise = sweep.uncertaintyDb()[i] / NEPER_DB / 2;
            double deviation = Math.hypot(Math.hypot(moved, noise), OWN_SWEEP_RADIANS);
            if (f < SWEEP_FROM * hz[0] || deviation > MOST_RADIANS) {
                continue;
            }
            double[] row = new double[UNKNOWNS];
            for (int k = 0; k < PhaseBasis.SIZE; k++) {
                row[channel * PhaseBasis.SIZE + k] = channels[channel].turn(k, f);
            }
            row[DELAY] = -2 * Math.PI * f * MICROSECOND * (channel - 0.5);
            row[SWEEP_DELAY] = -2 * Math.PI * f * MICROSECOND;
            double value = Math.toRadians(sweep.phaseDegrees()[i]) - (turned ? Math.PI : 0);
            fit.add(f, row, value, deviation);
        }
    }

    /** Takes the phase of right less left into account; half a turn of all of it is polarity. */
    void hear(PairPhaseCurve pair) {
        double halfTurns = oppositeTurn(pair);
        for (int i = 0; i < pair.frequencyHz().length; i++) {
            double f = pair.frequencyHz()[i];
            double[] row = new double[UNKNOWNS];
            for (int k = 0; k < PhaseBasis.SIZE; k++) {
                row[k] = -channels[0].turn(k, f);
                row[PhaseBasis.SIZE + k] = channels[1].turn(k, f);
            }
            row[DELAY] = -2 * Math.PI * f * MICROSECOND;
            double own = Math.toRadians(pair.uncertaintyDegrees()[i] / 2);
            double value = Math.toRadians(pair.degrees()[i]) - halfTurns;
            fit.add(f, row, value, Math.hypot(OWN_PAIR_RADIANS, own));
        }
    }

    /** Half a turn if the channels are of opposite polarity, else 0, radians. */
    static double oppositeTurn(PairPhaseCurve pair) {
        if (pair == null || pair.frequencyHz().length == 0) {
            return 0;
        }
        return Math.abs(Math.rint(pair.degrees()[0] / 180)) % 2 * Math.PI;
    }

    /**
     * What was found.
     *
     * @param phase of left and right, radians, on the grid
     * @param lateSeconds by how much right is late besides
     */
    record Found(double[][] phase, double lateSeconds) {}

    /** Losses that all turn and that all do not, in case what is expected of them is wrong. */
    private List<double[]> starts() {
        List<double[]> starts = new ArrayList<>();
        for (double share : START_SHARES) {
            double[] start = mean.clone();
            for (int k = 0; k < 2 * PhaseBasis.SIZE; k++) {
                if (PhaseBasis.isOfHighs(k % PhaseBasis.SIZE)) {
                    start[k] = share;
                }
            }
            starts.add(start);
        }
        return starts;
    }

    Found found() {
        double[] x = fit.solve(starts());
        double[][] phase = new double[2][];
        for (int c = 0; c < 2; c++) {
            int first = c * PhaseBasis.SIZE;
            phase[c] = channels[c].phase(Arrays.copyOfRange(x, first, first + PhaseBasis.SIZE));
        }
        return new Found(phase, MICROSECOND * x[DELAY]);
    }
}
