package offtape.report.result;

import com.fasterxml.jackson.annotation.JsonInclude;
import java.util.List;
import java.util.Objects;
import offtape.core.unit.Quantity;

/**
 * Noise of recorded silence on one channel.
 *
 * @param channel {@code left} or {@code right}
 * @param unweighted rms in {@code unweightedBandHz}, dB re reference
 * @param aWeighted A-weighted (IEC 61672-1), same band, rms, dB re reference
 * @param itu468 weighted quasi-peak (ITU-R BS.468-4), dB re reference
 * @param dynamicRange dB from A-weighted noise to maximum output level
 * @param hum mains lines that stand out of the noise
 * @param spectrum noise spectrum for charts, null if there was no silence
 * @param unweightedBandHz ends of the band of the unweighted noise: 22.4 Hz to 22.4 kHz, or to half
 *     the sample rate where that is lower; null if there was no silence
 * @param mainsFrequency frequency whose multiples the mains lines are, Hz
 * @param humThreshold level from which a mains line of low order would have been found, dB re
 *     reference
 * @param modulationNoise rms fluctuation of the level of a steady tone at rates from 10 Hz to 1
 *     kHz, the silence's share taken out, dB re the tone
 * @param residue rms over the silence of what is heard there beside hiss and hum, as of an earlier
 *     recording, dB re reference; null if it was not looked for
 */
@JsonInclude(JsonInclude.Include.NON_NULL)
public record Noise(
        String channel,
        Quantity unweighted,
        Quantity aWeighted,
        Quantity itu468,
        Quantity dynamicRange,
        List<HumLine> hum,
        NoiseSpectrum spectrum,
        double[] unweightedBandHz,
        Quantity mainsFrequency,
        Quantity humThreshold,
        Quantity modulationNoise,
        Quantity residue) {

    /** Copies the list so that the record cannot change; a figure that is missing is unknown. */
    public Noise {
        Objects.requireNonNull(channel, "channel");
        unweighted = Told.orUnknown(unweighted);
        aWeighted = Told.orUnknown(aWeighted);
        itu468 = Told.orUnknown(itu468);
        dynamicRange = Told.orUnknown(dynamicRange);
        hum = List.copyOf(hum);
    }

    /** Noise of a silence in which no earlier recording was looked for. */
    public Noise(
            String channel,
            Quantity unweighted,
            Quantity aWeighted,
            Quantity itu468,
            Quantity dynamicRange,
            List<HumLine> hum,
            NoiseSpectrum spectrum,
            double[] unweightedBandHz,
            Quantity mainsFrequency,
            Quantity humThreshold,
            Quantity modulationNoise) {
        this(
                channel,
                unweighted,
                aWeighted,
                itu468,
                dynamicRange,
                hum,
                spectrum,
                unweightedBandHz,
                mainsFrequency,
                humThreshold,
                modulationNoise,
                null);
    }
}
