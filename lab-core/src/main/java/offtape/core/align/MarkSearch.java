package offtape.core.align;

import java.util.Optional;
import offtape.core.audio.AudioSource;
import offtape.core.dsp.AnalyticCorrelation;
import offtape.core.dsp.SincInterpolator;

/** Finds an alignment mark by matched filter, to a hundredth of a sample on a clean path. */
public final class MarkSearch {

    /** What is less alike is something else. */
    private static final double LEAST_LIKENESS = 0.25;

    /** The correlation is looked at so many times between two samples. */
    private static final int STEPS = 16;

    private final double[] mark;
    private final double energy;

    /** A search for the mark of a sample rate. */
    public MarkSearch(int sampleRateHz) {
        this.mark = AlignmentMark.samples(sampleRateHz, 1);
        double sum = 0;
        for (double v : mark) {
            sum += v * v;
        }
        this.energy = sum;
    }

    /**
     * The mark on one channel within a stretch.
     *
     * @param peak highest magnitude of the mark that was sent
     * @return empty if nothing there is alike enough
     */
    public Optional<FoundMark> find(
            AudioSource recording, int channel, long fromFrame, int frames, double peak) {
        if (frames <= mark.length) {
            return Optional.empty();
        }
        double[] x = recording.read(fromFrame, frames)[channel];
        AnalyticCorrelation correlation = AnalyticCorrelation.of(x, mark);
        int best = 0;
        for (int k = 1; k < correlation.re().length; k++) {
            if (correlation.power(k) > correlation.power(best)) {
                best = k;
            }
        }
        double place = sharpened(correlation, best);
        double re = SincInterpolator.at(correlation.re(), place);
        double im = SincInterpolator.at(correlation.im(), place);
        double likeness = (re * re + im * im) / (energy * energyOf(x, best));
        if (!(likeness >= LEAST_LIKENESS)) {
            return Optional.empty();
        }
        double gain = Math.hypot(re, im) / energy / peak;
        return Optional.of(
                new FoundMark(fromFrame + place, re < 0 ? -gain : gain, Math.min(1, likeness)));
    }

    private double energyOf(double[] x, int from) {
        double sum = 1e-300;
        for (int i = from; i < from + mark.length; i++) {
            sum += x[i] * x[i];
        }
        return sum;
    }

    private static double power(AnalyticCorrelation c, double place) {
        double re = SincInterpolator.at(c.re(), place);
        double im = SincInterpolator.at(c.im(), place);
        return re * re + im * im;
    }

    private static double sharpened(AnalyticCorrelation c, int best) {
        double top = best;
        double most = -1;
        for (int i = -STEPS; i <= STEPS; i++) {
            double place = best + (double) i / STEPS;
            double here = power(c, place);
            if (here > most) {
                most = here;
                top = place;
            }
        }
        double step = 1.0 / STEPS;
        double before = power(c, top - step);
        double after = power(c, top + step);
        double bend = before - 2 * most + after;
        return bend < 0 ? top + step * (before - after) / (2 * bend) : top;
    }
}
