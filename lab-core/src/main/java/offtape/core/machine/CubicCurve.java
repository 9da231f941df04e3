package offtape.core.machine;

/**
 * x − a·x³ up to its turning point 1/√(3a), flat beyond. A sine of peak A below that has third
 * harmonic K3 = (aA²/4)/(1 − 3aA²/4), from sin³ = (3·sin θ − sin 3θ)/4.
 */
final class CubicCurve implements OddCurve {

    private final double a;
    private final double turn;

    private CubicCurve(double a) {
        this.a = a;
        this.turn = 1 / Math.sqrt(3 * a);
    }

    /** The curve on which a sine of this peak has this third harmonic (a ratio below 0.1). */
    static CubicCurve of(double peak, double k3) {
        return new CubicCurve(4 * k3 / (1 + 3 * k3) / (peak * peak));
    }

    @Override
    public double of(double x) {
        if (Math.abs(x) >= turn) {
            return Math.copySign(2 * turn / 3, x);
        }
        return x - a * x * x * x;
    }
}
