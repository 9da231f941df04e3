package offtape.reference;

import java.util.List;

/** What is known of the faults of tape machines, one text each. */
public final class FaultFiles {

    /**
     * The bundle with the words for all of them, in every language: {@code CODE.name} and so on,
     * {@code CODE.unlike.OTHER} what tells a fault from another.
     */
    public static final String TEXTS = "offtape/reference/faults/Sentences";

    /** In the order of the signal's way: heads, bias, transport, electronics, tape, outside. */
    private static final List<String> CODES =
            List.of(
                    "dirty-head",
                    "worn-head",
                    "azimuth",
                    "record-azimuth",
                    "azimuth-wander",
                    "magnetised-head",
                    "bias-low",
                    "bias-high",
                    "wrong-equalisation",
                    "record-electronics",
                    "wrong-mains",
                    "speed-setting",
                    "belt",
                    "capstan",
                    "pinch-roller",
                    "reel-tension",
                    "scrape-flutter",
                    "motor-ripple",
                    "weak-channel",
                    "swapped-channels",
                    "inverted-channel",
                    "ground-loop",
                    "supply-hum",
                    "hiss",
                    "erasure",
                    "dropouts",
                    "overload");

    private FaultFiles() {}

    /** Codes of all faults. */
    public static List<String> codes() {
        return CODES;
    }

    /**
     * What is known of one of them beside its words.
     *
     * @throws IllegalArgumentException if there is none of that code
     */
    public static String text(String code) {
        return Resources.text("faults/" + code + ".json");
    }

    /** How faults move what is measured, as learned from simulated machines. */
    public static String signatures() {
        return Resources.text("faults/signatures.json");
    }
}
