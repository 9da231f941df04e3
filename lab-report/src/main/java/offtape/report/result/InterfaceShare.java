package offtape.report.result;

import com.fasterxml.jackson.annotation.JsonInclude;
import java.util.List;

/**
 * What the interface has to do with the figures of a session from which it was taken out.
 *
 * @param entries one a figure and channel
 * @param responses the interface's own responses, one a channel that has one
 */
public record InterfaceShare(List<Entry> entries, List<ChannelCurve> responses) {

    /** Copies the lists so that the record cannot change. */
    public InterfaceShare {
        entries = List.copyOf(entries);
        responses = List.copyOf(responses);
    }

    /**
     * The interface beside one figure.
     *
     * @param figure what figure, in words
     * @param channel {@code left}, {@code right}, or null if it is one of both
     * @param unit unit of both values
     * @param own the interface's own value
     * @param heard the value with the interface in it, or null if that was not known
     * @param sharePercent its share of the power (of noise) or of the amplitude (of lines) that was
     *     heard, or null where a share says nothing
     * @param limits whether it limits what the session tells of the machine
     * @param treatment what was done about it, in words
     */
    @JsonInclude(JsonInclude.Include.NON_NULL)
    public record Entry(
            String figure,
            String channel,
            String unit,
            double own,
            Double heard,
            Double sharePercent,
            boolean limits,
            String treatment) {}

    /**
     * The interface's own response.
     *
     * @param channel {@code left} or {@code right}
     * @param frequencyHz frequencies, rising
     * @param magnitudeDb magnitude, 0 dB at 1 kHz, same length
     */
    public record ChannelCurve(String channel, double[] frequencyHz, double[] magnitudeDb) {}
}
