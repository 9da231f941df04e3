package offtape.report.apply.model;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import offtape.core.model.Emphasis;
import offtape.report.result.HarmonicCurve;
import offtape.report.result.PairPhaseCurve;
import org.junit.jupiter.api.Test;

/** A steep upper edge beside losses that turn nothing, whose phases are told up to whole turns. */
class PhaseFitTest {

    private static final double EDGE_HZ = 15_500;
    private static final double LOSS_DB_AT_10_KHZ = 5;
    private static final double LATE_MICROSECONDS = -12;

    /**
     * Edges of Butterworth's form turn up to three half turns at their corner. Where all that falls
     * is taken for losses on one channel and for amplifiers on the other, what is expected of one
     * against the other is more than half a turn off. What the fit finds agrees with the truth but
     * for a delay, within the deviation that each angle has: 1 degree stated and 1 of the model.
     */
    @Test
    void findsTheTurnsOfSteepEdgesWhateverIsExpected() {
        for (int order = 1; order <= 6; order++) {
            PhaseFit.Found found = fitted(order).found();
            for (double[] phase : found.phase()) {
                double worst = worstDegrees(phase, order);
                assertTrue(worst < 1.4, "order " + order + ": " + worst);
            }
            assertEquals(LATE_MICROSECONDS, lateMicroseconds(found, 5000), 0.1);
            assertEquals(LATE_MICROSECONDS, lateMicroseconds(found, 14_000), 0.1);
        }
    }

    /** Of right against left, in phases and delay together. */
    private static double lateMicroseconds(PhaseFit.Found found, double hz) {
        double ahead = LogGrid.at(found.phase()[1], hz) - LogGrid.at(found.phase()[0], hz);
        return 1e6 * (found.lateSeconds() - ahead / (2 * Math.PI * hz));
    }

    private static PhaseFit fitted(int order) {
        double[] db = edgeDb(order);
        for (int i = 0; i < db.length; i++) {
            db[i] -= LOSS_DB_AT_10_KHZ * LogGrid.hz(i) / 10_000;
        }
        PhaseBasis[] bases = {
            new PhaseBasis(db, new double[LogGrid.SIZE]), new PhaseBasis(db, db.clone())
        };
        PhaseFit fit = new PhaseFit(bases, 0);
        for (int c = 0; c < 2; c++) {
            fit.hear(c, List.of(harmonic(2, order), harmonic(3, order)), Emphasis.NONE);
        }
        fit.hear(pair());
        return fit;
    }

    private static double[] edgeDb(int order) {
        return LogGrid.sampled(
                hz -> Math.max(-200, -10 * Math.log10(1 + Math.pow(hz / EDGE_HZ, 2.0 * order))));
    }

    /** Phase of Butterworth's filter: each of its poles turns by the angle it is seen under. */
    private static double edge(int order, double hz) {
        double sum = 0;
        for (int k = 1; k <= order; k++) {
            double angle = Math.PI * (2 * k + order - 1) / (2 * order);
            sum -= Math.atan2(hz / EDGE_HZ - Math.sin(angle), -Math.cos(angle));
        }
        return sum;
    }

    /** A sixth of an octave between points, each certain within 2 degrees. */
    private static HarmonicCurve harmonic(int n, int order) {
        List<HarmonicCurve.Point> points = new ArrayList<>();
        for (double hz = 40; n * hz < 21_000; hz *= Math.pow(2, 1.0 / 6)) {
            double told = edge(order, n * hz) - n * edge(order, hz) + (n == 3 ? Math.PI : 0);
            double degrees = Math.toDegrees(Math.IEEEremainder(told, 2 * Math.PI));
            points.add(new HarmonicCurve.Point(hz, 1.0, 0.01, 0.01, degrees, 2.0));
        }
        return new HarmonicCurve(n, points);
    }

    private static PairPhaseCurve pair() {
        double[] hz = new double[60];
        double[] degrees = new double[60];
        double[] uncertainty = new double[60];
        for (int i = 0; i < hz.length; i++) {
            hz[i] = 20 * Math.pow(2, i / 6.0);
            degrees[i] = -360e-6 * hz[i] * LATE_MICROSECONDS;
            uncertainty[i] = 0.2;
        }
        return new PairPhaseCurve(hz, degrees, uncertainty);
    }

    /** Between 200 Hz and 15 kHz, after the delay that agrees best; of a delay nothing is told. */
    private static double worstDegrees(double[] phase, int order) {
        double along = 0;
        double size = 0;
        for (double hz = 200; hz < 15_000; hz += 100) {
            along += hz * (LogGrid.at(phase, hz) - edge(order, hz));
            size += hz * hz;
        }
        double worst = 0;
        for (double hz = 200; hz < 15_000; hz += 100) {
            double off = LogGrid.at(phase, hz) - edge(order, hz) - along / size * hz;
            worst = Math.max(worst, Math.abs(Math.toDegrees(off)));
        }
        return worst;
    }
}
