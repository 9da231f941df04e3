package offtape.report.result;

import com.fasterxml.jackson.annotation.JsonInclude;
import java.util.List;
import offtape.core.unit.Quantity;

/**
 * The transport's own deviation, found from a return in which record and replay head heard the same
 * transport some moments apart; percent of the mean speed. Readings of the same names as in {@link
 * Speed}.
 *
 * @param deviation unknown: what runs too fast is written too fast and read too fast
 * @param drift change slower than 0.2 Hz, a steady one left out, which two sample clocks that
 *     differ would look like
 * @param weightedPeak weighted quasi-peak reading, IEC 60386
 * @param weightedTwoSigma weighted value exceeded 4.55 % of the time (AES6-2008)
 * @param weightedRms weighted root mean square
 * @param unweightedPeak quasi-peak reading of 0.2 Hz to 200 Hz
 * @param unweightedRms root mean square of 0.2 Hz to 200 Hz
 * @param wowRms root mean square of 0.2 Hz to 6 Hz
 * @param flutterRms root mean square of 6 Hz to 200 Hz
 * @param americanRms root mean square of 0.5 Hz to 200 Hz
 * @param components lines of the return with the peak that the transport itself has, largest first
 * @param headDelay time from record to replay head that was used, ms
 * @param delayFound how that time is known, a plain sentence, or null if it is not
 * @param recoveredBands rates at which nine tenths of the power or more come through, rising
 * @param notRecoveredShare share of the weighted power expected at other rates, 0 to 1, or null
 * @param estimator how the comb was undone, in a few words
 * @param trace deviation over time for charts, or null
 * @param spectrum spectrum of the deviation for charts, or null
 * @param notes what else is to be known, plain sentences
 */
@JsonInclude(JsonInclude.Include.NON_NULL)
public record TransportSpeed(
        Quantity deviation,
        Quantity drift,
        Quantity weightedPeak,
        Quantity weightedTwoSigma,
        Quantity weightedRms,
        Quantity unweightedPeak,
        Quantity unweightedRms,
        Quantity wowRms,
        Quantity flutterRms,
        Quantity americanRms,
        List<SpeedComponent> components,
        Quantity headDelay,
        String delayFound,
        List<RateBand> recoveredBands,
        Double notRecoveredShare,
        String estimator,
        SpeedTrace trace,
        TransportSpectrum spectrum,
        List<String> notes) {

    /** Copies the lists so that the record cannot change. */
    public TransportSpeed {
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
        recoveredBands = List.copyOf(recoveredBands);
        notes = List.copyOf(notes);
    }

    /** Nothing could be undone; every figure gives the reason. */
    public static TransportSpeed unknown(Quantity deviation, String reason) {
        Quantity q = Quantity.unknown(reason);
        return new TransportSpeed(
                deviation, q, q, q, q, q, q, q, q, q, List.of(), q, null, List.of(), null, null,
                null, null, List.of());
    }

    /** The same figures with other components and notes. */
    public TransportSpeed with(List<SpeedComponent> otherComponents, List<String> otherNotes) {
        return new TransportSpeed(
                deviation,
                drift,
                weightedPeak,
                weightedTwoSigma,
                weightedRms,
                unweightedPeak,
                unweightedRms,
                wowRms,
                flutterRms,
                americanRms,
                otherComponents,
                headDelay,
                delayFound,
                recoveredBands,
                notRecoveredShare,
                estimator,
                trace,
                spectrum,
                otherNotes);
    }
}
