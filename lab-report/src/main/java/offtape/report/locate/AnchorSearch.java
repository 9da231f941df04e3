package offtape.report.locate;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.function.DoubleUnaryOperator;
import offtape.core.audio.AudioSource;
import offtape.core.dsp.AnalyticCorrelation;
import offtape.core.dsp.SincInterpolator;
import offtape.core.dsp.Spectrum;

/**
 * Finds one short stretch of the programme in the recording by matched filter, near the place where
 * it is expected, trying a few speeds since wow may have stretched it.
 */
final class AnchorSearch {

    private static final double REACH_S = 0.15;
    private static final double WOW = 0.004;
    private static final int FINER = 6;

    /** A channel that correlates with less than this share of the louder one is not heard. */
    private static final double UNHEARD = 0.02;

    private final AudioSource programme;
    private final AudioSource recording;
    private final TimeMap map;

    AnchorSearch(AudioSource programme, AudioSource recording, TimeMap map) {
        this.programme = programme;
        this.recording = recording;
        this.map = map;
    }

    /**
     * Looks for a stretch of the programme.
     *
     * @param from start in the programme, seconds
     * @param seconds length
     * @param topHz highest frequency it holds, which sets how finely speed is tried; 0 if only the
     *     speed of the map is to be tried, as for part of an exponential sweep, in which an error
     *     of speed looks exactly like one of place
     * @return the middle of the stretch, or nothing if the recording does not cover the place
     */
    Optional<Anchor> find(double from, double seconds, double topHz) {
        int rate = recording.sampleRateHz();
        double middle = from + seconds / 2;
        double expected = map.recordingSeconds(middle);
        double stretch = 1 / map.speedRatio(middle);
        double reach = seconds * stretch / 2 * (1 + WOW) + REACH_S;
        long start = Math.round((expected - reach) * rate);
        int length = (int) Math.ceil(2 * reach * rate);
        if (start < -REACH_S * rate || start + length > recording.frames() + REACH_S * rate) {
            return Optional.empty();
        }
        Heard heard = Heard.of(recording.read(start, length));
        Span span = sought(from, seconds);
        Peak best = peak(heard, template(span, exact(span), stretch), stretch);
        if (topHz > 0) {
            double step = Math.max(2e-5, 0.2 / (seconds * topHz));
            int steps = (int) Math.min(60, Math.ceil(WOW / step));
            FineTable table = FineTable.of(span.mono());
            best = better(best, heard, span, table::at, 2 * step, (steps + 1) / 2);
            best = better(best, heard, span, table::at, step, 1);
            best = better(best, heard, span, exact(span), step / FINER, FINER);
        }
        double at = (start + best.place()) / rate;
        return Optional.of(new Anchor(middle, at, best.signs(), best.likeness()));
    }

    /**
     * The stretch that is sought.
     *
     * @param mono the programme there and somewhat around it
     * @param centre the middle of the stretch in it, in samples
     */
    private record Span(double seconds, double[] mono, double centre) {}

    /** What the recording holds around the place, one array and one spectrum a channel. */
    private record Heard(double[][] samples, List<Spectrum> spectra) {

        static Heard of(double[][] samples) {
            return new Heard(
                    samples, Arrays.stream(samples).map(AnalyticCorrelation::spectrum).toList());
        }
    }

    private static DoubleUnaryOperator exact(Span span) {
        return place -> SincInterpolator.at(span.mono(), place);
    }

    private Peak better(
            Peak known, Heard heard, Span span, DoubleUnaryOperator at, double step, int steps) {
        Peak best = known;
        for (int i = -steps; i <= steps; i++) {
            double tried = known.stretch() * (1 + i * step);
            Peak peak = peak(heard, template(span, at, tried), tried);
            best = peak.score() > best.score() ? peak : best;
        }
        return best;
    }

    private Span sought(double from, double seconds) {
        double programmeRate = programme.sampleRateHz();
        int margin = 64;
        long first = Math.round(from * programmeRate) - margin;
        double[][] x = programme.read(first, (int) Math.ceil(seconds * programmeRate) + 2 * margin);
        double[] mono = x[0];
        for (int c = 1; c < x.length; c++) {
            for (int i = 0; i < mono.length; i++) {
                mono[i] += x[c][i];
            }
        }
        return new Span(seconds, mono, (from + seconds / 2) * programmeRate - first);
    }

    /** The stretch as the recording should hold it, its middle on the middle sample. */
    private double[] template(Span span, DoubleUnaryOperator at, double stretch) {
        int half = (int) (span.seconds() * stretch * recording.sampleRateHz() / 2);
        double[] out = new double[2 * half + 1];
        for (int i = -half; i <= half; i++) {
            double offset =
                    (double) i * programme.sampleRateHz() / (recording.sampleRateHz() * stretch);
            out[i + half] = at.applyAsDouble(span.centre() + offset);
        }
        return out;
    }

    /**
     * The best lag.
     *
     * @param place sample on which the middle of the template lies
     */
    private record Peak(double place, double score, double likeness, int[] signs, double stretch) {}

    private static Peak peak(Heard heard, double[] template, double stretch) {
        double[][] samples = heard.samples();
        double templateEnergy = energy(template, 0, template.length);
        AnalyticCorrelation[] all =
                AnalyticCorrelation.ofAll(heard.spectra(), samples[0].length, template)
                        .toArray(AnalyticCorrelation[]::new);
        int lags = all[0].re().length;
        int best = 0;
        double most = -1;
        for (int k = 0; k < lags; k++) {
            double p = power(all, k);
            if (p > most) {
                most = p;
                best = k;
            }
        }
        int[] signs = new int[samples.length];
        double likeness = 0;
        double loudest = 0;
        double heardEnergy = 0;
        for (int c = 0; c < samples.length; c++) {
            loudest = Math.max(loudest, all[c].power(best));
        }
        for (int c = 0; c < samples.length; c++) {
            double here = energy(samples[c], best, template.length);
            heardEnergy += here;
            double both = here * templateEnergy;
            double coefficient = both > 0 ? Math.sqrt(all[c].power(best) / both) : 0;
            boolean audible = all[c].power(best) > UNHEARD * UNHEARD * loudest;
            signs[c] = audible && coefficient > 0.3 ? (int) Math.signum(all[c].re()[best]) : 0;
            likeness = Math.max(likeness, coefficient);
        }
        double place = best + vertex(all, best, lags) + template.length / 2;
        // Without the recording's own energy a longer template would win, and with it a wrong
        // stretch, which moves a sweep.
        double score = most / Math.max(templateEnergy * heardEnergy, 1e-300);
        return new Peak(place, score, likeness, signs, stretch);
    }

    private static double power(AnalyticCorrelation[] all, int lag) {
        double sum = 0;
        for (AnalyticCorrelation c : all) {
            sum += c.power(lag);
        }
        return sum;
    }

    /** Vertex of the parabola through the logarithms beside the peak, −½ to ½. */
    private static double vertex(AnalyticCorrelation[] all, int best, int lags) {
        if (best == 0 || best == lags - 1) {
            return 0;
        }
        double a = Math.log(power(all, best - 1) + 1e-300);
        double b = Math.log(power(all, best) + 1e-300);
        double c = Math.log(power(all, best + 1) + 1e-300);
        double bend = a - 2 * b + c;
        return bend < 0 ? Math.max(-0.5, Math.min(0.5, (a - c) / (2 * bend))) : 0;
    }

    private static double energy(double[] x, int from, int length) {
        double sum = 0;
        for (int i = from; i < from + length; i++) {
            sum += x[i] * x[i];
        }
        return sum;
    }
}
