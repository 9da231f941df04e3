package offtape.report.compare;

import com.fasterxml.jackson.annotation.JsonIgnore;
import com.fasterxml.jackson.annotation.JsonProperty;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import offtape.report.compare.Change.Direction;
import offtape.report.headline.Find;
import offtape.report.headline.Headline;
import offtape.report.result.Results;
import offtape.report.result.Session;
import offtape.report.result.Verdict;

/**
 * Two sessions set against each other: the content of {@code comparison.json}.
 *
 * @param format always {@link #FORMAT}
 * @param version always {@link #VERSION}
 * @param pairing what the two have to do with each other
 * @param before the first session
 * @param after the second session
 * @param notes what differs between them beside the machine's state
 * @param repeats how many measurings tell how figures scatter; 0 if that is not known
 * @param changes the headline figures
 * @param decision what was decided in each
 * @param faults what became of the faults that either names
 */
public record Comparison(
        String format,
        int version,
        @JsonProperty("as") Pairing pairing,
        Session before,
        Session after,
        List<String> notes,
        int repeats,
        List<Change> changes,
        Decisions decision,
        List<FaultChange> faults) {

    /** The value of {@code format}. */
    public static final String FORMAT = "offtape-comparison";

    /** The version of the format written here. */
    public static final int VERSION = 1;

    /** Copies the lists. */
    public Comparison {
        notes = List.copyOf(notes);
        changes = List.copyOf(changes);
        faults = List.copyOf(faults);
    }

    /**
     * The decisions of both sessions: {@code keep}, {@code service}, {@code let-go}, or null where
     * there is none.
     *
     * @param before of the first
     * @param after of the second
     * @param soundBefore how likely none of the known faults is there, 0 to 1, or null if they were
     *     not looked for
     * @param soundAfter the same of the second
     */
    public record Decisions(String before, String after, Double soundBefore, Double soundAfter) {

        private static Decisions of(Verdict before, Verdict after) {
            return new Decisions(
                    before == null ? null : before.decision(),
                    after == null ? null : after.decision(),
                    before == null ? null : before.soundLikelihood(),
                    after == null ? null : after.soundLikelihood());
        }

        /** Whether the two differ. */
        @JsonIgnore
        public boolean differ() {
            return before == null ? after != null : !before.equals(after);
        }
    }

    /**
     * Compares; whether these are two machines is told from their names.
     *
     * @param repeats sessions of one unchanged machine, measured again and again; may be none
     * @throws offtape.core.fault.UnusableInputException if the two were not measured alike
     */
    public static Comparison of(Results before, Results after, List<Results> repeats) {
        return of(before, after, repeats, Pairing.of(before.session(), after.session()));
    }

    /**
     * Compares.
     *
     * @param repeats sessions of one unchanged machine, measured again and again; may be none
     * @param pairing what the two have to do with each other
     * @throws offtape.core.fault.UnusableInputException if the two were not measured alike
     */
    public static Comparison of(
            Results before, Results after, List<Results> repeats, Pairing pairing) {
        Conditions.requireAlike(before.session(), after.session());
        Repeatability repeatability = new Repeatability(repeats);
        return new Comparison(
                FORMAT,
                VERSION,
                pairing,
                before.session(),
                after.session(),
                Conditions.notes(before.session(), after.session(), pairing),
                repeatability.sessions().size(),
                changes(before, after, repeatability),
                Decisions.of(before.verdict(), after.verdict()),
                FaultPairs.of(before, after));
    }

    private static List<Change> changes(
            Results before, Results after, Repeatability repeatability) {
        List<Headline> second = Headline.of(after);
        List<Change> changes = new ArrayList<>();
        for (Headline headline : Headline.of(before)) {
            Optional<Headline> other = Headline.named(second, headline.name());
            for (int c = 0; c < headline.figures().size() && other.isPresent(); c++) {
                changes.add(
                        new Change(
                                headline.name(),
                                headline.isPerChannel() ? Find.CHANNELS.get(c) : null,
                                headline.signed(),
                                headline.aim(),
                                headline.figures().get(c),
                                other.get().figures().get(c),
                                repeatability.of(headline.name(), c).orElse(null)));
            }
        }
        return changes;
    }

    /** Those that went one way. */
    @JsonIgnore
    public List<Change> gone(Direction direction) {
        return changes.stream().filter(c -> c.direction() == direction).toList();
    }
}
