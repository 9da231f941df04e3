package offtape.core.machine;

import java.util.SplittableRandom;
import offtape.core.machine.spec.RecorderSpec;

/** The input of the interface on one channel: its curve, clipping and rounding. */
final class Recorder {

    private final InputCurve curve;
    private final double clip;
    private final double step;
    private final SplittableRandom dither;

    Recorder(RecorderSpec spec, double referencePeak, SplittableRandom dither) {
        this.curve = InputCurve.of(spec, referencePeak);
        this.clip = Math.pow(10, spec.clipDbfs() / 20);
        this.step = spec.bits() == null ? 0 : step(spec.bits());
        this.dither = dither;
    }

    /** Distance of two values of a word length. */
    static double step(int bits) {
        return Math.scalb(1.0, 1 - bits);
    }

    void apply(double[] samples, int count) {
        for (int i = 0; i < count; i++) {
            double x = Math.max(-clip, Math.min(clip, curve.at(samples[i])));
            if (step > 0) {
                double triangular = dither.nextDouble() - dither.nextDouble();
                x = step * Math.rint(x / step + triangular);
            }
            samples[i] = x;
        }
    }
}
