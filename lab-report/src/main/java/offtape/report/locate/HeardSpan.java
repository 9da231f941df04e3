package offtape.report.locate;

import java.util.Arrays;
import java.util.List;
import offtape.core.dsp.AnalyticCorrelation;
import offtape.core.dsp.AnalyticSignal;
import offtape.core.dsp.Spectrum;

/** A stretch of the recording in which something is sought by matched filter. */
final class HeardSpan {

    /** A channel that correlates with less than this share of the louder one is not heard. */
    private static final double UNHEARD = 0.02;

    /** The least correlation coefficient that tells polarity. */
    private static final double TELLING = 0.3;

    private final double[][] samples;
    private final List<Spectrum> spectra;
    private final List<AnalyticSignal> signals;

    private HeardSpan(double[][] samples, List<Spectrum> spectra) {
        this.samples = samples;
        this.spectra = spectra;
        this.signals = spectra.stream().map(AnalyticSignal::of).toList();
    }

    /** What the recording holds, one array a channel. */
    static HeardSpan of(double[][] samples) {
        return new HeardSpan(
                samples, Arrays.stream(samples).map(AnalyticCorrelation::spectrum).toList());
    }

    /**
     * The best lag of a template.
     *
     * @param place sample on which the middle of the template lies
     * @param score share of the recording's power that the template explains
     * @param likeness correlation coefficient of the channel that is most like it
     * @param signs polarity of each channel, 0 where it is not heard
     * @param stretch at which the template was made
     */
    record Peak(double place, double score, double likeness, int[] signs, double stretch) {}

    /** The best of all lags. */
    Peak anywhere(double[] template, double stretch) {
        double[] power = powers(spectra, samples[0].length, template);
        return at(template, strongest(power), stretch);
    }

    /** The best lag near a place, by going uphill from there. */
    Peak near(double[] template, double place, double stretch) {
        int last = samples[0].length - template.length;
        int lag = (int) Math.rint(place) - template.length / 2;
        lag = Math.max(0, Math.min(last, lag));
        double here = power(template, lag);
        for (int side = -1; side <= 1; side += 2) {
            double beside = lag + side < 0 || lag + side > last ? -1 : power(template, lag + side);
            while (beside > here) {
                lag += side;
                here = beside;
                beside = lag + side < 0 || lag + side > last ? -1 : power(template, lag + side);
            }
        }
        return at(template, lag, stretch);
    }

    /** The same stretch with every so many-th sample, for a first look at many templates. */
    Thinned thinned(int step) {
        return new Thinned(step);
    }

    /** The stretch at a lower rate. */
    final class Thinned {
        private final int step;
        private final List<Spectrum> thin;
        private final int length;
        private final double[] energyBefore;

        private Thinned(int step) {
            this.step = step;
            this.thin = spectra.stream().map(s -> s.thinned(step)).toList();
            this.length = samples[0].length / step;
            this.energyBefore = new double[samples[0].length + 1];
            for (int i = 0; i < samples[0].length; i++) {
                double sum = 0;
                for (double[] channel : samples) {
                    sum += channel[i] * channel[i];
                }
                energyBefore[i + 1] = energyBefore[i] + sum;
            }
        }

        /** Where a template of the lower rate fits best, and about how well. */
        Glance glance(double[] template, double stretch) {
            double[] power = powers(thin, length, template);
            int best = strongest(power);
            int from = best * step;
            double heard = energyBefore[from + template.length * step] - energyBefore[from];
            double score =
                    power[best] / Math.max(energy(template, 0, template.length) * heard, 1e-300);
            return new Glance((best + template.length / 2) * (double) step, score, stretch);
        }
    }

    /**
     * A first look at a template.
     *
     * @param place sample on which the middle of the template lies, roughly
     * @param score grows with the share of the power that it explains
     */
    record Glance(double place, double score, double stretch) {}

    private static double[] powers(List<Spectrum> spectra, int length, double[] template) {
        double[] sum = new double[length - template.length + 1];
        for (AnalyticCorrelation c : AnalyticCorrelation.ofAll(spectra, length, template)) {
            for (int k = 0; k < sum.length; k++) {
                sum[k] += c.power(k);
            }
        }
        return sum;
    }

    private static int strongest(double[] power) {
        int best = 0;
        for (int k = 1; k < power.length; k++) {
            best = power[k] > power[best] ? k : best;
        }
        return best;
    }

    private double power(double[] template, int lag) {
        double sum = 0;
        for (AnalyticSignal signal : signals) {
            sum += signal.power(template, lag);
        }
        return sum;
    }

    private Peak at(double[] template, int best, double stretch) {
        double templateEnergy = energy(template, 0, template.length);
        double[] powers = signals.stream().mapToDouble(s -> s.power(template, best)).toArray();
        double loudest = Arrays.stream(powers).max().orElse(0);
        int[] signs = new int[samples.length];
        double likeness = 0;
        double heardEnergy = 0;
        double most = 0;
        for (int c = 0; c < samples.length; c++) {
            double here = energy(samples[c], best, template.length);
            heardEnergy += here;
            most += powers[c];
            double both = here * templateEnergy;
            double coefficient = both > 0 ? Math.sqrt(powers[c] / both) : 0;
            boolean audible = powers[c] > UNHEARD * UNHEARD * loudest;
            signs[c] =
                    audible && coefficient > TELLING
                            ? (int) Math.signum(signals.get(c).plain(template, best))
                            : 0;
            likeness = Math.max(likeness, coefficient);
        }
        double place = best + vertex(template, best, most) + template.length / 2;
        // Without the recording's own energy a longer template would win, and with it a wrong
        // stretch, which moves a sweep.
        double score = most / Math.max(templateEnergy * heardEnergy, 1e-300);
        return new Peak(place, score, likeness, signs, stretch);
    }

    /** Vertex of the parabola through the logarithms beside the peak, −½ to ½. */
    private double vertex(double[] template, int best, double most) {
        if (best == 0 || best == samples[0].length - template.length) {
            return 0;
        }
        double a = Math.log(power(template, best - 1) + 1e-300);
        double b = Math.log(most + 1e-300);
        double c = Math.log(power(template, best + 1) + 1e-300);
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
