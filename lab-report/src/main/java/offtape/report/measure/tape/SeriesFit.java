package offtape.report.measure.tape;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;

/**
 * Tones taken for frequencies of a series, all by one factor of speed.
 *
 * @param series the list they were held against
 * @param factor heard over nominal
 * @param nominal for each tone, NaN-free: 0 where it fits none
 */
record SeriesFit(UsualSeries series, double factor, double[] nominal) {

    /**
     * How far a tone may lie off once the common factor is known: wow, and the tape's own error.
     */
    private static final double TOLERANCE = 0.008;

    /** The same while the factor is still that of a single pair. */
    private static final double ROUGH = 0.016;

    /** Fits whose factors differ by more than this are different ones. */
    private static final double OTHER = 0.01;

    private static final double ENOUGH = 0.75;
    private static final double ENOUGH_OF_ALL = 0.85;

    /** Tones that lie off by less than this share of what others do fit better. */
    private static final double BETTER = 0.5;

    /** With fewer tones another speed is no better explanation than an odd tone. */
    private static final int FEWEST = 3;

    /** How many tones fit. */
    int matched() {
        return (int) Arrays.stream(nominal).filter(n -> n > 0).count();
    }

    /** How far the tones lie off, root mean square of the shares. */
    private double residual(double[] heard) {
        double squares = 0;
        for (int i = 0; i < heard.length; i++) {
            double off = nominal[i] > 0 ? Math.log(heard[i] / nominal[i] / factor) : 0;
            squares += off * off;
        }
        return Math.sqrt(squares / Math.max(1, matched()));
    }

    /** Whether two tones that are heard are one. */
    static boolean isSame(double hz, double otherHz) {
        return Math.abs(hz / otherHz - 1) < TOLERANCE;
    }

    /** Tones within a percent of each other count once. */
    static double[] distinct(double[] heard) {
        List<Double> all = new ArrayList<>();
        for (double h : heard) {
            if (all.stream().noneMatch(a -> isSame(a, h))) {
                all.add(h);
            }
        }
        return all.stream().mapToDouble(d -> d).toArray();
    }

    /**
     * All the ways in which as many tones as possible fit, the most probable first: the one nearest
     * to the right speed, of the plainest series. Half and double speed are taken if more fit there
     * and these fit better, or if no more than chance would let fit otherwise.
     *
     * @param heard frequencies, Hz, each once
     * @return empty if none fits or too few do
     */
    static List<SeriesFit> of(double[] heard) {
        List<SeriesFit> right = best(heard, SpeedGuess.RIGHT);
        List<SeriesFit> wrong = heard.length < FEWEST ? List.of() : wrong(heard);
        if (right.isEmpty() || !right.get(0).isCredible()) {
            return !wrong.isEmpty() && wrong.get(0).isCredible() ? wrong : List.of();
        }
        boolean moreFit = !wrong.isEmpty() && wrong.get(0).matched() > right.get(0).matched();
        return moreFit && wrong.get(0).residual(heard) < BETTER * right.get(0).residual(heard)
                ? wrong
                : right;
    }

    /**
     * The same where the speed is known from one tone. What that was recorded with belongs to every
     * list if it is no usual frequency.
     *
     * @param heard frequencies, Hz, each once
     * @param toneHz frequency of that tone
     * @param nominalHz frequency it was recorded with
     * @return empty if no tone fits, or no other than that of an unusual frequency
     */
    static List<SeriesFit> of(double[] heard, double toneHz, double nominalHz) {
        boolean isUsual = contains(UsualSeries.USUAL.frequenciesHz(), nominalHz);
        List<SeriesFit> all = new ArrayList<>();
        for (UsualSeries series : UsualSeries.values()) {
            double[] list = series.frequenciesHz();
            double[] more = Arrays.copyOf(list, list.length + (isUsual ? 0 : 1));
            if (!isUsual) {
                more[list.length] = nominalHz;
            }
            SeriesFit fit = at(heard, more, series, toneHz / nominalHz);
            if (Arrays.stream(fit.nominal).anyMatch(n -> contains(list, n))) {
                all.add(fit);
            }
        }
        return best(all, heard);
    }

    private static boolean contains(double[] list, double hz) {
        return Arrays.stream(list).anyMatch(l -> l == hz);
    }

    /** Whether so many tones fit that it is no chance: dense series catch more by chance. */
    private boolean isCredible() {
        double least = series == UsualSeries.USUAL ? ENOUGH_OF_ALL : ENOUGH;
        return matched() >= least * nominal.length;
    }

    /** As many as possible at half or double speed. */
    static List<SeriesFit> wrong(double[] heard) {
        return best(heard, SpeedGuess.HALF, SpeedGuess.DOUBLE);
    }

    private static List<SeriesFit> best(double[] heard, double[]... ranges) {
        List<SeriesFit> all = new ArrayList<>();
        for (UsualSeries series : UsualSeries.values()) {
            double[] list = series.frequenciesHz();
            for (double[] range : ranges) {
                for (double factor : SpeedGuess.of(heard, list, range)) {
                    all.add(at(heard, list, series, factor));
                }
            }
        }
        return best(all, heard);
    }

    /** Those in which most tones fit, each once. */
    private static List<SeriesFit> best(List<SeriesFit> all, double[] heard) {
        int most = all.stream().mapToInt(SeriesFit::matched).max().orElse(0);
        boolean isNamed =
                all.stream().anyMatch(f -> f.matched() == most && f.series != UsualSeries.USUAL);
        List<SeriesFit> best = new ArrayList<>();
        all.stream()
                .filter(f -> f.matched() == most && !(isNamed && f.series == UsualSeries.USUAL))
                .sorted(
                        Comparator.comparingDouble((SeriesFit f) -> f.fromRight(heard))
                                .thenComparing(SeriesFit::series))
                .filter(f -> best.stream().noneMatch(b -> b.isLike(f)))
                .forEach(best::add);
        return List.copyOf(best);
    }

    /** Distance of the factor from 1, ½ or 2 in steps of OTHER, and within a step the residual. */
    private double fromRight(double[] heard) {
        double off = Math.abs(Math.log(factor));
        double octave = Math.abs(off - Math.log(2));
        return Math.floor(Math.min(off, octave) / OTHER + 0.5) + Math.min(0.9, residual(heard));
    }

    private boolean isLike(SeriesFit other) {
        return Math.abs(factor / other.factor - 1) < OTHER;
    }

    private static SeriesFit at(
            double[] heard, double[] list, UsualSeries series, double firstFactor) {
        double factor = firstFactor;
        double[] nominal = nearest(heard, list, factor, ROUGH);
        for (int round = 0; round < 3; round++) {
            factor = meanFactor(heard, nominal, factor);
            nominal = nearest(heard, list, factor, TOLERANCE);
        }
        return new SeriesFit(series, meanFactor(heard, nominal, factor), nominal);
    }

    private static double meanFactor(double[] heard, double[] nominal, double otherwise) {
        double sum = 0;
        int count = 0;
        for (int i = 0; i < heard.length; i++) {
            if (nominal[i] > 0) {
                sum += Math.log(heard[i] / nominal[i]);
                count++;
            }
        }
        return count == 0 ? otherwise : Math.exp(sum / count);
    }

    private static double[] nearest(double[] heard, double[] list, double factor, double within) {
        double[] nominal = new double[heard.length];
        for (int i = 0; i < heard.length; i++) {
            double wanted = heard[i] / factor;
            double best = 0;
            for (double l : list) {
                boolean nearer = Math.abs(Math.log(l / wanted)) < Math.abs(Math.log(best / wanted));
                best = best == 0 || nearer ? l : best;
            }
            nominal[i] = Math.abs(Math.log(best / wanted)) < within ? best : 0;
        }
        return nominal;
    }
}
