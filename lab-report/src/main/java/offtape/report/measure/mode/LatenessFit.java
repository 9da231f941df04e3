package offtape.report.measure.mode;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import offtape.report.locate.LateMoment;

/**
 * The straight line through the lateness of a return over the programme. Its slope is the
 * difference of two sample clocks, its start the delay of the path with wow averaged out.
 *
 * <p>What scatters about it is wow, alike within a part of the programme, so its variance is that
 * of parts and not of moments where this is more (the sandwich form for clusters: K.-Y. Liang, S.
 * L. Zeger, "Longitudinal data analysis using generalized linear models", Biometrika 73, 1986; from
 * memory).
 *
 * @param startSeconds lateness at the first frame of the programme
 * @param startUncertaintySeconds expanded, k = 2
 * @param slopePpm by how much the recording clock is fast re the player's
 * @param slopeUncertaintyPpm expanded, k = 2
 * @param moments what the line is laid through
 */
record LatenessFit(
        double startSeconds,
        double startUncertaintySeconds,
        double slopePpm,
        double slopeUncertaintyPpm,
        List<LateMoment> moments) {

    private static final int FEWEST_MOMENTS = 3;

    /** Parts of the programme must lie this far apart to tell a slope, seconds. */
    private static final double LEAST_SPAN_S = 5;

    /** What one moment is known within beside wow, seconds, standard deviation. */
    private static final double OWN_SECONDS = 2e-6;

    LatenessFit {
        moments = List.copyOf(moments);
    }

    /** The line, or empty if fewer than two parts tell it, or none far from the other. */
    static Optional<LatenessFit> of(List<LateMoment> moments) {
        double low = moments.stream().mapToDouble(LateMoment::programmeSeconds).min().orElse(0);
        double high = moments.stream().mapToDouble(LateMoment::programmeSeconds).max().orElse(0);
        long parts = moments.stream().map(LateMoment::part).distinct().count();
        if (moments.size() < FEWEST_MOMENTS || parts < 2 || high - low < LEAST_SPAN_S) {
            return Optional.empty();
        }
        double middle = mean(moments.stream().mapToDouble(LateMoment::programmeSeconds).toArray());
        double late = mean(moments.stream().mapToDouble(LateMoment::lateSeconds).toArray());
        double squares = 0;
        double products = 0;
        for (LateMoment m : moments) {
            squares += Math.pow(m.programmeSeconds() - middle, 2);
            products += (m.programmeSeconds() - middle) * (m.lateSeconds() - late);
        }
        double slope = products / squares;
        List<Double> slopeShares = new ArrayList<>();
        List<Double> startShares = new ArrayList<>();
        List<Double> rests = new ArrayList<>();

        for (LateMoment m : moments) {
            double x = m.programmeSeconds() - middle;
            rests.add(m.lateSeconds() - late - slope * x);
            slopeShares.add(x / squares);
            startShares.add(1.0 / moments.size() - middle * x / squares);
        }
        return Optional.of(
                new LatenessFit(
                        late - slope * middle,
                        expanded(moments, rests, startShares, 2),
                        1e6 * slope,
                        1e6 * expanded(moments, rests, slopeShares, 2),
                        moments));
    }

    /** Lateness at a programme time by the line, both in seconds. */
    double at(double programmeSeconds) {
        return startSeconds + 1e-6 * slopePpm * programmeSeconds;
    }

    /**
     * The line with a slope that is known, such as that of the same clocks at another time.
     *
     * @param ppm the slope
     */
    LatenessFit withSlope(double ppm) {
        List<Double> rests = new ArrayList<>();
        List<Double> shares = new ArrayList<>();
        double[] starts =
                moments.stream()
                        .mapToDouble(m -> m.lateSeconds() - 1e-6 * ppm * m.programmeSeconds())
                        .toArray();
        double start = mean(starts);
        for (double s : starts) {
            rests.add(s - start);
            shares.add(1.0 / starts.length);
        }
        return new LatenessFit(start, expanded(moments, rests, shares, 1), ppm, 0, moments);
    }

    private static double mean(double[] x) {
        double sum = 0;
        for (double v : x) {
            sum += v;
        }
        return sum / x.length;
    }

    /** Expanded uncertainty of a sum of the moments, each by its share. */
    private static double expanded(
            List<LateMoment> moments, List<Double> rests, List<Double> shares, int fitted) {
        Map<String, Double> parts = new LinkedHashMap<>();
        double squares = 0;
        double weights = 0;
        for (int i = 0; i < moments.size(); i++) {
            double share = shares.get(i);
            parts.merge(moments.get(i).part(), share * rests.get(i), Double::sum);
            squares += rests.get(i) * rests.get(i);
            weights += share * share;
        }
        int freedom = moments.size() - fitted;
        double alone = (squares / freedom + OWN_SECONDS * OWN_SECONDS) * weights;
        double clusters = parts.size();
        double together =
                parts.values().stream().mapToDouble(v -> v * v).sum() * clusters / (clusters - 1);
        // few parts tell their own scatter badly
        double factor = 2 * (1 + 2 / clusters);
        return factor * Math.sqrt(Math.max(alone, together));
    }
}
