package offtape.report.compare;

import com.fasterxml.jackson.annotation.JsonProperty;
import java.util.List;
import offtape.core.text.Sentences;
import offtape.core.unit.Quantity;
import offtape.report.headline.Aim;
import org.apache.commons.math3.distribution.TDistribution;
import org.apache.commons.math3.stat.regression.SimpleRegression;

/**
 * How a figure moves over time: the straight line through its values by least squares.
 *
 * @param perYear its slope in the figure's unit a year (365.25 days), ± expanded (95 %)
 * @param sessions how many values it is laid through
 * @param direction whether that is better or worse; unclear if the slope is within its uncertainty
 */
public record Trend(Quantity perYear, int sessions, Change.Direction direction) {

    private static final Sentences SAID = Sentences.near(Trend.class);

    private static final double DAYS_A_YEAR = 365.25;
    private static final double UPPER_POINT = 0.975;

    /** A line through fewer tells nothing of how they scatter about it. */
    private static final int FEWEST = 3;

    /** Values nearer in time to each other tell of no trend. */
    private static final double SHORTEST_DAYS = 1;

    /**
     * Fits the line. Its uncertainty is from the scatter about it, by Student's t, or from the
     * stated uncertainties, whichever is more.
     *
     * @param points known values, in order of time
     */
    static Trend of(List<Course.Point> points, Aim aim) {
        int n = points.size();
        double span = n == 0 ? 0 : points.get(n - 1).days() - points.get(0).days();
        if (n < FEWEST || span < SHORTEST_DAYS) {
            String reason = n < FEWEST ? SAID.say("too-few-know-it") : SAID.say("within-a-day");
            return new Trend(Quantity.unknown(reason), n, Change.Direction.UNKNOWN);
        }
        SimpleRegression line = new SimpleRegression();
        points.forEach(p -> line.addData(p.days(), p.figure().value()));
        double middle = points.stream().mapToDouble(Course.Point::days).average().orElse(0);
        double stated = 0;
        for (Course.Point p : points) {
            double share = (p.days() - middle) / line.getXSumSquares();
            stated += Math.pow(share * p.figure().uncertainty(), 2);
        }
        double t = new TDistribution(n - 2.0).inverseCumulativeProbability(UPPER_POINT);
        double uncertainty = Math.max(t * line.getSlopeStdErr(), Math.sqrt(stated));
        double slope = line.getSlope();
        Quantity perYear =
                Quantity.known(
                        DAYS_A_YEAR * slope,
                        points.get(0).figure().unit(),
                        DAYS_A_YEAR * uncertainty);
        double first = line.predict(points.get(0).days());
        double last = line.predict(points.get(n - 1).days());
        boolean clear = Math.abs(slope) > uncertainty && aim.gain(first, last) != 0;
        return new Trend(
                perYear,
                n,
                !clear
                        ? Change.Direction.UNCLEAR
                        : aim.gain(first, last) > 0
                                ? Change.Direction.BETTER
                                : Change.Direction.WORSE);
    }

    /** The unit of the slope. */
    @JsonProperty
    public String unit() {
        return perYear.isKnown() ? perYear.unit() + " a year" : null;
    }
}
