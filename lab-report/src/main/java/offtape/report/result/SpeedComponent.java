package offtape.report.result;

import com.fasterxml.jackson.annotation.JsonInclude;

/**
 * A line of the speed deviation, steady or slowly moving. Uncertainties are expanded, k = 2.
 *
 * @param frequencyHz rate of the line; of a moving line at the beginning of the tone
 * @param peakPercent peak deviation it causes, percent
 * @param part the part it belongs to, or null if not known
 * @param frequencyUncertaintyHz of the rate, Hz
 * @param peakUncertaintyPercent of the peak, percent
 * @param endFrequencyHz rate of a moving line at the end of the tone, or of its first ten minutes;
 *     null if it does not move
 * @param frequencyChangeHzPerMinute mean change of a moving line's rate, + is faster, or null
 * @param frequencyChangeUncertaintyHzPerMinute of the change, also of a line that shows none, or
 *     null if the line was not tried for movement
 * @param note a remark in words, or null
 */
@JsonInclude(JsonInclude.Include.NON_NULL)
public record SpeedComponent(
        double frequencyHz,
        double peakPercent,
        @JsonInclude String part,
        double frequencyUncertaintyHz,
        double peakUncertaintyPercent,
        Double endFrequencyHz,
        Double frequencyChangeHzPerMinute,
        Double frequencyChangeUncertaintyHzPerMinute,
        String note) {

    /** A steady line. */
    public static SpeedComponent steady(
            double hz, double percent, String part, double hzUncertainty, double uncertainty) {
        return new SpeedComponent(
                hz, percent, part, hzUncertainty, uncertainty, null, null, null, null);
    }

    /** The same line with a part's name. */
    public SpeedComponent named(String name) {
        return new SpeedComponent(
                frequencyHz,
                peakPercent,
                name,
                frequencyUncertaintyHz,
                peakUncertaintyPercent,
                endFrequencyHz,
                frequencyChangeHzPerMinute,
                frequencyChangeUncertaintyHzPerMinute,
                note);
    }

    /** The same line with another peak, percent, and its uncertainty, k = 2. */
    public SpeedComponent withPeak(double percent, double uncertainty) {
        return new SpeedComponent(
                frequencyHz,
                percent,
                part,
                frequencyUncertaintyHz,
                uncertainty,
                endFrequencyHz,
                frequencyChangeHzPerMinute,
                frequencyChangeUncertaintyHzPerMinute,
                note);
    }

    /** Whether its rate moves. */
    public boolean moves() {
        return endFrequencyHz != null;
    }

    /** Its rate halfway through the tone. */
    public double middleHz() {
        return moves() ? (frequencyHz + endFrequencyHz) / 2 : frequencyHz;
    }
}
