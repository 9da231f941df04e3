package offtape.report.measure.channel;

import offtape.core.standard.TrackSpacing;
import offtape.core.text.Sentences;
import offtape.core.unit.Quantity;

/**
 * From a delay between the channels to the angle at which the head stands: tan α = v·Δt / s, s
 * between the middles of the two tracks.
 */
public final class Azimuth {

    private static final Sentences SAID = Sentences.near(Azimuth.class);

    private static final double ARC_MINUTES = Math.toDegrees(60);

    private final TrackSpacing tracks;
    private final Double tapeSpeedMmPerS;
    private final double speedRatio;

    /**
     * @param tracks distance of the tracks, or null if not given
     * @param tapeSpeedMmPerS nominal tape speed, or null if not given
     * @param speedRatio actual over nominal tape speed
     */
    public Azimuth(TrackSpacing tracks, Double tapeSpeedMmPerS, double speedRatio) {
        this.tracks = tracks;
        this.tapeSpeedMmPerS = tapeSpeedMmPerS;
        this.speedRatio = speedRatio;
    }

    /**
     * The angle of a delay in µs, arc minutes; unknown with a reason that names what is missing.
     */
    public Quantity of(Quantity delay) {
        if (!delay.isKnown()) {
            return delay;
        }
        if (tracks == null) {
            return Quantity.unknown(SAID.say("no-tracks"));
        }
        if (tapeSpeedMmPerS == null) {
            return Quantity.unknown(SAID.say("no-tape-speed"));
        }
        double millimetres = tapeSpeedMmPerS * speedRatio * 1e-6;
        double tangent = millimetres * delay.value() / tracks.mm();
        double angle = ARC_MINUTES * Math.atan(tangent);
        double byDelay = ARC_MINUTES * millimetres * delay.uncertainty() / tracks.mm();
        double bySpacing = Math.abs(angle) * tracks.toleranceMm() / tracks.mm();
        return Quantity.known(angle, "arc min", Math.hypot(byDelay, bySpacing));
    }
}
