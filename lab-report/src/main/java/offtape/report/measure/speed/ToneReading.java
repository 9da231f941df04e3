package offtape.report.measure.speed;

import offtape.report.result.ScrapeReading;
import offtape.report.result.Speed;

/**
 * What a steady tone tells.
 *
 * @param speed every reading
 * @param deviation what they were read from, null if there was no tone
 */
public record ToneReading(Speed speed, HeardDeviation deviation) {

    /** No tone was read; every figure gives the reason. */
    static ToneReading unknown(String reason) {
        return new ToneReading(Speed.unknown(reason), null);
    }

    /** The same with what the tone tells of fast changes. */
    ToneReading withScrape(ScrapeReading scrape) {
        return new ToneReading(speed.withScrape(scrape), deviation);
    }
}
