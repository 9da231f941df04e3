package offtape.report.compare;

import com.fasterxml.jackson.annotation.JsonIgnore;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import offtape.report.compare.Change.Direction;
import offtape.report.headline.Find;
import offtape.report.headline.Headline;
import offtape.report.result.Results;
import offtape.report.result.Session;

/**
 * Two sessions set against each other: the content of {@code comparison.json}.
 *
 * @param format always {@link #FORMAT}
 * @param version always {@link #VERSION}
 * @param before the first session
 * @param after the second session
 * @param notes what differs between them beside the machine's state
 * @param repeats how many measurings tell how figures scatter; 0 if that is not known
 * @param changes the headline figures
 */
public record Comparison(
        String format,
        int version,
        Session before,
        Session after,
        List<String> notes,
        int repeats,
        List<Change> changes) {

    /** The value of {@code format}. */
    public static final String FORMAT = "offtape-comparison";

    /** The version of the format written here. */
    public static final int VERSION = 1;

    /** Copies the lists. */
    public Comparison {
        notes = List.copyOf(notes);
        changes = List.copyOf(changes);
    }

    /**
     * Compares.
     *
     * @param repeats sessions of one unchanged machine, measured again and again; may be none
     * @throws offtape.core.fault.UnusableInputException if the two were not measured alike
     */
    public static Comparison of(Results before, Results after, List<Results> repeats) {
        Repeatability repeatability = new Repeatability(repeats);
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
        return new Comparison(
                FORMAT,
                VERSION,
                before.session(),
                after.session(),
                Conditions.notes(before.session(), after.session()),
                repeatability.sessions().size(),
                changes);
    }

    /** Those that went one way. */
    @JsonIgnore
    public List<Change> gone(Direction direction) {
        return changes.stream().filter(c -> c.direction() == direction).toList();
    }
}
