package offtape.core.music;

import offtape.core.random.Draw;

/**
 * A stroke of noise, as of a snare or cymbals: noise values {@value #GRAINS_HZ} times a second with
 * straight lines between them, less what came shortly before where it is to be bright.
 *
 * @param beginSeconds when it begins
 * @param seconds how long it is heard
 * @param place between left (0) and right (1)
 * @param peak at its beginning
 * @param bright 0 for even noise, 1 for its changes alone
 * @param decaySeconds in which it loses 8.7 dB
 * @param noise where its values are from
 */
record NoiseStroke(
        double beginSeconds,
        double seconds,
        double place,
        double peak,
        double bright,
        double decaySeconds,
        Draw noise)
        implements Sounding {

    /** Values of noise a second: sound up to some 20 kHz, whatever the sample rate. */
    static final int GRAINS_HZ = 36_000;

    private static final double ATTACK_SECONDS = 0.0005;

    @Override
    public double at(double t) {
        double grains = t * GRAINS_HZ;
        long left = (long) grains;
        double part = grains - left;
        double value = (1 - part) * grain(left) + part * grain(left + 1);
        double end = Math.min(1, (seconds - t) / (10 * ATTACK_SECONDS));
        double envelope = Math.min(1, t / ATTACK_SECONDS) * end;
        return peak * envelope * StrictMath.exp(-t / decaySeconds) * value;
    }

    private double grain(long place) {
        return noise.around(place + 1) - bright * noise.around(place);
    }
}
