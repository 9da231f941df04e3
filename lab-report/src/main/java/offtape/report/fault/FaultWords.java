package offtape.report.fault;

import java.util.List;
import java.util.Locale;

/** The keys of what is known of a fault, in words. */
final class FaultWords {

    private FaultWords() {}

    /** Whom it concerns, a sentence. */
    static String channels(FaultNote note) {
        return note.channels().equals("machine")
                ? "It concerns the machine as a whole."
                : "It may concern one channel or both.";
    }

    /** Which sessions can show it, a sentence. */
    static String modes(FaultNote note) {
        return "Sessions that can show it: mode " + listed(note.modes(), "or") + ".";
    }

    /** Which quantities of a limit it worsens, a sentence. */
    static String moves(FaultNote note) {
        return note.moves().isEmpty()
                ? "It worsens none of the quantities that limits are set for."
                : "It worsens "
                        + listed(note.moves().stream().map(FaultWords::quantity).toList(), "and")
                        + ".";
    }

    /** What mending takes, a sentence. */
    static String effort(FaultNote note) {
        return switch (note.effort()) {
            case "clean" -> "What usually mends it takes minutes and no parts.";
            case "adjust" -> "What usually mends it takes time on the bench and no parts.";
            case "replace" -> "What usually mends it takes parts.";
            case "outside" -> "Usually nothing is wrong with the machine itself.";
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
        return switch (key) {
            case "response" -> "the frequency response";
            case "balance" -> "the balance of the channels";
            case "interchannel-delay" -> "the delay between the channels";
            case "crosstalk" -> "the crosstalk";
            case "speed-deviation" -> "the speed deviation";
            case "level-at-3-percent" -> "the record level at 3 % K3";
            case "noise-distance" -> "the distance from unweighted noise to 3 % K3";
            case "weighted-noise-distance" -> "the distance from A-weighted noise to 3 % K3";
            default -> key.replace('-', ' ');
        };
    }

    private static String listed(List<String> words, String last) {
        int n = words.size();
        return n == 1
                ? words.get(0)
                : String.join(", ", words.subList(0, n - 1)) + " " + last + " " + words.get(n - 1);
    }
}
