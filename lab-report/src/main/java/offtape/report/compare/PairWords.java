package offtape.report.compare;

import offtape.core.text.Language;
import offtape.core.text.Phrases;
import offtape.report.compare.Change.Direction;
import offtape.report.fault.Likelihood;
import offtape.report.headline.Subject;
import offtape.report.result.Session;

/**
 * The words for two sessions set against each other, in the reader's language. Of one machine they
 * are before and after; two machines have names, and neither comes first.
 *
 * @param phrases of the reader's language
 * @param pairing what the two have to do with each other
 * @param title of the whole
 * @param first what the first is called at the head of a column
 * @param second likewise
 */
public record PairWords(
        Phrases phrases, Pairing pairing, String title, String first, String second) {

    /** The words for a comparison, in English. */
    public static PairWords of(Comparison comparison) {
        return of(comparison, Language.ENGLISH);
    }

    /** The words for a comparison in a language. */
    public static PairWords of(Comparison comparison, Language language) {
        return of(comparison.pairing(), comparison.before(), comparison.after(), language);
    }

    static PairWords of(Pairing pairing, Session before, Session after, Language language) {
        Phrases phrases = Phrases.of(language, PairWords.class);
        String first = name(phrases, before);
        String second = name(phrases, after);
        if (pairing == Pairing.SERVICE) {
            return new PairWords(
                    phrases,
                    pairing,
                    served(phrases, before, after),
                    phrases.say("compare.before"),
                    phrases.say("compare.after"));
        }
        boolean isSame = first.equals(second);
        return machines(
                phrases,
                isSame ? phrases.say("compare.name-first", first) : first,
                isSame ? phrases.say("compare.name-second", second) : second);
    }

    private static PairWords machines(Phrases phrases, String first, String second) {
        return new PairWords(
                phrases,
                Pairing.MACHINES,
                phrases.say("compare.title-machines", first, second),
                first,
                second);
    }

    /**
     * The same with names of machines that fit a column or a curve: longer ones are cut, and where
     * that makes them alike they are first and second.
     *
     * @param most letters of a name
     */
    public PairWords brief(int most) {
        return areNumbered(most)
                ? new PairWords(
                        phrases,
                        pairing,
                        title,
                        phrases.say("compare.first"),
                        phrases.say("compare.second"))
                : new PairWords(phrases, pairing, title, cut(first, most), cut(second, most));
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

    private static String served(Phrases phrases, Session before, Session after) {
        String first = name(phrases, Subject.isNamed(before) ? before : after);
        String second = name(phrases, Subject.isNamed(after) ? after : before);
        return first.equals(second)
                ? phrases.say("compare.title-served", first)
                : phrases.say("compare.title-served-two", first, second);
    }

    /** A name in one line, whatever it holds; words that stand for it are the reader's. */
    private static String name(Phrases phrases, Session session) {
        String name = Subject.nameOf(session);
        return (Subject.isNamed(session) ? name : phrases.told(name))
                .replaceAll("[\\p{Cntrl}\\s]+", " ")
                .strip();
    }

    /** Whether these are two machines. */
    public boolean areMachines() {
        return pairing == Pairing.MACHINES;
    }

    /** Of the first, behind a figure: {@code before} or {@code on NAME}. */
    public String onFirst() {
        return areMachines()
                ? phrases.say("compare.on", first)
                : phrases.say("compare.figure-before");
    }

    /** Of the second, behind a figure. */
    public String onSecond() {
        return areMachines()
                ? phrases.say("compare.on", second)
                : phrases.say("compare.figure-after");
    }

    /**
     * What a clear difference of a figure means: {@code better}, {@code worse} or whose is better.
     */
    public String better(Direction direction) {
        boolean isSecond = direction == Direction.BETTER;
        if (!areMachines()) {
            return phrases.say(isSecond ? "compare.better" : "compare.worse");
        }
        return phrases.say("compare.better-on", isSecond ? second : first);
    }

    /** What became of a fault, or which of the machines has it; a few words. */
    public String outcome(FaultChange fault) {
        return areMachines() ? owner(fault) : outcome(fault.outcome());
    }

    private String outcome(FaultChange.Outcome outcome) {
        return phrases.say(
                switch (outcome) {
                    case WENT -> "compare.gone";
                    case STAYED -> "compare.still-there";
                    case CAME -> "compare.new";
                    case MAY_HAVE_GONE -> "compare.may-have-gone";
                    case MAY_HAVE_COME -> "compare.may-have-come";
                    case MAY_HAVE_STAYED -> "compare.may-be-in-both";
                    case CANNOT_BE_TOLD -> "compare.cannot-be-told";
                });
    }

    private String owner(FaultChange fault) {
        return switch (fault.outcome()) {
            case WENT -> phrases.say("compare.only", first);
            case CAME -> phrases.say("compare.only", second);
            case STAYED -> phrases.say("compare.both");
            case MAY_HAVE_STAYED -> phrases.say("compare.perhaps-both");
            case MAY_HAVE_GONE -> phrases.say(perhaps(fault.before()), first);
            case MAY_HAVE_COME -> phrases.say(perhaps(fault.after()), second);
            case CANNOT_BE_TOLD -> outcome(fault.outcome());
        };
    }

    /** What is said of the machine that is the likelier one to have a fault. */
    private static String perhaps(Double likelihood) {
        boolean isLikely = likelihood != null && likelihood >= Likelihood.LIKELY;
        return isLikely ? "compare.this-perhaps-both" : "compare.perhaps-this";
    }

    /** How likely a fault is in one session: in words with the figure. */
    public String likelihood(FaultChange fault, Double likelihood) {
        if (likelihood != null) {
            return phrases.told(Likelihood.words(likelihood));
        }
        return fault.outcome() == FaultChange.Outcome.CANNOT_BE_TOLD
                ? phrases.say("compare.not-named")
                : phrases.say("compare.under", Likelihood.percent(Likelihood.TOLD));
    }

    /** The decisions, a sentence such as {@code Decision: service before, keep after.} */
    public String decisions(Comparison.Decisions decision) {
        String before = decision(decision.before());
        String after = decision(decision.after());
        return areMachines()
                ? phrases.say("compare.decisions-machines", before, first, after, second)
                : phrases.say("compare.decisions-served", before, after);
    }

    private String decision(String key) {
        return switch (key == null ? "" : key) {
            case "" -> phrases.say("compare.not-decided");
            case "keep" -> phrases.say("compare.keep");
            case "service" -> phrases.say("compare.service");
            case "let-go" -> phrases.say("compare.let-go");
            default -> key.replace('-', ' ');
        };
    }

    /** Why there is nothing to tell of any fault, a sentence. */
    public String noFaults(Comparison.Decisions decision) {
        boolean lookedFirst = decision.soundBefore() != null;
        boolean lookedSecond = decision.soundAfter() != null;
        if (lookedFirst && lookedSecond) {
            return phrases.say(areMachines() ? "compare.none-on-either" : "compare.none-in-either");
        }
        if (!lookedFirst && !lookedSecond) {
            return phrases.say("compare.not-looked-for");
        }
        return phrases.say(
                lookedFirst ? "compare.not-looked-for-second" : "compare.not-looked-for-first");
    }
}
