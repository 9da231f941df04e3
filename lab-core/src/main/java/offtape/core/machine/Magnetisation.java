package offtape.core.machine;

import java.util.ArrayList;
import java.util.List;
import offtape.core.machine.spec.MachineSpec;
import org.apache.commons.math3.complex.Complex;

/**
 * The recording process of one channel: pre-emphasis, curves without memory, de-emphasis. The two
 * emphases are exact inverses at the programme's rate.
 *
 * @param rateHz the programme's rate
 * @param curve the curve of record amplifier and tape
 * @param kernel low-pass before and after the curve; the same to 1e-6 whatever the oversampling
 * @param before sections ahead of the curve
 * @param after sections behind it
 */
record Magnetisation(
        double rateHz,
        RecordingCurve curve,
        Kernel kernel,
        List<Section> before,
        List<Section> after) {

    private static final double COUPLING_HZ = 1;

    /** The process of a channel, 0 left or 1 right, or null if nothing bends. */
    static Magnetisation of(MachineSpec spec, int channel, double rateHz, double referencePeak) {
        RecordingCurve curve = RecordingCurve.of(spec, channel, referencePeak);
        return curve == null ? null : of(curve, emphasisMicroseconds(spec), rateHz);
    }

    private static double emphasisMicroseconds(MachineSpec spec) {
        return spec.saturation() == null ? 0 : spec.saturation().emphasisMicroseconds();
    }

    private static Magnetisation of(RecordingCurve curve, double emphasis, double rateHz) {
        List<Section> before = new ArrayList<>();
        List<Section> after = new ArrayList<>();
        if (curve.rectifies()) {
            after.addAll(Sections.highPass(rateHz, COUPLING_HZ, 1));
        }
        if (emphasis > 0) {
            double p = Math.exp(-1e6 / (rateHz * emphasis));
            before.add(new Section(rateHz, 1 / (1 - p), -p / (1 - p), 0, 0, 0));
            after.add(new Section(rateHz, 1 - p, 0, 0, -p, 0));
        }
        Kernel kernel = OversampledCurve.kernel(2, rateHz);
        return new Magnetisation(rateHz, curve, kernel, before, after);
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

    /** The process at work on a stream, a reach behind it. */
    static final class Running {

        private final List<Section.Running> before;
        private final OversampledCurve curve;
        private final List<Section.Running> after;

        private Running(Magnetisation m, BlockGeometry blocks) {
            curve = new OversampledCurve(m.curve, blocks, m.rateHz);
            before = Sections.start(m.before);
            after = Sections.start(m.after);
        }

        /** Takes a chunk, which it may change, and returns a chunk. */
        double[] next(double[] chunk) {
            before.forEach(section -> section.run(chunk, chunk.length));
            double[] out = curve.next(chunk);
            after.forEach(section -> section.run(out, out.length));
            return out;
        }
    }
}
