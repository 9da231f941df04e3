package offtape.report.result;

import com.fasterxml.jackson.annotation.JsonInclude;
import com.fasterxml.jackson.annotation.JsonProperty;
import com.fasterxml.jackson.annotation.JsonPropertyOrder;
import java.util.List;

/**
 * Everything one session found: the content of {@code results.json}. Levels are in dB relative to
 * the reference tone as it returns on the same channel unless a member says otherwise.
 *
 * @param format always {@link #FORMAT}
 * @param version always {@link #VERSION}
 * @param dropoutSummary how often the sound breaks off, or null
 * @param interfaceFigures what later sessions need of the interface; of a loopback session only
 * @param interfaceShare what the interface has to do with the figures; where a loopback was taken
 *     out only
 * @param losses what takes the highs away, one a channel with a response
 */
@JsonPropertyOrder({"format", "version"})
@JsonInclude(JsonInclude.Include.NON_NULL)
public record Results(
        String format,
        int version,
        Session session,
        Timing timing,
        Speed speed,
        List<Response> response,
        List<Distortion> distortion,
        List<Noise> noise,
        Channels channels,
        List<Dropout> dropouts,
        List<HealthNote> health,
        Verdict verdict,
        DropoutSummary dropoutSummary,
        @JsonProperty("interface") InterfaceFigures interfaceFigures,
        InterfaceShare interfaceShare,
        List<LossFit> losses) {

    /** The value of {@code format} in every results file. */
    public static final String FORMAT = "offtape-results";

    /** Name of the file in a session's folder. */
    public static final String FILE = "results.json";

    /** The version of the format written here. */
    public static final int VERSION = 1;

    /** Copies the lists so that the record cannot change. */
    public Results {
        response = List.copyOf(response);
        distortion = List.copyOf(distortion);
        noise = List.copyOf(noise);
        dropouts = List.copyOf(dropouts);
        health = List.copyOf(health);
        losses = List.copyOf(losses);
    }

    /** Results of a session in which the interface plays no part of its own. */
    public Results(
            String format,
            int version,
            Session session,
            Timing timing,
            Speed speed,
            List<Response> response,
            List<Distortion> distortion,
            List<Noise> noise,
            Channels channels,
            List<Dropout> dropouts,
            List<HealthNote> health,
            Verdict verdict,
            DropoutSummary dropoutSummary) {
        this(
                format,
                version,
                session,
                timing,
                speed,
                response,
                distortion,
                noise,
                channels,
                dropouts,
                health,
                verdict,
                dropoutSummary,
                null,
                null,
                List.of());
    }

    /** The same results with other remarks on the recording. */
    public Results withHealth(List<HealthNote> others) {
        return new Results(
                format,
                version,
                session,
                timing,
                speed,
                response,
                distortion,
                noise,
                channels,
                dropouts,
                others,
                verdict,
                dropoutSummary,
                interfaceFigures,
                interfaceShare,
                losses);
    }

    /** The same results with other figures of speed. */
    public Results withSpeed(Speed other) {
        return new Results(
                format,
                version,
                session,
                timing,
                other,
                response,
                distortion,
                noise,
                channels,
                dropouts,
                health,
                verdict,
                dropoutSummary,
                interfaceFigures,
                interfaceShare,
                losses);
    }

    /** The same results with another verdict. */
    public Results withVerdict(Verdict other) {
        return new Results(
                format,
                version,
                session,
                timing,
                speed,
                response,
                distortion,
                noise,
                channels,
                dropouts,
                health,
                other,
                dropoutSummary,
                interfaceFigures,
                interfaceShare,
                losses);
    }

    /** The same results with causes of loss. */
    public Results withLosses(List<LossFit> found) {
        return new Results(
                format,
                version,
                session,
                timing,
                speed,
                response,
                distortion,
                noise,
                channels,
                dropouts,
                health,
                verdict,
                dropoutSummary,
                interfaceFigures,
                interfaceShare,
                found);
    }
}
