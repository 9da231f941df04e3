package offtape.report.result;

import offtape.core.unit.Quantity;

/**
 * Fast changes of speed that a tone shows.
 *
 * @param figure root mean square, percent
 * @param floor what the noise of the recording alone would read, percent; null if nothing was read
 * @param bandHz ends of the band of rates that count, Hz; null if nothing was read
 */
public record ScrapeReading(Quantity figure, Double floor, double[] bandHz) {

    /** Nothing was read, for a reason. */
    public static ScrapeReading unknown(String reason) {
        return new ScrapeReading(Quantity.unknown(reason), null, null);
    }
}
