package offtape.cli.realign;

import com.fasterxml.jackson.annotation.JsonInclude;
import java.util.List;

/**
 * What was done to one return.
 *
 * @param format always {@code offtape-realign}
 * @param version always 1
 * @param original name of the original's file
 * @param returned name of the return's file
 * @param file name of the file written
 * @param sampleRateHz of all of them
 * @param frames length of the original and of the file
 * @param delaySamples where the original's first frame lies in the return; above 0 the return is
 *     late
 * @param delayMs the same in milliseconds
 * @param delayUncertaintySamples expanded, k = 2
 * @param driftPpm by how much the return came back fast on average, parts in a million, as
 *     corrected; 0 if none is significant
 * @param driftUncertaintyPpm expanded, k = 2
 * @param channels what the path did to each
 * @param levelSet whether the path's gain was taken back
 * @param exact whether no sample was changed but for polarity
 * @param warp time errors beside the line of delay and drift
 * @param coherence mean squared coherence from 500 Hz to 8 kHz
 * @param missingAtStart frames at the beginning that the return does not hold; silence
 * @param missingAtEnd frames at the end likewise
 * @param encoding {@code pcm-16}, {@code pcm-24} or {@code float-32}
 * @param session comparison with what a session knows, or null
 * @param warnings sentences on what to mind
 */
@JsonInclude(JsonInclude.Include.NON_NULL)
public record RealignReport(
        String format,
        int version,
        String original,
        String returned,
        String file,
        int sampleRateHz,
        long frames,
        double delaySamples,
        double delayMs,
        double delayUncertaintySamples,
        double driftPpm,
        double driftUncertaintyPpm,
        List<Channel> channels,
        boolean levelSet,
        boolean exact,
        Warp warp,
        double coherence,
        long missingAtStart,
        long missingAtEnd,
        String encoding,
        AgainstSession session,
        List<String> warnings) {

    /** The value of {@code format}. */
    public static final String FORMAT = "offtape-realign";

    /** Copies the lists. */
    public RealignReport {
        channels = List.copyOf(channels);
        warnings = List.copyOf(warnings);
    }

    /**
     * One channel of the path.
     *
     * @param gainDb by how much it came back louder, dB
     * @param polarity {@code normal} or {@code inverted}
     */
    public record Channel(double gainDb, String polarity) {}

    /**
     * Time errors beside the line of delay and drift, where something sounds.
     *
     * @param removed whether they were taken out
     * @param beforeMicroseconds rms; null if too little of the track was followed to say
     * @param expectedAfterMicroseconds rms that is expected to be left, standard uncertainty of the
     *     course; null if they were not taken out
     * @param swingsHz frequencies of steady swings in them, the strongest first
     */
    @JsonInclude(JsonInclude.Include.NON_NULL)
    public record Warp(
            boolean removed,
            double beforeMicroseconds,
            Double expectedAfterMicroseconds,
            List<Double> swingsHz) {}
}
