package offtape.report.result;

import com.fasterxml.jackson.annotation.JsonPropertyOrder;
import java.util.List;
import offtape.core.unit.Quantity;

/**
 * Everything that the steady tones of a calibration tape tell: the content of {@code tones.json}.
 *
 * @param format always {@link #FORMAT}
 * @param version always {@link #VERSION}
 * @param recording name of the file
 * @param tape name of the tape by its list, or null
 * @param sampleRateHz of the recording
 * @param channels measured
 * @param tapeSpeedMmPerS nominal tape speed, or null
 * @param series the list of frequencies that fits
 * @param reference the zero of the levels of tones
 * @param responseZero the zero of the response, or null if there is none
 * @param speedDeviation %, positive is fast
 * @param speedFrom what the deviation was read from, a plain sentence, or null
 * @param channelDifference of the reference tone, dB, right re left
 * @param interchannelDelay of all tones together, µs, positive if the right channel is late
 * @param azimuth arc minutes, positive if the right channel is late
 * @param polarity of the channels to each other, {@code normal} or {@code inverted}, or null
 * @param tapeEqualisation time constants the tape was recorded to, µs, or null
 * @param machineEqualisation time constants the machine is set to, µs, or null
 * @param tones in order of the recording
 * @param response one a channel; empty if there are fewer than two tones for it
 * @param speed wow and flutter of the tone for it, or null
 * @param speedTone number of that tone, or null
 * @param notes what else is to be known, plain sentences
 */
@JsonPropertyOrder({"format", "version"})
public record TapeReading(
        String format,
        int version,
        String recording,
        String tape,
        int sampleRateHz,
        int channels,
        Double tapeSpeedMmPerS,
        TapeSeries series,
        TapeReference reference,
        TapeReference responseZero,
        Quantity speedDeviation,
        String speedFrom,
        Quantity channelDifference,
        Quantity interchannelDelay,
        Quantity azimuth,
        String polarity,
        String tapeEqualisation,
        String machineEqualisation,
        List<TapeTone> tones,
        List<TapeResponse> response,
        Speed speed,
        Integer speedTone,
        List<String> notes) {

    /** The value of {@code format}. */
    public static final String FORMAT = "offtape-tone-readings";

    /** The version of the format written here. */
    public static final int VERSION = 1;

    /** Copies the lists so that the record cannot change. */
    public TapeReading {
        tones = List.copyOf(tones);
        response = List.copyOf(response);
        notes = List.copyOf(notes);
    }
}
