package offtape.core.standard;

import java.util.Arrays;
import java.util.OptionalDouble;
import java.util.function.DoublePredicate;
import java.util.stream.DoubleStream;
import java.util.stream.IntStream;
import offtape.core.unit.Decibels;

/**
 * Programme loudness of Rec. ITU-R BS.1770 (Annex 1), gated, in LUFS, which is the Recommendation's
 * LKFS. Takes the sound stretch by stretch; how it is divided changes nothing. For one sound and
 * one thread.
 *
 * <p>Accuracy, from the tests: the signals of EBU Tech 3341 for integrated loudness read within
 * 0.03 LU of the figure asked for (0.1 LU is allowed), a tone of 997 Hz within 0.01 LU of what the
 * Recommendation says.
 */
public final class ItuBs1770 {

    /** Weight of the channels left, right and centre. */
    public static final double FRONT_WEIGHT = 1;

    /** Weight of the two surround channels (Table 3 of the Recommendation). */
    public static final double SURROUND_WEIGHT = 1.41;

    /** Length of a gating block; shorter sound has no loudness, seconds. */
    public static final double BLOCK_SECONDS = 0.4;

    /** The least sample rate at which the weighting is of use, hertz. */
    public static final double LOWEST_RATE_HZ = 8000;

    /** Blocks overlap by 75 %: each is four of these steps. */
    private static final int STEPS_A_BLOCK = 4;

    private static final double STEPS_A_SECOND = 10;
    private static final double OFFSET_DB = -0.691;
    private static final double ABSOLUTE_GATE_LUFS = -70;
    private static final double RELATIVE_GATE_LU = -10;

    private final double sampleRateHz;
    private final double[] weights;
    private final KWeighting[] filters;
    private final DoubleStream.Builder steps = DoubleStream.builder();
    private long frames;
    private long stepCount;
    private long stepStart;
    private long stepEnd;
    private double energy;

    private ItuBs1770(double sampleRateHz, double... weights) {
        this.sampleRateHz = sampleRateHz;
        this.weights = weights.clone();
        this.filters =
                IntStream.range(0, weights.length)
                        .mapToObj(c -> new KWeighting(sampleRateHz))
                        .toArray(KWeighting[]::new);
        this.stepEnd = endOf(0);
    }

    /**
     * A meter for mono or stereo sound.
     *
     * @param sampleRateHz frames a second, 8000 or more
     * @param channels number of channels, all in front
     * @throws IllegalArgumentException if the rate is lower
     */
    public static ItuBs1770 inFront(double sampleRateHz, int channels) {
        double[] weights = new double[channels];
        Arrays.fill(weights, FRONT_WEIGHT);
        return weighted(sampleRateHz, weights);
    }

    /**
     * A meter for any channels.
     *
     * @param sampleRateHz frames a second, 8000 or more
     * @param weights one a channel, as factors of power
     * @throws IllegalArgumentException if the rate is lower
     */
    public static ItuBs1770 weighted(double sampleRateHz, double... weights) {
        if (!(sampleRateHz >= LOWEST_RATE_HZ)) {
            throw new IllegalArgumentException(
                    "BS.1770 needs 8000 frames a second or more, not " + sampleRateHz);
        }
        return new ItuBs1770(sampleRateHz, weights);
    }

    /** Takes the next stretch: one array a channel in full-scale units; not modified. */
    public void add(double[][] samples) {
        for (int i = 0; i < samples[0].length; i++) {
            for (int c = 0; c < weights.length; c++) {
                double y = filters[c].next(samples[c][i]);
                energy += weights[c] * y * y;
            }
            frames++;
            if (frames == stepEnd) {
                closeStep();
            }
        }
    }

    private void closeStep() {
        steps.add(energy / (stepEnd - stepStart));
        energy = 0;
        stepCount++;
        stepStart = stepEnd;
        stepEnd = endOf(stepCount);
    }

    private long endOf(long step) {
        return Math.round((step + 1) * sampleRateHz / STEPS_A_SECOND);
    }

    /**
     * Integrated loudness of all that was taken; the meter is at its end after that.
     *
     * @return LUFS, or empty if the sound is shorter than a block or nowhere above −70 LUFS
     */
    public OptionalDouble integratedLufs() {
        double[] blocks = blockPowers(tenthPowers());
        OptionalDouble heard = meanPower(blocks, p -> lufs(p) > ABSOLUTE_GATE_LUFS);
        if (heard.isEmpty()) {
            return heard;
        }
        double gate = Math.max(ABSOLUTE_GATE_LUFS, lufs(heard.getAsDouble()) + RELATIVE_GATE_LU);
        return OptionalDouble.of(lufs(meanPower(blocks, p -> lufs(p) > gate).orElseThrow()));
    }

    /** Weighted power of each whole tenth of a second that was taken; the meter is at its end. */
    public double[] tenthPowers() {
        return steps.build().toArray();
    }

    private static double[] blockPowers(double[] stepPowers) {
        return IntStream.rangeClosed(0, stepPowers.length - STEPS_A_BLOCK)
                .mapToDouble(
                        i ->
                                Arrays.stream(stepPowers, i, i + STEPS_A_BLOCK)
                                        .average()
                                        .orElseThrow())
                .toArray();
    }

    private static OptionalDouble meanPower(double[] blocks, DoublePredicate isCounted) {
        return Arrays.stream(blocks).filter(isCounted).average();
    }

    private static double lufs(double power) {
        return OFFSET_DB + Decibels.ofPower(power);
    }
}
