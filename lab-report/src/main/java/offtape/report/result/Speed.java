package offtape.report.result;

import com.fasterxml.jackson.annotation.JsonInclude;
import java.util.List;
import offtape.core.unit.Quantity;

/**
 * Speed deviation and its modulation, all in percent of the nominal speed.
 *
 * @param deviation mean deviation, positive is fast
 * @param drift change slower than 0.2 Hz, from the lowest to the highest value
 * @param weightedPeak weighted quasi-peak reading, IEC 60386
 * @param weightedTwoSigma weighted value exceeded 4.55 % of the time (AES6-2008)
 * @param weightedRms weighted root mean square, Japanese practice (WRMS) and American weighted
 * @param unweightedPeak quasi-peak reading of 0.2 Hz to 200 Hz without weighting
 * @param unweightedRms root mean square of 0.2 Hz to 200 Hz
 * @param wowRms root mean square of 0.2 Hz to 6 Hz
 * @param flutterRms root mean square of 6 Hz to 200 Hz
 * @param weightedFloor weighted root mean square that the noise of the recording alone would read
 * @param toneFrequencyHz nominal frequency of the tone that was demodulated, null if there was none
 * @param components lines of the deviation, steady or slowly moving, largest first
 * @param trace deviation over time for charts, null if there was no tone
 * @param spectrum spectrum of the deviation for charts, null if there was no tone
 * @param fromSeconds where the tone that was read begins in the recording, null if there was none
 * @param seconds how long it was read, null if there was none
 * @param bandHz fastest change of speed that the tone can show, null if there was none
 * @param americanRms root mean square of 0.5 Hz to 200 Hz, American practice (NAB)
 * @param floors what the noise of the recording alone would read, null if there was no tone
 * @param readings weighted quasi-peak reading over time, null if the tone was too short
 * @param worstTenSeconds where wow and flutter is worst, null if the tone was too short
 * @param notes what else is to be known of the tone and its readings, plain sentences
 * @param passDifference mean speed of the replay against that of the recording by the same machine,
 *     percent, + is a faster replay; null if the tape was not recorded and replayed in two passes
 * @param passes several replays of the recording, null if there was one
 * @param transport the transport's own figures, {@code off-tape} only, else null
 * @param scrapeFlutter root mean square of changes of speed within {@code scrapeBandHz}, null if it
 *     was not measured
 * @param scrapeBandHz ends of the band of rates that count as scrape flutter, null if none was read
 */
@JsonInclude(JsonInclude.Include.NON_NULL)
public record Speed(
        Quantity deviation,
        Quantity drift,
        Quantity weightedPeak,
        Quantity weightedTwoSigma,
        Quantity weightedRms,
        Quantity unweightedPeak,
        Quantity unweightedRms,
        Quantity wowRms,
        Quantity flutterRms,
        Quantity weightedFloor,
        Double toneFrequencyHz,
        List<SpeedComponent> components,
        SpeedTrace trace,
        SpeedSpectrum spectrum,
        Double fromSeconds,
        Double seconds,
        Double bandHz,
        Quantity americanRms,
        SpeedFloors floors,
        SpeedReadings readings,
        WorstTenSeconds worstTenSeconds,
        List<String> notes,
        Quantity passDifference,
        Passes passes,
        TransportSpeed transport,
        Quantity scrapeFlutter,
        double[] scrapeBandHz) {

    /** Copies the lists so that the record cannot change. */
    public Speed {
        deviation = Told.orUnknown(deviation);
        drift = Told.orUnknown(drift);
        weightedPeak = Told.orUnknown(weightedPeak);
        weightedTwoSigma = Told.orUnknown(weightedTwoSigma);
        weightedRms = Told.orUnknown(weightedRms);
        unweightedPeak = Told.orUnknown(unweightedPeak);
        unweightedRms = Told.orUnknown(unweightedRms);
        wowRms = Told.orUnknown(wowRms);
        flutterRms = Told.orUnknown(flutterRms);
        components = List.copyOf(components);
        notes = List.copyOf(notes);
    }

    /** The figures of one return, by whatever way it came about. */
    public Speed(
            Quantity deviation,
            Quantity drift,
            Quantity weightedPeak,
            Quantity weightedTwoSigma,
            Quantity weightedRms,
            Quantity unweightedPeak,
            Quantity unweightedRms,
            Quantity wowRms,
            Quantity flutterRms,
            Quantity weightedFloor,
            Double toneFrequencyHz,
            List<SpeedComponent> components,
            SpeedTrace trace,
            SpeedSpectrum spectrum,
            Double fromSeconds,
            Double seconds,
            Double bandHz,
            Quantity americanRms,
            SpeedFloors floors,
            SpeedReadings readings,
            WorstTenSeconds worstTenSeconds,
            List<String> notes) {
        this(
                deviation,
                drift,
                weightedPeak,
                weightedTwoSigma,
                weightedRms,
                unweightedPeak,
                unweightedRms,
                wowRms,
                flutterRms,
                weightedFloor,
                toneFrequencyHz,
                components,
                trace,
                spectrum,
                fromSeconds,
                seconds,
                bandHz,
                americanRms,
                floors,
                readings,
                worstTenSeconds,
                notes,
                null,
                null,
                null,
                null,
                null);
    }

    /** No tone was read; every figure gives the reason. */
    public static Speed unknown(String reason) {
        Quantity q = Quantity.unknown(reason);
        return new Speed(
                        q, q, q, q, q, q, q, q, q, q, null, List.of(), null, null, null, null, null,
                        q, null, null, null, List.of())
                .withScrape(ScrapeReading.unknown(reason));
    }

    /** The same figures with other components. */
    public Speed withComponents(List<SpeedComponent> others) {
        return new Speed(
                deviation,
                drift,
                weightedPeak,
                weightedTwoSigma,
                weightedRms,
                unweightedPeak,
                unweightedRms,
                wowRms,
                flutterRms,
                weightedFloor,
                toneFrequencyHz,
                others,
                trace,
                spectrum,
                fromSeconds,
                seconds,
                bandHz,
                americanRms,
                floors,
                readings,
                worstTenSeconds,
                notes,
                passDifference,
                passes,
                transport,
                scrapeFlutter,
                scrapeBandHz);
    }

    /** The same figures with another mean and drift. */
    public Speed withMean(Quantity otherDeviation, Quantity otherDrift) {
        return new Speed(
                otherDeviation,
                otherDrift,
                weightedPeak,
                weightedTwoSigma,
                weightedRms,
                unweightedPeak,
                unweightedRms,
                wowRms,
                flutterRms,
                weightedFloor,
                toneFrequencyHz,
                components,
                trace,
                spectrum,
                fromSeconds,
                seconds,
                bandHz,
                americanRms,
                floors,
                readings,
                worstTenSeconds,
                notes,
                passDifference,
                passes,
                transport,
                scrapeFlutter,
                scrapeBandHz);
    }

    /** The same figures with what the tone tells of fast changes. */
    public Speed withScrape(ScrapeReading scrape) {
        return new Speed(
                deviation,
                drift,
                weightedPeak,
                weightedTwoSigma,
                weightedRms,
                unweightedPeak,
                unweightedRms,
                wowRms,
                flutterRms,
                weightedFloor,
                toneFrequencyHz,
                components,
                trace,
                spectrum,
                fromSeconds,
                seconds,
                bandHz,
                americanRms,
                floors == null ? null : floors.withScrapeFlutter(scrape.floor()),
                readings,
                worstTenSeconds,
                notes,
                passDifference,
                passes,
                transport,
                scrape.figure(),
                scrape.bandHz());
    }

    /** The same figures with the difference between two passes. */
    public Speed withPassDifference(Quantity other) {
        return new Speed(
                deviation,
                drift,
                weightedPeak,
                weightedTwoSigma,
                weightedRms,
                unweightedPeak,
                unweightedRms,
                wowRms,
                flutterRms,
                weightedFloor,
                toneFrequencyHz,
                components,
                trace,
                spectrum,
                fromSeconds,
                seconds,
                bandHz,
                americanRms,
                floors,
                readings,
                worstTenSeconds,
                notes,
                other,
                passes,
                transport,
                scrapeFlutter,
                scrapeBandHz);
    }

    /** The same figures with those of the transport itself. */
    public Speed withTransport(TransportSpeed own) {
        return new Speed(
                deviation,
                drift,
                weightedPeak,
                weightedTwoSigma,
                weightedRms,
                unweightedPeak,
                unweightedRms,
                wowRms,
                flutterRms,
                weightedFloor,
                toneFrequencyHz,
                components,
                trace,
                spectrum,
                fromSeconds,
                seconds,
                bandHz,
                americanRms,
                floors,
                readings,
                worstTenSeconds,
                notes,
                passDifference,
                passes,
                own,
                scrapeFlutter,
                scrapeBandHz);
    }

    /** The same figures with the readings of wow and flutter that stand for several replays. */
    public Speed withPasses(Passes several) {
        return new Speed(
                deviation,
                drift,
                several.mean().weightedPeak(),
                several.mean().weightedTwoSigma(),
                several.mean().weightedRms(),
                several.mean().unweightedPeak(),
                several.mean().unweightedRms(),
                several.mean().wowRms(),
                several.mean().flutterRms(),
                weightedFloor,
                toneFrequencyHz,
                components,
                trace,
                spectrum,
                fromSeconds,
                seconds,
                bandHz,
                several.mean().americanRms(),
                floors,
                readings,
                worstTenSeconds,
                notes,
                passDifference,
                several,
                transport,
                scrapeFlutter,
                scrapeBandHz);
    }
}
