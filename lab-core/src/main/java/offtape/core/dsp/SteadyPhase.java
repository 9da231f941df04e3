package offtape.core.dsp;

/** Constant frequency, turned by multiplication and set right again every few hundred values. */
record SteadyPhase(double frequencyHz) implements PhaseLaw {

    private static final int RENEW = 256;

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
        for (int i = 0; i < cos.length; i++) {
            if (i % RENEW == 0) {
                double phase = phaseRadians(startSeconds + i * stepSeconds);
                cos[i] = Math.cos(phase);
                sin[i] = Math.sin(phase);
            } else {
                cos[i] = cos[i - 1] * c - sin[i - 1] * s;
                sin[i] = sin[i - 1] * c + cos[i - 1] * s;
            }
        }
    }
}
