package offtape.core.music;

/**
 * A note of many harmonics, with vibrato, that fades in, decays and fades out.
 *
 * @param beginSeconds when it begins
 * @param seconds how long it is held
 * @param place between left (0) and right (1)
 * @param frequencyHz of its fundamental
 * @param vibrato depth of its vibrato as a share of the frequency
 * @param decaySeconds in which it loses 8.7 dB
 * @param amplitudes of its harmonics, the fundamental's first
 */
record HarmonicNote(
        double beginSeconds,
        double seconds,
        double place,
        double frequencyHz,
        double vibrato,
        double decaySeconds,
        double[] amplitudes)
        implements Sounding {

    private static final double VIBRATO_HZ = 5.3;
    private static final double ATTACK_SECONDS = 0.008;
    private static final double RELEASE_SECONDS = 0.05;

    @Override
    public double at(double t) {
        double swing = vibrato / VIBRATO_HZ * (1 - StrictMath.cos(2 * Math.PI * VIBRATO_HZ * t));
        double phase = 2 * Math.PI * frequencyHz * t + frequencyHz * swing;
        return envelope(t) * sum(StrictMath.cos(phase), StrictMath.sin(phase));
    }

    /** Imaginary part of Σ aₖ zᵏ by Horner's rule. */
    private double sum(double cos, double sin) {
        double re = 0;
        double im = 0;
        for (int k = amplitudes.length - 1; k >= 0; k--) {
            double sumRe = re + amplitudes[k];
            re = sumRe * cos - im * sin;
            im = sumRe * sin + im * cos;
        }
        return im;
    }

    private double envelope(double t) {
        double in = Math.min(1, t / ATTACK_SECONDS);
        double out = Math.min(1, (seconds - t) / RELEASE_SECONDS);
        return smooth(in) * smooth(out) * StrictMath.exp(-t / decaySeconds);
    }

    private static double smooth(double x) {
        return x * x * (3 - 2 * x);
    }
}
