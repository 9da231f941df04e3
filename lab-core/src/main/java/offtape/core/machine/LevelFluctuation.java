package offtape.core.machine;

import offtape.core.machine.spec.ModulationNoiseSpec;
import offtape.core.machine.spec.RandomBandSpec;

/**
 * Modulation noise of one channel: a gain that fluctuates about 1, one period of 2^18 samples of
 * the programme over and over.
 */
final class LevelFluctuation {

    private static final int POINTS = 1 << 18;

    private final double[] deviation;

    private LevelFluctuation(double[] deviation) {
        this.deviation = deviation;
    }

    /**
     * The fluctuation of a channel.
     *
     * @return null if there is none
     */
    static LevelFluctuation of(ModulationNoiseSpec spec, long seed, int channel, double rateHz) {
        if (spec == null) {
            return null;
        }
        double percent = 100 * Math.pow(10, spec.levelDb() / 20);
        RandomBandSpec band = new RandomBandSpec(percent, spec.lowHz(), spec.highHz());
        long own = Seeds.modulation(seed, channel).nextLong();
        return new LevelFluctuation(BandNoise.of(band, own, rateHz, POINTS).deviation());
    }

    /** Lets the samples fluctuate, in place; {@code first} is the number of the first. */
    void apply(double[] samples, long first) {
        for (int i = 0; i < samples.length; i++) {
            samples[i] *= 1 + deviation[(int) Math.floorMod(first + i, (long) POINTS)];
        }
    }
}
