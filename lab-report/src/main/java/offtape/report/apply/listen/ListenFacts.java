package offtape.report.apply.listen;

import com.fasterxml.jackson.annotation.JsonInclude;
import com.fasterxml.jackson.annotation.JsonProperty;
import java.util.List;

/**
 * All that is known of a listening page.
 *
 * @param format always {@code offtape-listen}
 * @param version of the format, 1
 * @param page its name, made of what it holds: the same sounds and settings give the same
 * @param a the first sound
 * @param b the second
 * @param time how B lay in time, or null if both were taken as they are
 * @param sampleRateHz frames a second
 * @param channels 1 or 2
 * @param fromSeconds where in A the part begins
 * @param seconds its length
 * @param likeness of the two as they are heard, 1 if equal, −1 if turned over
 * @param isSame whether they are equal to the last bit
 * @param switching {@code blend} or, where they are too unlike for that, {@code dip}
 * @param trials of a round
 * @param training whether nothing counts
 * @param fewestRight so many right answers make luck rarer than 5 %
 */
@JsonInclude(JsonInclude.Include.NON_NULL)
public record ListenFacts(
        String format,
        int version,
        String page,
        ListenSound a,
        ListenSound b,
        ListenTime time,
        int sampleRateHz,
        int channels,
        double fromSeconds,
        double seconds,
        double likeness,
        boolean isSame,
        String switching,
        int trials,
        boolean training,
        int fewestRight) {

    /** What a user is told, in whole sentences. */
    @JsonProperty("sentences")
    public List<String> sentences() {
        return new ListenWords(this).sentences();
    }

    /** The same with names that steer no page. */
    ListenFacts inert() {
        return new ListenFacts(
                format,
                version,
                page,
                a.inert(),
                b.inert(),
                time,
                sampleRateHz,
                channels,
                fromSeconds,
                seconds,
                likeness,
                isSame,
                switching,
                trials,
                training,
                fewestRight);
    }
}
