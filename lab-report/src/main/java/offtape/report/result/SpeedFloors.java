package offtape.report.result;

import com.fasterxml.jackson.annotation.JsonInclude;

/**
 * What the noise of the recording alone would read, beside each reading of the same name; percent.
 * A reading that is unknown has none (null).
 *
 * @param weightedPeak quasi-peak, weighted: the highest of a minute or so
 * @param weightedTwoSigma two sigma, weighted
 * @param weightedRms root mean square, weighted
 * @param unweightedPeak quasi-peak of 0.2 Hz to 200 Hz
 * @param unweightedRms root mean square of 0.2 Hz to 200 Hz
 * @param wowRms root mean square of 0.2 Hz to 6 Hz
 * @param flutterRms root mean square of 6 Hz to 200 Hz
 * @param americanRms root mean square of 0.5 Hz to 200 Hz
 * @param scrapeFlutter root mean square of the band of scrape flutter
 */
@JsonInclude(JsonInclude.Include.NON_NULL)
public record SpeedFloors(
        Double weightedPeak,
        Double weightedTwoSigma,
        Double weightedRms,
        Double unweightedPeak,
        Double unweightedRms,
        Double wowRms,
        Double flutterRms,
        Double americanRms,
        Double scrapeFlutter) {

    /** The floors of the readings of wow and flutter. */
    public SpeedFloors(
            Double weightedPeak,
            Double weightedTwoSigma,
            Double weightedRms,
            Double unweightedPeak,
            Double unweightedRms,
            Double wowRms,
            Double flutterRms,
            Double americanRms) {
        this(
                weightedPeak,
                weightedTwoSigma,
                weightedRms,
                unweightedPeak,
                unweightedRms,
                wowRms,
                flutterRms,
                americanRms,
                null);
    }

    /** The same with the floor of scrape flutter, percent, or null. */
    public SpeedFloors withScrapeFlutter(Double floor) {
        return new SpeedFloors(
                weightedPeak,
                weightedTwoSigma,
                weightedRms,
                unweightedPeak,
                unweightedRms,
                wowRms,
                flutterRms,
                americanRms,
                floor);
    }
}
