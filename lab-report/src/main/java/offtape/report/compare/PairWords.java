package offtape.report.compare;

import java.util.Locale;
import offtape.report.compare.Change.Direction;
import offtape.report.fault.Likelihood;
import offtape.report.headline.Subject;
import offtape.report.result.Session;

/**
 * The words for two sessions set against each other. Of one machine they are before and after; two
 * machines have names, and neither comes first.
 *
 * @param pairing what the two have to do with each other
 * @param title of the whole
 * @param first what the first is called at the head of a column
 * @param second likewise
 */
public record PairWords(Pairing pairing, String title, String first, String second) {

    /** The words for a comparison. */
    public static PairWords of(Comparison comparison) {
        return of(comparison.pairing(), comparison.before(), comparison.after());
    }

    static PairWords of(Pairing pairing, Session before, Session after) {
        String first = name(before);
        String second = name(after);
        if (pairing == Pairing.SERVICE) {
            return new PairWords(
                    pairing, served(before, after) + "before and after", "Before", "After");
        }
        boolean isSame = first.equals(second);
        return machines(
                isSame ? first + " (first)" : first, isSame ? second + " (second)" : second);
    }

    private static PairWords machines(String first, String second) {
        return new PairWords(Pairing.MACHINES, first + " and " + second, first, second);
    }

    /**
     * The same with names of machines that fit a column or a curve: longer ones are cut, and where
     * that makes them alike they are first and second.
     *
     * @param most letters of a name
     */
    public PairWords brief(int most) {
        return areNumbered(most)
                ? new PairWords(pairing, title, "First", "Second")
                : new PairWords(pairing, title, cut(first, most), cut(second, most));
    }

    /** Whether names of so many letters can no longer be told apart. */
    public boolean areNumbered(int most) {
        return areMachines() && cut(first, most).equals(cut(second, most));
    }

    private static String cut(String name, int most) {
        return name.codePointCount(0, name.length()) <= most
                ? name
                : name.substring(0, name.offsetByCodePoints(0, most - 1)).strip() + "…";
    }

    private static String served(Session before, Session after) {
        String first = name(Subject.isNamed(before) ? before : after);
        String second = name(Subject.isNamed(after) ? after : before);
        return first.equals(second) ? first + ": " : first + ", then " + second + ": ";
    }

    /** A name in one line, whatever it holds. */
    private static String name(Session session) {
        return Subject.nameOf(session).replaceAll("[\\p{Cntrl}\\s]+", " ").strip();
    }

    /** Whether these are two machines. */
    public boolean areMachines() {
        return pairing == Pairing.MACHINES;
    }

    /** Of the first, behind a figure: {@code before} or {@code on NAME}. */
    public String onFirst() {
        return areMachines() ? "on " + first : "before";
    }

    /** Of the second, behind a figure. */
    public String onSecond() {
        return areMachines() ? "on " + second : "after";
    }

    /**
     * What a clear difference of a figure means: {@code better}, {@code worse} or whose is better.
     */
    public String better(Direction direction) {
        boolean isSecond = direction == Direction.BETTER;
        if (!areMachines()) {
            return isSecond ? "better" : "worse";
        }
        return "better on " + (isSecond ? second : first);
    }

    /** What became of a fault, or which of the machines has it; a few words. */
    public String outcome(FaultChange fault) {
        if (fault.outcome() == FaultChange.Outcome.CANNOT_BE_TOLD) {
            return "cannot be told";
        }
        return areMachines() ? owner(fault) : outcome(fault.outcome());
    }

    private static String outcome(FaultChange.Outcome outcome) {
        return switch (outcome) {
            case WENT -> "gone";
            case STAYED -> "still there";
            case CAME -> "new";
            case MAY_HAVE_GONE -> "may have gone";
            case MAY_HAVE_COME -> "may have come";
            case MAY_HAVE_STAYED -> "may be there in both";
            case CANNOT_BE_TOLD -> "cannot be told";
        };
    }

    private String owner(FaultChange fault) {
        return switch (fault.outcome()) {
            case WENT -> first + " only";
            case CAME -> second + " only";
            case STAYED -> "both";
            case MAY_HAVE_STAYED -> "perhaps both";
            case MAY_HAVE_GONE ->
                    isLikely(fault.before()) ? first + ", perhaps both" : "perhaps " + first;
            case MAY_HAVE_COME ->
                    isLikely(fault.after()) ? second + ", perhaps both" : "perhaps " + second;
            case CANNOT_BE_TOLD -> "cannot be told";
        };
    }

    private static boolean isLikely(Double likelihood) {
        return likelihood != null && likelihood >= Likelihood.LIKELY;
    }

    /** How likely a fault is in one session: in words with the figure. */
    public static String likelihood(FaultChange fault, Double likelihood) {
        if (likelihood != null) {
            return Likelihood.words(likelihood);
        }
        return fault.outcome() == FaultChange.Outcome.CANNOT_BE_TOLD
                ? "not named"
                : "under " + Likelihood.percent(Likelihood.TOLD);
    }

    /** The decisions, a sentence such as {@code Decision: service before, keep after.} */
    public String decisions(Comparison.Decisions decision) {
        return String.format(
                Locale.ROOT,
                "Decision: %s %s, %s %s.",
                decision(decision.before()),
                onFirst().replaceFirst("^on ", "for "),
                decision(decision.after()),
                onSecond().replaceFirst("^on ", "for "));
    }

    private static String decision(String key) {
        return key == null ? "not decided" : key.replace('-', ' ');
    }

    /** Why there is nothing to tell of any fault, a sentence. */
    public String noFaults(Comparison.Decisions decision) {
        boolean lookedFirst = decision.soundBefore() != null;
        boolean lookedSecond = decision.soundAfter() != null;
        if (lookedFirst && lookedSecond) {
            return "No fault is likely or possible "
                    + (areMachines() ? "on either." : "in either.");
        }
        return !lookedFirst && !lookedSecond
                ? "Faults were not looked for in either session."
                : "Faults were not looked for in the "
                        + (lookedFirst ? "second" : "first")
                        + " session; the other names none.";
    }
}
