package offtape.cli.transfer;

import com.fasterxml.jackson.annotation.JsonIgnore;
import com.fasterxml.jackson.annotation.JsonInclude;
import com.fasterxml.jackson.annotation.JsonProperty;
import java.util.List;
import java.util.Locale;
import offtape.core.json.Range;

/**
 * What was done to one stem.
 *
 * @param file name of its return
 * @param stem name of the stem
 * @param sha256 digest of the stem's file
 * @param settings how it was sent
 * @param outcome what came of it
 * @param message why it did not come back or what to mind, a sentence, or null
 * @param path how it came back; null if it did not
 * @param levels how loud it was before and after; null likewise
 * @param returnSha256 digest of its return's file; null likewise
 */
@JsonInclude(JsonInclude.Include.NON_NULL)
public record TransferEntry(
        String file,
        String stem,
        String sha256,
        TransferSettings settings,
        Outcome outcome,
        String message,
        Path path,
        Levels levels,
        String returnSha256) {

    /** Checks that it is told of which stem and what, since logs are also read from files. */
    public TransferEntry {
        Range.require(file != null, "\"file\" is missing.");
        Range.require(outcome != null, "\"outcome\" is missing.");
    }

    /** What came of a stem. */
    public enum Outcome {
        /** It came back. */
        @JsonProperty("done")
        DONE,
        /** It came back, but the input reached full scale on the way. */
        @JsonProperty("clipped")
        CLIPPED,
        /** Nothing came back. */
        @JsonProperty("silent")
        SILENT,
        /** It was not sent, or its return cannot be used. */
        @JsonProperty("failed")
        FAILED;

        /** As in the log. */
        public String word() {
            return name().toLowerCase(Locale.ROOT);
        }
    }

    /**
     * What the path did, all of which was taken back.
     *
     * @param delayMs from what was played to what was recorded, buffers of the computer included,
     *     which differ from run to run, milliseconds
     * @param driftPpm by which it came back fast on average, parts in a million
     * @param levelChangeDb by how much the mark behind it was louder than the one before it, dB;
     *     this was not taken back
     * @param channels each channel, left first
     */
    public record Path(
            double delayMs, double driftPpm, double levelChangeDb, List<Channel> channels) {

        /** Copies the list. */
        public Path {
            channels = List.copyOf(channels);
        }
    }

    /**
     * One channel of the path.
     *
     * @param gainDb by how much it came back louder than it was sent, dB
     * @param polarity {@code normal} or {@code inverted}
     */
    public record Channel(double gainDb, String polarity) {}

    /**
     * Levels before and after, dB re full scale; rms re a full-scale sine; null of silence.
     *
     * @param encoding of the return: {@code pcm-24} or {@code float-32}
     */
    @JsonInclude(JsonInclude.Include.NON_NULL)
    public record Levels(
            Double peakInDbfs,
            Double peakOutDbfs,
            Double rmsInDbfs,
            Double rmsOutDbfs,
            String encoding) {}

    /** A stem that did not come back. */
    static TransferEntry without(
            Stem stem, TransferSettings settings, Outcome outcome, String message) {
        return new TransferEntry(
                stem.output(),
                stem.file().getFileName().toString(),
                stem.sha256(),
                settings,
                outcome,
                message,
                null,
                null,
                null);
    }

    /** Whether it came back as it should. */
    @JsonIgnore
    public boolean isDone() {
        return outcome == Outcome.DONE;
    }
}
