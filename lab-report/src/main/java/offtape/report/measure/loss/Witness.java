package offtape.report.measure.loss;

import offtape.core.standard.TrackSpacing;
import offtape.core.unit.Quantity;

/**
 * What the delay between the channels says of azimuth: track width times tan α, which is what
 * azimuth loss depends on. The distance by which one track is read late is v·Δt = s·tan α, so that
 * w·tan α is the share w/s of it. Gaps of one head stand up to 2.5 µm out of line (common practice,
 * from memory, no source), which looks like azimuth and is none.
 *
 * @param productUm w·|tan α|, µm
 * @param deviationUm its standard deviation, µm
 * @param minutesPerUm arc minutes for a µm of the product, or 0 if the track width is not known
 */
record Witness(double productUm, double deviationUm, double minutesPerUm) {

    /** Standard deviation of the gaps' places. */
    private static final double GAP_SCATTER_UM = 1.25;

    /** Width over distance of tracks lies between 0.29 and 0.79 in the usual formats. */
    private static final double USUAL_SHARE = 0.54;

    private static final double USUAL_SHARE_DEVIATION = 0.15;

    private static final double ARC_MINUTES = Math.toDegrees(60);

    /**
     * The witness of a delay, or null if the delay is not known.
     *
     * @param delay between the channels, µs
     * @param tracks where the tracks lie, or null
     */
    static Witness of(Quantity delay, TrackSpacing tracks, double speedMmPerS) {
        if (!delay.isKnown()) {
            return null;
        }
        double late = Math.abs(delay.value()) * speedMmPerS / 1000;
        double doubt = Math.hypot(delay.uncertainty() / 2 * speedMmPerS / 1000, GAP_SCATTER_UM);
        if (tracks == null || tracks.widthMm().isEmpty()) {
            double deviation = Math.hypot(USUAL_SHARE * doubt, USUAL_SHARE_DEVIATION * late);
            return new Witness(USUAL_SHARE * late, deviation, 0);
        }
        double width = tracks.widthMm().getAsDouble();
        double share = width / tracks.mm();
        double spread = share * tracks.toleranceMm() / 2 / tracks.mm();
        return new Witness(
                share * late, Math.hypot(share * doubt, spread * late), ARC_MINUTES / 1000 / width);
    }

    /** How far a product is off, in standard deviations. */
    double off(double product) {
        return (product - productUm) / deviationUm;
    }
}
