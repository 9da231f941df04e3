package offtape.report.measure.continuity;

import offtape.core.audio.AudioSource;

/** The level of a stretch of sound at any moment, all channels together. */
final class Envelope {

    /** Half of what is averaged over. */
    private static final double HALF_S = 0.002;

    private final double[] energy;
    private final double rateHz;
    private final double firstSeconds;

    private Envelope(double[] energy, double rateHz, double firstSeconds) {
        this.energy = energy;
        this.rateHz = rateHz;
        this.firstSeconds = firstSeconds;
    }

    /** Of the time between two moments and a little more. */
    static Envelope of(AudioSource source, double fromSeconds, double toSeconds) {
        double rate = source.sampleRateHz();
        long first = (long) Math.floor((fromSeconds - 2 * HALF_S) * rate);
        int count = (int) Math.ceil((toSeconds - fromSeconds + 4 * HALF_S) * rate);
        double[][] x = source.read(first, count);
        double[] energy = new double[count + 1];
        for (int i = 0; i < count; i++) {
            double square = 0;
            for (double[] channel : x) {
                square += channel[i] * channel[i];
            }
            energy[i + 1] = energy[i] + square;
        }
        return new Envelope(energy, rate, first / rate);
    }

    /** Root of the squares around a moment, added up: as steady as a tone is, in no unit. */
    double at(double seconds) {
        double power = until(seconds + HALF_S) - until(seconds - HALF_S);
        return Math.sqrt(Math.max(0, power));
    }

    private double until(double seconds) {
        double place = (seconds - firstSeconds) * rateHz;
        int i = (int) Math.max(0, Math.min(energy.length - 2, Math.floor(place)));
        double part = Math.max(0, Math.min(1, place - i));
        return energy[i] + part * (energy[i + 1] - energy[i]);
    }
}
