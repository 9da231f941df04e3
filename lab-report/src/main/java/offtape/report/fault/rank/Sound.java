package offtape.report.fault.rank;

import java.util.List;

/**
 * How the symptoms of sound machines spread.
 *
 * @param tape {@code reel} or {@code cassette}
 * @param machines how many it was learned from
 * @param symptoms keys of the symptoms they show
 * @param mean of each, on its scale
 * @param covariance of each with those up to itself, on their scales: row i has i + 1 entries
 */
public record Sound(
        String tape, int machines, List<String> symptoms, double[] mean, double[][] covariance) {

    /** Copies the list so that the record cannot change. */
    public Sound {
        symptoms = List.copyOf(symptoms);
    }

    /** Covariance of two symptoms by their numbers in {@code symptoms}. */
    public double covariance(int i, int j) {
        return i >= j ? covariance[i][j] : covariance[j][i];
    }
}
