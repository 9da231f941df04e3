package offtape.report.measure.transport;

import java.util.Arrays;
import java.util.Random;
import offtape.core.dsp.Differentiator;
import offtape.core.machine.SimulatedMachine;
import offtape.core.machine.TimeMap;
import offtape.core.machine.spec.MachineSpec;
import offtape.report.measure.line.LineSearch;
import offtape.report.measure.speed.HeardDeviation;

/**
 * The deviation that a return off tape would show, from the motion of the simulated machine and its
 * exact map of time, without any sound: white noise of the tone's phase stands for hiss.
 *
 * @param heard the return's deviation about its mean, with its lines
 * @param own the transport's deviation about its mean at the same times, percent
 * @param delaySeconds mean time between the heads
 */
record MadeReturn(HeardDeviation heard, double[] own, double delaySeconds) {

    static final double RATE_HZ = 1000;
    private static final double TONE_HZ = 3150;
    private static final int AUDIO_HZ = 8000;

    /** Phase noise of hiss 58 dB under a tone, flat to 20 kHz: 10^(−5.8)/20 kHz, rad²/Hz. */
    static final double HISS = Math.pow(10, -5.8) / 20_000;

    /**
     * A return.
     *
     * @param transport content of the member transport of a machine's description
     * @param hiss density of the phase noise, rad²/Hz
     */
    static MadeReturn of(
            String transport, double delaySeconds, double seconds, double hiss, long seed) {
        MachineSpec spec =
                MachineSpec.fromJson(
                        """
                        {"format": "offtape-machine", "version": 1, "seed": %d, "mode": "off-tape",
                         "tapeSpeedMmPerS": 190.5, "heads": {"spacingMm": %s},
                         "transport": {%s}}
                        """
                                .formatted(seed, 190.5 * delaySeconds, transport));
        long frames = (long) ((seconds + 6) * AUDIO_HZ);
        TimeMap map = SimulatedMachine.of(spec).run(AUDIO_HZ, frames, -18, AUDIO_HZ).timeMap();
        int n = (int) (seconds * RATE_HZ);
        double[] noise = noise(n, hiss, seed);
        double[] heard = new double[n];
        double[] own = new double[n];
        for (int i = 0; i < n; i++) {
            double t = map.returnSeconds(3) + i / RATE_HZ;
            heard[i] = 100 * map.returnDeviation(t) + noise[i];
            own[i] = 100 * map.transportDeviation(t);
        }
        centre(heard);
        double mean = centre(own);
        return new MadeReturn(
                new HeardDeviation(
                        heard,
                        RATE_HZ,
                        250,
                        f -> hiss * Math.pow(100 * f / TONE_HZ, 2),
                        LineSearch.find(heard, RATE_HZ).stream().limit(12).toList()),
                own,
                delaySeconds / (1 + mean / 100));
    }

    private static double[] noise(int n, double hiss, long seed) {
        Random random = new Random(seed);
        double[] phase = new double[n + 2 * Differentiator.HALF];
        double rms = Math.sqrt(hiss * RATE_HZ / 2);
        Arrays.setAll(phase, i -> rms * random.nextGaussian());
        double[] slope = Differentiator.apply(phase, RATE_HZ);
        return Arrays.stream(slope).map(w -> 100 * w / (2 * Math.PI * TONE_HZ)).toArray();
    }

    private static double centre(double[] x) {
        double mean = Arrays.stream(x).average().orElseThrow();
        Arrays.setAll(x, i -> x[i] - mean);
        return mean;
    }
}
