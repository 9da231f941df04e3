package offtape.core.dsp;

/** Constant frequency, turned by multiplication and set right again every few hundred values. */
record SteadyPhase(double frequencyHz) implements PhaseLaw {

    private static final int RENEW = 256;
    private static final int SIDE_BY_SIDE = 4;

    @Override
    public double phaseRadians(double seconds) {
        double cycles = frequencyHz * seconds;
        return 2 * Math.PI * (cycles - Math.floor(cycles));
    }

    @Override
    public void fill(double startSeconds, double stepSeconds, double[] cos, double[] sin) {
        double turn = 2 * Math.PI * frequencyHz * stepSeconds;
        double c = Math.cos(turn);
        double s = Math.sin(turn);
        int n = cos.length;
        for (int first = 0; first < n; first += RENEW) {
            double phase = phaseRadians(startSeconds + first * stepSeconds);
            cos[first] = Math.cos(phase);
            sin[first] = Math.sin(phase);
        }
        // Each value waits for the one before: four stretches side by side wait a quarter as long.
        int first = 0;
        for (; first + SIDE_BY_SIDE * RENEW <= n; first += SIDE_BY_SIDE * RENEW) {
            for (int i = first + 1; i < first + RENEW; i++) {
                turn(cos, sin, i, c, s);
                turn(cos, sin, i + RENEW, c, s);
                turn(cos, sin, i + 2 * RENEW, c, s);
                turn(cos, sin, i + 3 * RENEW, c, s);
            }
        }
        for (; first < n; first += RENEW) {
            for (int i = first + 1; i < Math.min(n, first + RENEW); i++) {
                turn(cos, sin, i, c, s);
            }
        }
    }

    private static void turn(double[] cos, double[] sin, int i, double c, double s) {
        cos[i] = cos[i - 1] * c - sin[i - 1] * s;
        sin[i] = sin[i - 1] * c + cos[i - 1] * s;
    }
}
