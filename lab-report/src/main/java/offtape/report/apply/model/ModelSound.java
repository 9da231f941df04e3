package offtape.report.apply.model;

import java.util.Arrays;
import java.util.List;
import java.util.Set;
import offtape.core.audio.AudioSource;
import offtape.core.model.BentSound;
import offtape.core.model.CoupledSound;
import offtape.core.model.MagnitudeTaps;
import offtape.core.model.NoisySound;
import offtape.core.model.SteadyLines;
import offtape.core.model.WaveringSound;
import offtape.core.model.WhiteNoise;
import offtape.report.result.SpeedComponent;

/** A sound passed through a model, made as it is read. */
public final class ModelSound {

    private static final int MOTION_RATE_HZ = 1000;
    private static final int MOTION_HALF = 1 << 14;
    private static final double HISS_SECONDS = 0.15;
    private static final long MOTION_SEED = 0x6d6f7665L;
    private static final long HUM_SEED = 0x68756d73L;

    private ModelSound() {}

    /**
     * The sound.
     *
     * @param model the machine
     * @param sound one channel, which is sent to both, or two
     * @param sentDb by how much hotter than it is the sound is sent, dB, taken back behind
     * @param parts what the machine does to it
     * @param seed which noise and motion
     */
    public static AudioSource of(
            MachineModel model, AudioSource sound, double sentDb, Set<ModelPart> parts, long seed) {
        int rate = sound.sampleRateHz();
        double hotter = Math.pow(10, sentDb / 20);
        double referencePeak = Math.pow(10, model.referenceDbfs() / 20);
        ModelFilters filters = ModelFilters.of(model, rate, parts);
        AudioSource made = sound;
        if (parts.contains(ModelPart.SATURATION)) {
            made =
                    new BentSound(
                            made,
                            Arrays.stream(model.channels()).map(c -> c.bent().curve()).toList(),
                            Arrays.stream(model.channels()).map(c -> c.bent().emphasis()).toList(),
                            hotter / referencePeak);
        }
        made = new CoupledSound(made, filters.taps(), filters.lead());
        if (parts.contains(ModelPart.MOTION) && model.motion() != null) {
            made = new WaveringSound(made, ahead(model.motion(), seed ^ MOTION_SEED));
        }
        if (parts.contains(ModelPart.NOISE) && model.hiss() != null) {
            made = noisy(model, made, referencePeak / hotter, seed);
        }
        return made;
    }

    private static AudioSource noisy(
            MachineModel model, AudioSource sound, double referencePeak, long seed) {
        int rate = sound.sampleRateHz();
        int half = Integer.highestOneBit((int) (HISS_SECONDS * rate));
        double[][][] taps = new double[2][2][];
        SteadyLines[] hum = new SteadyLines[2];
        for (int c = 0; c < 2; c++) {
            HissModel hiss = model.hiss()[c];
            double peak = referencePeak * Math.pow(10, model.channels()[c].referenceDb() / 20);
            // white noise has 2/rate in a hertz, a sine of a peak half its square
            double scale = peak * Math.sqrt(rate / 4.0);
            taps[c][c] =
                    MagnitudeTaps.of(
                            hz -> scale * Math.pow(10, hiss.densityDb(hz) / 20), rate, half);
            hum[c] = hiss.lines(peak, seed ^ HUM_SEED);
        }
        AudioSource hiss = new CoupledSound(new WhiteNoise(rate, 2, seed), taps, half);
        return new NoisySound(sound, hiss, List.of(hum));
    }

    /** The integral of the deviation in seconds. */
    private static AudioSource ahead(MotionModel motion, long seed) {
        SteadyLines lines =
                SteadyLines.drawn(
                                motion.lines().stream()
                                        .mapToDouble(SpeedComponent::middleHz)
                                        .toArray(),
                                motion.lines().stream()
                                        .mapToDouble(l -> l.peakPercent() / 100)
                                        .toArray(),
                                seed)
                        .integral();
        double[] rest = MagnitudeTaps.of(hz -> restGain(motion, hz), MOTION_RATE_HZ, MOTION_HALF);
        AudioSource random =
                new CoupledSound(
                        new WhiteNoise(MOTION_RATE_HZ, 1, seed),
                        new double[][][] {{rest}},
                        MOTION_HALF);
        return new NoisySound(random, new Nothing(MOTION_RATE_HZ), List.of(lines));
    }

    private static double restGain(MotionModel motion, double hz) {
        if (motion.restDb() == null || hz < motion.lowHz() || hz > motion.highHz()) {
            return 0;
        }
        double density = Math.pow(10, motion.restDb(hz) / 10) * 1e-4;
        return Math.sqrt(density * MOTION_RATE_HZ / 2) / (2 * Math.PI * hz);
    }

    /** A channel that holds nothing. */
    private record Nothing(int sampleRateHz) implements AudioSource {

        @Override
        public int channels() {
            return 1;
        }

        @Override
        public long frames() {
            return Long.MAX_VALUE / 4;
        }

        @Override
        public double[][] read(long startFrame, int count) {
            return new double[1][count];
        }

        @Override
        public String name() {
            return "nothing";
        }

        @Override
        public void close() {
            // nothing is held open
        }
    }
}
