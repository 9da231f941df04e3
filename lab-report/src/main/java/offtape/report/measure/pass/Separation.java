package offtape.report.measure.pass;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import offtape.core.fault.Background;
import offtape.core.standard.FlutterBand;
import offtape.report.measure.line.FoundLine;
import offtape.report.measure.line.LineSearch;

/**
 * Parts the deviations of several replays into what repeats with the tape and what does not: lines
 * one by one, since a rotating part is in every replay too and only falls into another phase
 * ({@link RingPosterior}), the rest by what the replays have in common ({@link SharedPower}).
 */
final class Separation {

    private static final int MOST_LINES = 12;

    /** Lines closer than this many bins are one. */
    private static final double SAME_BINS = 1.5;

    private final List<Parted> lines = new ArrayList<>();
    private final SharedPower rest;

    /**
     * A line in its two parts.
     *
     * @param line where it lies along the tape
     * @param ring its parts
     */
    record Parted(TapeLine line, RingPosterior ring) {}

    /**
     * Parts deviations.
     *
     * @param series deviations over the same stretch of tape about their means, percent; two or
     *     more, equally long, not modified
     * @param rateHz values a second, more than 400
     */
    Separation(double[][] series, double rateHz) {
        double seconds = series[0].length / rateHz;
        double[][] left = new double[series.length][];
        for (int p = 0; p < left.length; p++) {
            left[p] = series[p].clone();
        }
        List<TapeLine> found = lines(series, rateHz, seconds);
        LinePhasors phasors = LinePhasors.takenOut(found, left, rateHz);
        this.rest = SharedPower.of(left, rateHz);
        for (int l = 0; l < found.size(); l++) {
            double noise = Math.sqrt(rest.ownNear(found.get(l).hz()));
            double common = Math.sqrt(rest.commonNear(found.get(l).hz()));
            lines.add(new Parted(found.get(l), RingPosterior.of(phasors.of(l), noise, common)));
        }
    }

    /** The lines of all replays, each once, as where it is strongest. */
    private static List<TapeLine> lines(double[][] series, double rateHz, double seconds) {
        List<FoundLine> all = new ArrayList<>();
        Background.each(List.of(series), x -> LineSearch.find(x, rateHz)).forEach(all::addAll);
        all.sort(Comparator.comparingDouble(l -> -l.peakPercent()));
        List<FoundLine> each = new ArrayList<>();
        for (FoundLine line : all) {
            boolean isNew =
                    each.stream()
                            .noneMatch(
                                    e ->
                                            Math.abs(e.middleHz() - line.middleHz())
                                                    < SAME_BINS / seconds);
            if (isNew && each.size() < MOST_LINES) {
                each.add(line);
            }
        }
        return each.stream().map(l -> TapeLine.of(l, seconds)).toList();
    }

    /** The lines, strongest first. */
    List<Parted> lines() {
        return lines;
    }

    /** What repeats with the tape. */
    Share written(FlutterBand band) {
        Share sum = rest.common(band);
        for (Parted l : lines) {
            sum = sum.plus(l.ring().still().share().times(power(band, l)));
        }
        return sum;
    }

    /** What a replay adds. */
    Share read(FlutterBand band) {
        Share sum = rest.own(band);
        for (Parted l : lines) {
            sum = sum.plus(l.ring().turning().share().times(power(band, l)));
        }
        return sum;
    }

    private static double power(FlutterBand band, Parted line) {
        double gain = band.gain(line.line().hz());
        return gain * gain;
    }
}
