package offtape.report.compare;

import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import offtape.core.unit.Quantity;
import offtape.report.headline.Headline;
import offtape.report.result.Results;
import org.apache.commons.math3.distribution.TDistribution;
import org.apache.commons.math3.stat.StatUtils;

/**
 * How much the figures of one unchanged machine scatter when it is measured again and again.
 *
 * @param sessions measurings of it with nothing done in between; none if there were none
 */
record Repeatability(List<Results> sessions) {

    /** Two-sided 95 %. */
    private static final double UPPER_POINT = 0.975;

    /** Leaves out what is the same recording, which scatters by nothing. */
    Repeatability {
        Set<String> seen = new HashSet<>();
        sessions = sessions.stream().filter(s -> seen.add(s.session().recordingSha256())).toList();
    }

    /**
     * By how much two measurings differ, expanded: Student's t for the few there are times the
     * scatter of a difference, √2 times that of one (JCGM 100, annex G).
     *
     * @param figure its place among the channels of the headline
     * @return empty if fewer than two sessions know it
     */
    Optional<Double> of(String headline, int figure) {
        double[] values =
                sessions.stream()
                        .flatMap(r -> Headline.named(Headline.of(r), headline).stream())
                        .filter(h -> figure < h.figures().size())
                        .map(h -> h.figures().get(figure))
                        .filter(Quantity::isKnown)
                        .mapToDouble(Quantity::value)
                        .toArray();
        if (values.length < 2) {
            return Optional.empty();
        }
        double t = new TDistribution(values.length - 1.0).inverseCumulativeProbability(UPPER_POINT);
        return Optional.of(t * Math.sqrt(2 * StatUtils.variance(values)));
    }
}
