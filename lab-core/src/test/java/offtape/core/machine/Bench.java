package offtape.core.machine;

import java.util.function.DoubleUnaryOperator;
import offtape.core.audio.MemoryAudio;
import offtape.core.machine.spec.MachineSpec;

/** Plays closed-form signals through machines described by the members of their JSON. */
final class Bench {

    /** Peak of a sine at reference level, −20 dBFS. */
    static final double REFERENCE_PEAK = 0.1;

    static final double REFERENCE_DBFS = -20;

    private Bench() {}

    /** A machine of these members, written with single quotes. */
    static MachineSpec machine(String members) {
        String head = "{'format':'offtape-machine','version':1";
        String body = members.isEmpty() ? "" : "," + members;
        return MachineSpec.fromJson((head + body + "}").replace('\'', '"'));
    }

    static MachineRun run(MachineSpec spec, int rateHz, double seconds) {
        long frames = Math.round(seconds * rateHz);
        return SimulatedMachine.of(spec).run(rateHz, frames, REFERENCE_DBFS, rateHz);
    }

    /** The return of a programme that has the same signal on both channels. */
    static double[][] play(
            MachineSpec spec, int rateHz, double seconds, DoubleUnaryOperator signal) {
        double[] both = sampled(rateHz, seconds, signal);
        return play(run(spec, rateHz, seconds), new MemoryAudio("test", rateHz, both, both));
    }

    /** The return of a programme with the signal on the left and silence on the right. */
    static double[][] playLeft(
            MachineSpec spec, int rateHz, double seconds, DoubleUnaryOperator signal) {
        double[] left = sampled(rateHz, seconds, signal);
        MemoryAudio audio = new MemoryAudio("test", rateHz, left, new double[left.length]);
        return play(run(spec, rateHz, seconds), audio);
    }

    static double[][] play(MachineRun run, MemoryAudio audio) {
        double[][] all = new double[2][(int) run.frames()];
        int[] written = {0};
        run.play(
                audio,
                (block, count) -> {
                    System.arraycopy(block[0], 0, all[0], written[0], count);
                    System.arraycopy(block[1], 0, all[1], written[0], count);
                    written[0] += count;
                });
        return all;
    }

    static double[] sampled(int rateHz, double seconds, DoubleUnaryOperator signal) {
        double[] x = new double[(int) Math.round(seconds * rateHz)];
        for (int i = 0; i < x.length; i++) {
            x[i] = signal.applyAsDouble((double) i / rateHz);
        }
        return x;
    }

    /** A sine at a level re reference. */
    static DoubleUnaryOperator sine(double frequencyHz, double levelDb) {
        double peak = REFERENCE_PEAK * Math.pow(10, levelDb / 20);
        return t -> peak * Math.sin(2 * Math.PI * frequencyHz * t);
    }

    /**
     * Peak and phase (of a cosine) of a line, by projection over a stretch under a four-term window
     * of −92 dB side lobes (Blackman and Harris), for lines at least 4/stretch apart.
     */
    static Line line(double[] x, int rateHz, double from, double to, double frequencyHz) {
        int first = (int) Math.round(from * rateHz);
        int count = (int) Math.round((to - from) * rateHz);
        double re = 0;
        double im = 0;
        double sum = 0;
        for (int i = 0; i < count; i++) {
            double u = 2 * Math.PI * (i + 0.5) / count;
            double w =
                    0.35875
                            - 0.48829 * Math.cos(u)
                            + 0.14128 * Math.cos(2 * u)
                            - 0.01168 * Math.cos(3 * u);
            double angle = 2 * Math.PI * frequencyHz * (first + i) / rateHz;
            re += w * x[first + i] * Math.cos(angle);
            im -= w * x[first + i] * Math.sin(angle);
            sum += w;
        }
        return new Line(2 * Math.hypot(re, im) / sum, Math.atan2(im, re));
    }

    /** A line: its peak, and its phase in radians as of a cosine at time 0. */
    record Line(double peak, double phase) {

        double levelDb() {
            return 20 * Math.log10(peak / REFERENCE_PEAK);
        }
    }
}
