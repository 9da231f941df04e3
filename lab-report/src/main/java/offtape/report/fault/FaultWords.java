package offtape.report.fault;

import java.util.List;
import java.util.Locale;
import offtape.core.text.Sentences;

/** The keys of what is known of a fault, in words. */
final class FaultWords {

    private static final Sentences SAID = Sentences.near(FaultWords.class);

    private FaultWords() {}

    /** Whom it concerns, a sentence. */
    static String channels(FaultNote note) {
        return SAID.say(
                note.channels().equals("machine") ? "channels.machine" : "channels.one-or-both");
    }

    /** Which sessions can show it, a sentence. */
    static String modes(FaultNote note) {
        List<String> modes = note.modes();
        int last = modes.size() - 1;
        return last < 1
                ? SAID.say("modes.one", String.join("", modes))
                : SAID.say(
                        "modes.several",
                        String.join(", ", modes.subList(0, last)),
                        modes.get(last));
    }

    /** Which quantities of a limit it worsens, a sentence. */
    static String moves(FaultNote note) {
        return note.moves().isEmpty()
                ? SAID.say("moves.none")
                : SAID.say(
                        "moves.some",
                        listed(note.moves().stream().map(FaultWords::quantity).toList()));
    }

    /** What mending takes, a sentence. */
    static String effort(FaultNote note) {
        return switch (note.effort()) {
            case "clean", "adjust", "replace", "outside" -> SAID.say("effort-" + note.effort());
            default -> throw new IllegalArgumentException("no effort \"" + note.effort() + "\"");
        };
    }

    /** What mending takes, in a few words. */
    static String shortEffort(FaultNote note) {
        return switch (note.effort()) {
            case "clean" -> "minutes, no parts";
            case "adjust" -> "bench time, no parts";
            case "replace" -> "parts";
            default -> "usually not the machine";
        };
    }

    /** What to beware of, each a paragraph. */
    static List<String> cautions(FaultNote note) {
        return note.cautions().stream().map(key -> Caution.of(key).words()).toList();
    }

    /** Where it is from, a sentence. */
    static String source(FaultNote note) {
        String source = note.source();
        String capital = source.substring(0, 1).toUpperCase(Locale.ROOT);
        return capital + source.substring(1) + (source.endsWith(".") ? "" : ".");
    }

    private static String quantity(String key) {
        return SAID.say("quantity-" + key);
    }

    private static String listed(List<String> words) {
        int n = words.size();
        return n == 1
                ? words.get(0)
                : String.join(", ", words.subList(0, n - 1)) + " and " + words.get(n - 1);
    }
}
