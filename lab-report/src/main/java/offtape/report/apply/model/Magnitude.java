package offtape.report.apply.model;

import java.util.List;
import offtape.core.model.Emphasis;
import offtape.core.model.TapeCurve;
import offtape.report.result.HarmonicCurve;
import offtape.report.result.Response;

/**
 * What is known of a channel but for its phase.
 *
 * @param levelDb response to small tones on the grid, 0 dB at 1 kHz
 * @param electronicDb what amplifiers are known to take of the highs, on the grid, or null
 * @param bent curve and emphasis
 * @param harmonics those of its sweeps
 * @param quiet its quietest sweep, or null
 */
record Magnitude(
        double[] levelDb,
        double[] electronicDb,
        BentModel bent,
        List<HarmonicCurve> harmonics,
        Response quiet) {

    /** Nothing bends. */
    static final BentModel STRAIGHT = new BentModel(TapeCurve.STRAIGHT, Emphasis.NONE);

    /** A channel of which nothing is known. */
    static final Magnitude FLAT =
            new Magnitude(new double[LogGrid.SIZE], null, STRAIGHT, List.of(), null);

    private static final double PHASE_FROM_HZ = 4000;
    private static final int PHASE_POINTS = 4;

    /** Level at which the reference tone returns re a small tone of 1 kHz, dB. */
    double referenceDb(double frequencyHz) {
        return LogGrid.at(levelDb, frequencyHz) + bent.gainDb(frequencyHz, 0);
    }

    /** Whether harmonics tell the phase of the highs. */
    boolean tellsPhase() {
        return harmonics.stream().mapToLong(Magnitude::points).sum() >= PHASE_POINTS;
    }

    private static long points(HarmonicCurve curve) {
        return curve.points().stream()
                .filter(p -> p.phaseDegrees() != null)
                .filter(p -> curve.order() * p.frequencyHz() > PHASE_FROM_HZ)
                .count();
    }
}
