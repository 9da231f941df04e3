package offtape.core.machine;

import java.util.SplittableRandom;
import offtape.core.machine.spec.HumSpec;

/** Mains lines of steady phase, the same on both channels; phases are drawn from the seed. */
final class Hum {

    private final double[] radiansPerFrame;
    private final double[] peaks;
    private final double[] phases;

    private Hum(double[] radiansPerFrame, double[] peaks, double[] phases) {
        this.radiansPerFrame = radiansPerFrame;
        this.peaks = peaks;
        this.phases = phases;
    }

    /** The hum of a description, or none for null. */
    static Hum of(HumSpec spec, SplittableRandom random, double rateHz, double referencePeak) {
        int lines = spec == null ? 0 : spec.lines().size();
        double[] radians = new double[lines];
        double[] peaks = new double[lines];
        double[] phases = new double[lines];
        for (int i = 0; i < lines; i++) {
            HumSpec.Line line = spec.lines().get(i);
            radians[i] = 2 * Math.PI * spec.mainsHz() * line.harmonic() / rateHz;
            peaks[i] = referencePeak * Math.pow(10, line.levelDb() / 20);
            phases[i] = 2 * Math.PI * random.nextDouble();
        }
        return new Hum(radians, peaks, phases);
    }

    /** Adds the frames from {@code firstFrame} on; each block starts from the exact phase. */
    void add(double[][] block, long firstFrame, int count) {
        for (int line = 0; line < peaks.length; line++) {
            double turn = radiansPerFrame[line];
            double angle = Math.IEEEremainder(turn * firstFrame, 2 * Math.PI) + phases[line];
            double cos = Math.cos(angle);
            double sin = Math.sin(angle);
            double stepCos = Math.cos(turn);
            double stepSin = Math.sin(turn);
            for (int i = 0; i < count; i++) {
                double value = peaks[line] * sin;
                block[0][i] += value;
                block[1][i] += value;
                double next = sin * stepCos + cos * stepSin;
                cos = cos * stepCos - sin * stepSin;
                sin = next;
            }
        }
    }
}
