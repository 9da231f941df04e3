package offtape.cli.lineup;

import offtape.core.dsp.PowerDensity;
import offtape.core.standard.Iec61672;
import offtape.core.unit.Decibels;

/**
 * The noise of one channel while nothing is sent.
 *
 * @param unweightedDbfs rms from 20 Hz to 20 kHz, dB re a full-scale sine; −200 at the least
 * @param aWeightedDbfs the same with weighting A of IEC 61672-1
 */
public record NoiseReading(double unweightedDbfs, double aWeightedDbfs) {

    /** How much sound a reading takes. */
    static final double SECONDS = 0.8;

    private static final double LEAST_DBFS = -200;
    private static final double FROM_HZ = 20;
    private static final double TO_HZ = 20_000;
    private static final int TRANSFORM = 1 << 14;

    /** Reads one channel. */
    static NoiseReading of(double[] sound, int sampleRateHz) {
        double mean = 0;
        for (double v : sound) {
            mean += v / sound.length;
        }
        double[] x = sound.clone();
        for (int i = 0; i < x.length; i++) {
            x[i] -= mean;
        }
        PowerDensity density = PowerDensity.of(x, sampleRateHz, TRANSFORM);
        double to = Math.min(TO_HZ, 0.5 * sampleRateHz);
        return new NoiseReading(
                dbfs(density.power(FROM_HZ, to, f -> 1)),
                dbfs(
                        density.power(
                                FROM_HZ,
                                to,
                                f -> f > 0 ? Decibels.toPower(Iec61672.aWeightingDb(f)) : 0)));
    }

    // a full-scale sine has a power of one half
    private static double dbfs(double power) {
        return Math.max(LEAST_DBFS, Decibels.ofPower(2 * power));
    }
}
