package offtape.core.standard;

/** What lengths on a transport mean in time: plain kinematics of tape at a steady speed. */
public final class TransportGeometry {

    private TransportGeometry() {}

    /**
     * Rate of a part that turns with the tape on its circumference, f = v / (π D), in hertz.
     *
     * @param speedMmPerS tape speed, mm/s
     * @param diameterMm diameter where the tape runs, above 0
     */
    public static double rotationHz(double speedMmPerS, double diameterMm) {
        return speedMmPerS / (Math.PI * diameterMm);
    }

    /**
     * Time from record to replay head, milliseconds.
     *
     * @param spacingMm distance of the gaps along the tape
     * @param speedMmPerS tape speed, above 0
     */
    public static double headDelayMs(double spacingMm, double speedMmPerS) {
        return 1000 * spacingMm / speedMmPerS;
    }

    /**
     * Distance of the gaps along the tape, millimetres.
     *
     * @param delayMs time from record to replay head
     * @param speedMmPerS tape speed
     */
    public static double headSpacingMm(double delayMs, double speedMmPerS) {
        return delayMs * speedMmPerS / 1000;
    }
}
