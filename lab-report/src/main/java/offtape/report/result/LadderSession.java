package offtape.report.result;

import com.fasterxml.jackson.annotation.JsonIgnoreProperties;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Comparator;
import java.util.List;
import java.util.Objects;
import offtape.core.fault.UnusableInputException;
import offtape.core.json.StrictJson;
import offtape.core.text.Sentences;

/**
 * What a session tells of how distortion rises with level, read back from its {@code results.json}.
 *
 * @param place the file, for messages
 * @param machineName the user's name for the machine, or null
 * @param recordingSha256 digest of its recording, or null
 * @param referenceDbfs level of its programme's reference, dB re a full-scale sine, or null in a
 *     session of an earlier release
 * @param ladders its ladders
 */
public record LadderSession(
        String place,
        String machineName,
        String recordingSha256,
        Double referenceDbfs,
        List<Ladder> ladders) {

    private static final Sentences SAID = Sentences.near(LadderSession.class);

    private static final int MOST_MEBIBYTES = 64;

    private static final StrictJson<File> JSON =
            new StrictJson<>(File.class, SAID.say("results-of-session"), MOST_MEBIBYTES);

    /** Copies the list. */
    public LadderSession {
        ladders = List.copyOf(ladders);
    }

    /** What is read of the file; what else a session holds is passed over. */
    @JsonIgnoreProperties(ignoreUnknown = true)
    private record File(String format, Integer version, Head session, List<Ladder> distortion) {}

    /** What is read of the session's description. */
    @JsonIgnoreProperties(ignoreUnknown = true)
    private record Head(String machineName, String recordingSha256, Double referenceDbfs) {}

    /**
     * One ladder on one channel.
     *
     * @param channel {@code left} or {@code right}
     * @param frequencyHz its frequency
     * @param steps in order of level
     */
    @JsonIgnoreProperties(ignoreUnknown = true)
    public record Ladder(String channel, double frequencyHz, List<Step> steps) {

        /** Copies the list. */
        public Ladder {
            steps = List.copyOf(steps);
        }

        /** Those whose K3 is told and belongs to the curve. */
        List<Step> told() {
            return steps.stream()
                    .filter(s -> s.k3Percent() != null && s.k3Percent() > 0 && !s.leftOut())
                    .sorted(Comparator.comparingDouble(Step::recordLevelDb))
                    .toList();
        }
    }

    /**
     * One tone of a ladder.
     *
     * @param recordLevelDb level in the programme, dB re reference
     * @param k3Percent third harmonic re fundamental, or null if it is not told
     * @param leftOut whether the step was disturbed
     */
    @JsonIgnoreProperties(ignoreUnknown = true)
    public record Step(double recordLevelDb, Double k3Percent, boolean leftOut) {}

    /**
     * Reads a session's folder.
     *
     * @throws UnusableInputException if it is no session
     */
    public static LadderSession read(Path folder) {
        Path file = folder.resolve(Results.FILE);
        if (!Files.isRegularFile(file)) {
            throw new UnusableInputException(
                    SAID.say("no-results", folder) + " " + SAID.say("give-folder-of-machine"));
        }
        File read = JSON.read(file);
        if (!Results.FORMAT.equals(read.format())
                || !Objects.equals(Results.VERSION, read.version())
                || read.session() == null) {
            throw new UnusableInputException(
                    SAID.say("not-results-of-version", file, Results.VERSION)
                            + " "
                            + SAID.say("give-folder-of-machine"));
        }
        Head head = read.session();
        return new LadderSession(
                file.toString(),
                head.machineName(),
                head.recordingSha256(),
                head.referenceDbfs(),
                read.distortion() == null ? List.of() : read.distortion());
    }

    /**
     * The record level at which K3 reaches a value on the channel that reaches it first.
     *
     * @param k3Percent the value, above 0
     * @return dB re reference
     * @throws UnusableInputException if no step below it or none above it tells K3
     */
    public double levelAtK3(double k3Percent) {
        return new K3Level(place, ladders).at(k3Percent);
    }
}
