package offtape.report.result;

import java.util.List;

/**
 * The list of frequencies that the tones of a tape were taken for.
 *
 * @param kind {@code given}, {@code octave}, {@code third-octave}, {@code round}, {@code usual} or
 *     {@code none}
 * @param name in words
 * @param matched how many tones have a nominal frequency in it
 * @param speedFactor common factor of heard over nominal frequencies, or null
 * @param ambiguous whether the tones fit in more than one way
 * @param missingHz frequencies of the given list that were not found
 */
public record TapeSeries(
        String kind,
        String name,
        int matched,
        Double speedFactor,
        boolean ambiguous,
        List<Double> missingHz) {

    /** Copies the list so that the record cannot change. */
    public TapeSeries {
        missingHz = List.copyOf(missingHz);
    }
}
