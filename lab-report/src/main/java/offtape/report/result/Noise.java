package offtape.report.result;

import com.fasterxml.jackson.annotation.JsonInclude;
import java.util.List;
import offtape.core.unit.Quantity;

/**
 * Noise of recorded silence on one channel.
 *
 * @param channel {@code left} or {@code right}
 * @param unweighted 22.4 Hz to 22.4 kHz, rms, dB re reference
 * @param aWeighted A-weighted (IEC 61672-1), same band, rms, dB re reference
 * @param itu468 weighted quasi-peak (ITU-R BS.468-4), dB re reference
 * @param dynamicRange dB from A-weighted noise to maximum output level
 * @param hum mains lines that stand out of the noise
 * @param spectrum noise spectrum for charts, null if there was no silence
 */
@JsonInclude(JsonInclude.Include.NON_NULL)
public record Noise(
        String channel,
        Quantity unweighted,
        Quantity aWeighted,
        Quantity itu468,
        Quantity dynamicRange,
        List<HumLine> hum,
        NoiseSpectrum spectrum) {

    /** Copies the list so that the record cannot change. */
    public Noise {
        hum = List.copyOf(hum);
    }
}
