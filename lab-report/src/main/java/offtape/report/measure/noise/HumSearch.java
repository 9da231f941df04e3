package offtape.report.measure.noise;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.stream.IntStream;
import offtape.core.standard.SampleClock;
import offtape.core.text.Sentences;
import offtape.core.unit.Quantity;
import offtape.report.result.HumLine;

/**
 * Mains lines in recorded silence: steady lines at multiples of one frequency between 49 and 51 or
 * 59 and 61 Hz, sought together.
 *
 * <p>The power of a line of noise, over its mean, is exponentially distributed, so that a threshold
 * follows from how many places are looked at and how seldom noise alone may be taken for hum (one
 * silence in a thousand). For a candidate frequency the logarithms of what stands out at its
 * multiples are added; the best candidates are then fitted to all their lines together (for lines
 * in noise the sum of power over noise is the logarithm of the likelihood). A candidate counts if a
 * line of order 1, 2 or 3 is among its lines, and off the frequencies that mains keep, two of them
 * and three lines in all that stand out plainly. Each line must lie in its place and be steady from
 * beginning to end ({@link SteadyLine}), which notes of music are not.
 */
final class HumSearch {

    private static final Sentences SAID = Sentences.near(HumSearch.class);

    private static final int MULTIPLES = 12;
    private static final int LOW_ORDER = 3;
    private static final double[] NOMINAL_HZ = {50, 60};
    private static final double REACH_HZ = 1;

    /** Mains keep within this of their nominal frequency. */
    private static final double USUAL_HZ = 0.3;

    private static final int LINES_IF_UNUSUAL = 3;
    private static final int LOW_LINES_IF_UNUSUAL = 2;

    /** Such lines are over the threshold by this factor. */
    private static final double PLAIN = 10;

    private static final double FALSE_ALARMS = 1e-3;
    private static final double SHORTEST_S = 1;
    private static final int CANDIDATES = 12;

    /** A line this far over the noise is clear, as a ratio of powers. */
    private static final double CLEAR = 1000;

    /** Lines to either side whose power belongs to a line. */
    private static final double LINE_REACH = 2.5;

    private static final double OWN_UNCERTAINTY_DB = 0.02;

    private final LineSpectrum spectrum;
    private final double referencePower;
    private final double threshold;

    private HumSearch(LineSpectrum spectrum, double referencePower) {
        this.spectrum = spectrum;
        this.referencePower = referencePower;
        double places = 0;
        for (int m = 1; m <= LOW_ORDER; m++) {
            places += NOMINAL_HZ.length * 2 * REACH_HZ * m * spectrum.seconds();
        }
        this.threshold = Math.log(places / FALSE_ALARMS);
    }

    /**
     * Finds the lines.
     *
     * @param silence samples
     * @param referencePower mean square of the reference tone on the channel
     */
    static Hum find(double[] silence, double sampleRateHz, double referencePower) {
        if (silence.length < SHORTEST_S * sampleRateHz) {
            return Hum.unknown(SAID.say("hum-too-short"));
        }
        LineSpectrum spectrum = LineSpectrum.ofLows(silence, (int) Math.round(sampleRateHz));
        if (!(spectrum.noise(2 * NOMINAL_HZ[0]) > 0)) {
            return Hum.unknown(SAID.say("digital-silence"));
        }
        return new HumSearch(spectrum, referencePower).found();
    }

    /** Lines at multiples of a mains frequency, with the logarithm of their likelihood. */
    private record Series(double mainsHz, List<Line> lines, double score) {}

    private record Line(int order, double hz, double noise) {}

    private Hum found() {
        Series best = null;
        for (double nominal : NOMINAL_HZ) {
            double[] noise =
                    IntStream.rangeClosed(0, MULTIPLES)
                            .mapToDouble(m -> spectrum.noise(Math.max(1, m) * nominal))
                            .toArray();
            for (double candidate : candidates(nominal, noise)) {
                Series series = series(fitted(candidate, noise), noise);
                if (counts(series, nominal) && (best == null || series.score() > best.score())) {
                    best = series;
                }
            }
        }
        Quantity threshold = Quantity.known(thresholdDb(), "dB", 1);
        if (best == null) {
            return new Hum(List.of(), Quantity.unknown(SAID.say("no-hum")), threshold);
        }
        return new Hum(best.lines().stream().map(this::level).toList(), frequency(best), threshold);
    }

    private boolean counts(Series series, double nominal) {
        boolean usual = Math.abs(series.mainsHz() - nominal) <= USUAL_HZ;
        List<Line> lines =
                usual ? series.lines() : series.lines().stream().filter(this::plain).toList();
        long low = lines.stream().filter(l -> l.order() <= LOW_ORDER).count();
        return usual ? low > 0 : low >= LOW_LINES_IF_UNUSUAL && lines.size() >= LINES_IF_UNUSUAL;
    }

    private boolean plain(Line line) {
        return spectrum.power(line.hz()) > PLAIN * threshold * line.noise();
    }

    /** The frequencies at which most stands out, best first. */
    private List<Double> candidates(double nominal, double[] noise) {
        double step = 0.1 / MULTIPLES / spectrum.seconds();
        int count = 1 + (int) Math.ceil(2 * REACH_HZ / step);
        double[] score = new double[count];
        for (int i = 0; i < count; i++) {
            for (int m = 1; m <= MULTIPLES; m++) {
                double over = spectrum.power(m * (nominal - REACH_HZ + i * step)) / noise[m];
                score[i] += Math.max(0, Math.log(over / threshold));
            }
        }
        return IntStream.range(0, count)
                .filter(i -> i == 0 || score[i] >= score[i - 1])
                .filter(i -> i == count - 1 || score[i] > score[i + 1])
                .boxed()
                .sorted(Comparator.comparingDouble((Integer i) -> -score[i]))
                .limit(CANDIDATES)
                .map(i -> nominal - REACH_HZ + i * step)
                .toList();
    }

    /** The frequency near a candidate that is likeliest for all lines that stand out there. */
    private double fitted(double candidate, double[] noise) {
        int[] orders =
                IntStream.rangeClosed(1, MULTIPLES)
                        .filter(m -> spectrum.power(m * candidate) > threshold * noise[m])
                        .toArray();
        double reach = 0.5 / spectrum.seconds();
        double step = 0.02 / MULTIPLES / spectrum.seconds();
        double best = candidate;
        double most = 0;
        for (double hz = candidate - reach; hz <= candidate + reach; hz += step) {
            double at = hz;
            double sum =
                    Arrays.stream(orders).mapToDouble(m -> spectrum.power(m * at) / noise[m]).sum();
            if (sum > most) {
                most = sum;
                best = hz;
            }
        }
        return best;
    }

    private Series series(double mainsHz, double[] noise) {
        List<Line> lines = new ArrayList<>();
        double score = 0;
        for (int m = 1; m <= MULTIPLES; m++) {
            double over = spectrum.power(m * mainsHz) / noise[m];
            if (over > threshold && SteadyLine.is(spectrum, m * mainsHz, noise[m])) {
                lines.add(new Line(m, m * mainsHz, noise[m]));
                score += over;
            }
        }
        return new Series(mainsHz, lines, score);
    }

    /** A clear line is taken with what mains that wander put beside it. */
    private HumLine level(Line line) {
        double peak = spectrum.power(line.hz());
        double width = peak > CLEAR * line.noise() ? 2 * LINE_REACH / LineSpectrum.WIDTH : 1;
        double found = width > 1 ? spectrum.powerAround(line.hz(), LINE_REACH) : peak;
        double power = found - width * line.noise();
        double deviation =
                Math.sqrt(2 * power * line.noise() + width * line.noise() * line.noise()) / power;
        return new HumLine(
                line.hz(),
                10 * Math.log10(power / referencePower),
                Math.hypot(20 * Math.log10(1 + deviation), OWN_UNCERTAINTY_DB));
    }

    /**
     * The frequency of a line of power over noise R is known to √(3/R)/(πT), one standard
     * deviation, and half as much again under a Hann window; its mains frequency to an m-th of
     * that.
     */
    private Quantity frequency(Series series) {
        double information = 0;
        for (Line line : series.lines()) {
            double over = spectrum.power(line.hz()) / line.noise();
            double deviation = 1.5 * Math.sqrt(3 / over) / Math.PI / spectrum.seconds();
            information += Math.pow(line.order() / deviation, 2);
        }
        double uncertainty =
                Math.hypot(2 / Math.sqrt(information), SampleClock.UNCERTAINTY * series.mainsHz());
        return Quantity.known(series.mainsHz(), "Hz", uncertainty);
    }

    private double thresholdDb() {
        double most = 0;
        for (double nominal : NOMINAL_HZ) {
            for (int m = 1; m <= LOW_ORDER; m++) {
                most = Math.max(most, spectrum.noise(m * nominal));
            }
        }
        return 10 * Math.log10(threshold * most / referencePower);
    }
}
