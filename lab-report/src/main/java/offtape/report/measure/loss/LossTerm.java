package offtape.report.measure.loss;

import offtape.core.standard.TapeLoss;
import offtape.core.unit.Decibels;

/**
 * One cause as a curve with one parameter θ that is 0 where the cause is absent and near which the
 * curve is smooth, so that an estimate scatters about 0 on both sides: a length for spacing and
 * thickness, the square of a length for a gap, the share of power that an amplifier loses at 10
 * kHz. Below 0 each curve goes on as its formula does and rises instead of falling; whoever takes
 * such an estimate for a cause must refuse it.
 *
 * <p>Sources: {@link TapeLoss}; S. Butterworth, On the theory of filter amplifiers, Wireless
 * Engineer 7 (1930), 536-541, for the amplifier.
 *
 * <p>A layer of thickness δ loses (1 − exp(−kδ))/kδ = exp(−kδ/2) · sinh(kδ/2)/(kδ/2): exactly what
 * a space of δ/2 loses, and then less by a gap of the length δ turned upside down. Beside a space,
 * only the latter counts as the layer's term ({@link #beyondSpacing}), with δ² for its parameter.
 *
 * @param cause what it is
 * @param order order of the amplifier's roll-off; number of equal apertures; 2 for a layer beside a
 *     space; 0 for the others
 * @param wavelengthUm recorded wavelength of 1 Hz, µm: tape speed; 0 for an amplifier
 * @param rateHz sample rate of a roll-off that bends towards half of it as a digital filter's does
 *     (bilinear transform; Oppenheim and Schafer); 0 for an analogue one and other causes
 */
record LossTerm(Cause cause, int order, double wavelengthUm, double rateHz) {

    private static final int BEYOND = 2;
    private static final double ROLL_OFF_HZ = 10_000;

    private static final double DB_A_NEPER = 20 / Math.log(10);
    private static final double SPACING_DB = TapeLoss.spacingDb(1, 1);

    /** Where the first term of a power series is exact enough. */
    private static final double SMALL = 1e-4;

    /** Power below which a curve is not followed into a null. */
    private static final double LEAST_POWER = 1e-6;

    static LossTerm of(Cause cause, double speedMmPerS) {
        return new LossTerm(cause, 0, TapeLoss.wavelengthUm(speedMmPerS, 1), 0);
    }

    /** A gap and azimuth together, which of both is not known: one aperture or two equal ones. */
    static LossTerm apertures(int number, double speedMmPerS) {
        return new LossTerm(Cause.APERTURE, number, TapeLoss.wavelengthUm(speedMmPerS, 1), 0);
    }

    /** A layer of δ less a space of δ/2, over δ². */
    LossTerm beyondSpacing() {
        return new LossTerm(cause, BEYOND, wavelengthUm, 0);
    }

    boolean isBeyondSpacing() {
        return cause == Cause.THICKNESS && order == BEYOND;
    }

    /** A layer by itself, over δ. */
    LossTerm alone() {
        return new LossTerm(cause, 0, wavelengthUm, 0);
    }

    /** A Butterworth low-pass; analogue if the rate is 0. */
    static LossTerm rollOff(int order, double rateHz) {
        return new LossTerm(Cause.UPPER_EDGE, order, 0, rateHz);
    }

    /** The curve in dB at a frequency of the programme. */
    double db(double theta, double hz) {
        double waves = hz / wavelengthUm;
        return switch (cause) {
            case SPACING -> theta * waves * SPACING_DB;
            case APERTURE -> order * apertureDb(theta / order * waves * waves);
            case GAP -> apertureDb(theta * waves * waves);
            case AZIMUTH -> apertureDb(theta * theta * waves * waves);
            case THICKNESS ->
                    isBeyondSpacing()
                            ? apertureDb(-theta * waves * waves)
                            : thicknessDb(2 * Math.PI * theta * waves);
            case UPPER_EDGE -> -Decibels.ofPower(Math.max(LEAST_POWER, 1 + theta * rise(hz)));
            case EQUALISATION -> throw new IllegalStateException("a shelf has no parameter");
        };
    }

    /** How the curve at a frequency changes with the parameter, dB. */
    double slope(double theta, double hz) {
        double waves = hz / wavelengthUm;
        return switch (cause) {
            case SPACING -> waves * SPACING_DB;
            case APERTURE -> waves * waves * apertureSlope(theta / order * waves * waves);
            case GAP -> waves * waves * apertureSlope(theta * waves * waves);
            case AZIMUTH ->
                    2 * theta * waves * waves * apertureSlope(theta * theta * waves * waves);
            case THICKNESS ->
                    isBeyondSpacing()
                            ? -waves * waves * apertureSlope(-theta * waves * waves)
                            : 2 * Math.PI * waves * thicknessSlope(2 * Math.PI * theta * waves);
            case UPPER_EDGE ->
                    -DB_A_NEPER / 2 * rise(hz) / Math.max(LEAST_POWER, 1 + theta * rise(hz));
            case EQUALISATION -> 0;
        };
    }

    private double bent(double hz) {
        return rateHz == 0 ? hz : rateHz / Math.PI * Math.tan(Math.PI * hz / rateHz);
    }

    private double unbent(double hz) {
        return rateHz == 0 ? hz : rateHz / Math.PI * Math.atan(Math.PI * hz / rateHz);
    }

    private double rise(double hz) {
        double ratio = bent(hz) / bent(ROLL_OFF_HZ);
        double square = ratio * ratio;
        double power = square;
        for (int i = 1; i < order; i++) {
            power *= square;
        }
        return power;
    }

    /** sin(x)/x with x = π√s, which for s below 0 goes on as sinh. */
    private static double apertureDb(double s) {
        double x = Math.PI * Math.sqrt(Math.abs(s));
        if (x < SMALL) {
            return -DB_A_NEPER * Math.PI * Math.PI * s / 6;
        }
        double y = s > 0 ? Math.sin(x) / x : StrictMath.sinh(x) / x;
        return Decibels.ofPower(Math.max(LEAST_POWER, y * y));
    }

    /** d ln(sin x / x) / ds = (x·cot x − 1) / (2s); −π²/6 at 0. */
    private static double apertureSlope(double s) {
        double x = Math.PI * Math.sqrt(Math.abs(s));
        if (x < SMALL) {
            return -DB_A_NEPER * Math.PI * Math.PI / 6;
        }
        double cot = s > 0 ? x / Math.tan(x) : x / StrictMath.tanh(x);
        return DB_A_NEPER * (cot - 1) / (2 * s);
    }

    private static double thicknessDb(double depth) {
        return Math.abs(depth) < SMALL
                ? -DB_A_NEPER * depth / 2
                : Decibels.ofAmplitude(-Math.expm1(-depth) / depth);
    }

    /** d ln((1 − exp(−x)) / x) / dx = 1/(exp(x) − 1) − 1/x; −½ at 0. */
    private static double thicknessSlope(double depth) {
        return Math.abs(depth) < SMALL
                ? -DB_A_NEPER / 2
                : DB_A_NEPER * (1 / Math.expm1(depth) - 1 / depth);
    }

    /** A parameter from which a fit may start: the cause takes about half a decibel at 10 kHz. */
    double start() {
        double wave = wavelengthUm / ROLL_OFF_HZ;
        return switch (cause) {
            case SPACING -> 0.01 * wave;
            case APERTURE, GAP -> 0.035 * wave * wave;
            case AZIMUTH -> 0.1 * wave;
            case THICKNESS -> isBeyondSpacing() ? 0.01 * wave * wave : 0.02 * wave;
            default -> 0.1;
        };
    }

    /**
     * The cause's figure of a parameter of 0 or more, rising with it from 0: micrometres; for an
     * amplifier's edge 1/Hz.
     */
    double figure(double theta) {
        return switch (cause) {
            case APERTURE -> Math.sqrt(theta);
            case GAP -> Math.sqrt(theta) / TapeLoss.EFFECTIVE_GAP_FACTOR;
            case THICKNESS -> isBeyondSpacing() ? Math.sqrt(theta) : theta;
            case UPPER_EDGE ->
                    theta == 0 ? 0 : 1 / unbent(bent(ROLL_OFF_HZ) * Math.pow(theta, -0.5 / order));
            default -> theta;
        };
    }
}
