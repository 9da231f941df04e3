package offtape.report.measure.sweep;

import java.util.ArrayList;
import java.util.List;
import offtape.core.audio.AudioSource;
import offtape.core.audio.MemoryAudio;
import offtape.core.dsp.Baseband;
import offtape.core.dsp.Downconverter;
import offtape.core.dsp.SincInterpolator;
import offtape.core.programme.ExponentialSweep;
import offtape.report.locate.ProgrammeReturn;

/**
 * A sweep put back in time: the phase of the return, mixed with the sweep's own phase, says how
 * late each moment came; the return is resampled accordingly.
 */
final class Unwarped {

    private static final double MARGIN_S = 0.5;

    private Unwarped() {}

    /** The sweep of one channel resampled to the programme's time, with or without its phase. */
    static double[] sweep(SweepBench bench, int sweepNumber, int channel, boolean byPhase) {
        ProgrammeReturn ret = bench.ret();
        ExponentialSweep sweep = ExponentialSweep.of(bench.cue(sweepNumber), SweepBench.RATE);
        double start = (double) bench.cue(sweepNumber).startFrame() / SweepBench.RATE;
        double[] late = byPhase ? late(ret, sweep, start, channel) : new double[0];
        AudioSource audio = ret.recording();
        double[] x = audio.read(0, (int) audio.frames())[channel];
        int n = (int) bench.cue(sweepNumber).frames();
        double[] out = new double[n];
        for (int i = 0; i < n; i++) {
            double t = (double) i / SweepBench.RATE;
            double e = byPhase ? at(late, t * GRID_HZ) : 0;
            double place = ret.map().recordingSeconds(start + t + e) * audio.sampleRateHz();
            out[i] = SincInterpolator.at(x, place);
        }
        return out;
    }

    /** The same with silence around it, to be followed as any return. */
    static ProgrammeReturn asReturn(SweepBench bench, int channel) {
        double[] out = new double[(int) bench.ret().programme().audio().frames()];
        double[] sweep = sweep(bench, 0, channel, true);
        System.arraycopy(sweep, 0, out, (int) bench.cue(0).startFrame(), sweep.length);
        return new ProgrammeReturn(
                bench.ret().programme(),
                new MemoryAudio("unwarped", SweepBench.RATE, out),
                new offtape.report.locate.Location(
                        offtape.report.locate.TimeMap.straight(0, 1, MARGIN_S),
                        (double) out.length / SweepBench.RATE,
                        0,
                        0,
                        List.of(1),
                        true,
                        true,
                        0,
                        (double) out.length / SweepBench.RATE,
                        List.of()));
    }

    private static final double GRID_HZ = 500;

    /** How late the return is at each five-hundredth of a second of the sweep, seconds. */
    private static double[] late(
            ProgrammeReturn ret, ExponentialSweep sweep, double start, int channel) {
        List<double[]> points = new ArrayList<>();
        double turns = 0;
        double last = Double.NaN;
        for (double from = sweep.startHz(); from < sweep.endHz(); from *= Math.sqrt(2)) {
            double to = Math.min(sweep.endHz() * 0.999, from * Math.sqrt(2));
            double pass = Math.min(Math.max(6, 0.025 * from), 0.3 * from);
            Downconverter converter = Downconverter.of(pass, 2 * pass, SweepBench.RATE, GRID_HZ);
            Baseband base =
                    converter
                            .convert(
                                    ret.recording(),
                                    ret.map().recordingSeconds(start + sweep.timeSeconds(from)),
                                    ret.map().recordingSeconds(start + sweep.timeSeconds(to)),
                                    t -> sweep.phaseRadians(ret.map().programmeSeconds(t) - start))
                            .get(channel);
            for (int k = 0; k < base.size(); k++) {
                double p = Math.atan2(base.im()[k], base.re()[k]) + turns;
                double jump = Double.isNaN(last) ? 0 : Math.rint((p - last) / (2 * Math.PI));
                turns -= jump * 2 * Math.PI;
                last = p - jump * 2 * Math.PI;
                double t = ret.map().programmeSeconds(base.seconds(k)) - start;
                points.add(new double[] {t, -last / (2 * Math.PI * sweep.frequencyHz(t))});
            }
        }
        return regular(points, sweep.seconds());
    }

    private static double[] regular(List<double[]> points, double seconds) {
        double[] out = new double[(int) (seconds * GRID_HZ) + 3];
        int i = 0;
        for (int k = 0; k < out.length; k++) {
            double t = k / GRID_HZ;
            while (i < points.size() - 2 && points.get(i + 1)[0] < t) {
                i++;
            }
            double[] a = points.get(i);
            double[] b = points.get(i + 1);
            double part = Math.max(0, Math.min(1, (t - a[0]) / (b[0] - a[0])));
            out[k] = a[1] + part * (b[1] - a[1]);
        }
        return out;
    }

    private static double at(double[] y, double place) {
        int i = (int) Math.min(y.length - 2, place);
        return y[i] + (place - i) * (y[i + 1] - y[i]);
    }
}
