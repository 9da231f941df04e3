package offtape.report.apply.correct;

import com.fasterxml.jackson.annotation.JsonInclude;
import com.fasterxml.jackson.annotation.JsonPropertyOrder;
import java.util.List;
import java.util.Optional;
import offtape.core.unit.Quantity;
import offtape.report.apply.level.OperatingLevels;
import offtape.report.result.Session;

/**
 * What to do before recording on a machine: the content of {@code correction.json}.
 *
 * @param format always {@link #FORMAT}
 * @param version always {@link #VERSION}
 * @param session that it is from
 * @param target name of the file with the response wanted, or null for a flat one
 * @param mostBoostDb limit of boost, dB
 * @param mostCutDb limit of cut, dB
 * @param sameFilter whether both channels have the filter of their mean
 * @param channelsDiffer largest difference of the channels' responses from 40 Hz to 15 kHz, dB
 * @param lowerByDb by how much the programme has to be lower ahead of the filter so that a steady
 *     tone of full scale stays within full scale, dB
 * @param neverMoreDb the same for any sound whatever
 * @param channels the correction of each channel
 * @param filters the filter files, one a sample rate
 * @param noise what equalising after the tape does to the hiss
 * @param headroom how much of boosted highs the tape takes
 * @param levels how hot to record, one entry a session, the corrected one first
 * @param music a programme held against the headroom, or null
 * @param verification the correction tried on a simulated machine, or null
 * @param notes what should be known beside, plain sentences
 */
@JsonPropertyOrder({"format", "version"})
@JsonInclude(JsonInclude.Include.NON_NULL)
public record Correction(
        String format,
        int version,
        Session session,
        String target,
        double mostBoostDb,
        double mostCutDb,
        boolean sameFilter,
        Quantity channelsDiffer,
        double lowerByDb,
        double neverMoreDb,
        List<ChannelCorrection> channels,
        List<FilterFile> filters,
        List<NoiseChange> noise,
        List<Headroom> headroom,
        List<OperatingLevels> levels,
        MusicCheck music,
        Verification verification,
        List<String> notes) {

    /** The value of {@code format}. */
    public static final String FORMAT = "offtape-correction";

    /** The version written here. */
    public static final int VERSION = 1;

    /** Copies the lists. */
    public Correction {
        channels = List.copyOf(channels);
        filters = List.copyOf(filters);
        noise = List.copyOf(noise);
        headroom = List.copyOf(headroom);
        levels = List.copyOf(levels);
        notes = List.copyOf(notes);
    }

    /** The filter of the session's own sample rate, or the first. */
    public FilterFile usualFilter() {
        return filters.stream()
                .filter(
                        f ->
                                Integer.valueOf(f.sampleRateHz())
                                        .equals(session.recordingSampleRate()))
                .findFirst()
                .orElse(filters.get(0));
    }

    /** The change of noise on a channel, if it has an entry. */
    public Optional<NoiseChange> noiseOf(String channel) {
        return noise.stream().filter(n -> n.channel().equals(channel)).findFirst();
    }

    /** The same with a programme held against the headroom. */
    public Correction withMusic(MusicCheck check) {
        return with(check, verification);
    }

    /** The same with a trial on a simulated machine. */
    public Correction withVerification(Verification found) {
        return with(music, found);
    }

    private Correction with(MusicCheck check, Verification found) {
        return new Correction(
                format,
                version,
                session,
                target,
                mostBoostDb,
                mostCutDb,
                sameFilter,
                channelsDiffer,
                lowerByDb,
                neverMoreDb,
                channels,
                filters,
                noise,
                headroom,
                levels,
                check,
                found,
                notes);
    }
}
