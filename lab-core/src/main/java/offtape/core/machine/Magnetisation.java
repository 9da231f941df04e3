package offtape.core.machine;

import java.util.ArrayList;
import java.util.List;
import offtape.core.machine.spec.SaturationSpec;
import org.apache.commons.math3.complex.Complex;

/**
 * The recording process of one channel: pre-emphasis, saturation without memory, de-emphasis. The
 * curve works at a multiple of the sample rate between two low-passes, so that its harmonics do not
 * fold back. The two emphases are exact inverses at the programme's rate.
 *
 * @param curve the tape's curve
 * @param oversampling rate of the curve re the programme's
 * @param kernel low-pass before and after the curve
 * @param before sections ahead of the curve
 * @param after sections behind it
 */
record Magnetisation(
        SaturationCurve curve,
        int oversampling,
        Kernel kernel,
        List<Section> before,
        List<Section> after) {

    private static final int OVERSAMPLING = 4;
    private static final double PASS = 0.46;
    private static final double STOP = 0.5;
    private static final double COUPLING_HZ = 1;

    static Magnetisation of(SaturationSpec spec, double rateHz, double referencePeak) {
        SaturationCurve curve = SaturationCurve.of(spec, referencePeak);
        List<Section> before = new ArrayList<>();
        List<Section> after = new ArrayList<>();
        if (curve.rectifies()) {
            after.addAll(Sections.highPass(rateHz, COUPLING_HZ, 1));
        }
        if (spec.emphasisMicroseconds() > 0) {
            double p = Math.exp(-1e6 / (rateHz * spec.emphasisMicroseconds()));
            before.add(new Section(rateHz, 1 / (1 - p), -p / (1 - p), 0, 0, 0));
            after.add(new Section(rateHz, 1 - p, 0, 0, -p, 0));
        }
        Kernel kernel = Kernel.lowPass(OVERSAMPLING * rateHz, PASS * rateHz, STOP * rateHz);
        return new Magnetisation(curve, OVERSAMPLING, kernel, before, after);
    }

    /** Response from the input to the curve. */
    Complex responseBefore(double frequencyHz) {
        return Sections.response(before, frequencyHz).multiply(kernel.response(frequencyHz));
    }

    /** Response from the curve to the output. */
    Complex responseAfter(double frequencyHz) {
        return Sections.response(after, frequencyHz).multiply(kernel.response(frequencyHz));
    }

    Running start(BlockGeometry blocks) {
        return new Running(this, blocks);
    }

    /** The process at work on a stream, two reaches behind it. */
    static final class Running {

        private final SaturationCurve curve;
        private final List<Section.Running> before;
        private final List<Section.Running> after;
        private final Upsampler up;
        private final Decimator down;

        private Running(Magnetisation m, BlockGeometry blocks) {
            curve = m.curve;
            before = Sections.start(m.before);
            after = Sections.start(m.after);
            up = new Upsampler(blocks, m.oversampling, m.kernel);
            down = new Decimator(blocks, m.oversampling, m.kernel);
        }

        /** Takes a chunk, which it may change, and returns a chunk. */
        double[] next(double[] chunk) {
            before.forEach(section -> section.run(chunk, chunk.length));
            double[] wide = up.next(chunk);
            curve.apply(wide);
            double[] out = down.next(wide);
            after.forEach(section -> section.run(out, out.length));
            return out;
        }
    }
}
