package offtape.core.music;

/**
 * A stroke on a skin: a tone that falls from one pitch to another while it dies away.
 *
 * @param beginSeconds when it begins
 * @param seconds how long it is heard
 * @param place between left (0) and right (1)
 * @param peak at its beginning
 * @param fromHz pitch at its beginning
 * @param toHz pitch it falls to
 * @param decaySeconds in which it loses 8.7 dB
 */
record SkinStroke(
        double beginSeconds,
        double seconds,
        double place,
        double peak,
        double fromHz,
        double toHz,
        double decaySeconds)
        implements Sounding {

    private static final double FALL_SECONDS = 0.03;
    private static final double ATTACK_SECONDS = 0.001;

    @Override
    public double at(double t) {
        double fallen = FALL_SECONDS * (1 - StrictMath.exp(-t / FALL_SECONDS));
        double phase = 2 * Math.PI * (toHz * t + (fromHz - toHz) * fallen);
        double end = Math.min(1, (seconds - t) / FALL_SECONDS);
        double envelope = Math.min(1, t / ATTACK_SECONDS) * end;
        return peak * envelope * StrictMath.exp(-t / decaySeconds) * StrictMath.sin(phase);
    }
}
