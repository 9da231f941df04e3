package offtape.report.judge;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import offtape.core.fault.UnusableInputException;
import offtape.core.json.StrictJson;
import offtape.core.text.Sentences;
import offtape.reference.LimitFiles;

/**
 * Limits that belong together.
 *
 * @param format always {@link #FORMAT}
 * @param version always {@link #VERSION}
 * @param name what they are called
 * @param source where they come from
 * @param limits at least one
 */
public record LimitSet(String format, int version, String name, String source, List<Limit> limits) {

    private static final Sentences SAID = Sentences.near(LimitSet.class);

    /** The value of {@code format}. */
    public static final String FORMAT = "offtape-limits";

    /** The version read here. */
    public static final int VERSION = 1;

    private static final StrictJson<LimitSet> JSON =
            new StrictJson<>(LimitSet.class, SAID.say("set.what"));

    /**
     * Checks that it is one and says where it comes from.
     *
     * @throws UnusableInputException in a plain sentence
     */
    public LimitSet {
        if (!FORMAT.equals(format) || version != VERSION) {
            throw new UnusableInputException(SAID.say("set.format", FORMAT));
        }
        if (name == null || name.isBlank() || source == null || source.isBlank()) {
            throw new UnusableInputException(SAID.say("set.name"));
        }
        if (limits == null || limits.isEmpty()) {
            throw new UnusableInputException(SAID.say("set.empty"));
        }
        limits = List.copyOf(limits);
    }

    /** Names of the sets that ship with this release. */
    public static List<String> names() {
        return LimitFiles.names();
    }

    /**
     * The set of that name, or that of a file.
     *
     * @throws UnusableInputException if there is neither, or it cannot be used
     */
    public static LimitSet of(String nameOrFile) {
        if (names().contains(nameOrFile)) {
            return JSON.read(LimitFiles.text(nameOrFile), nameOrFile);
        }
        Path file = Path.of(nameOrFile);
        if (!Files.isRegularFile(file)) {
            throw new UnusableInputException(
                    SAID.say("set.none", nameOrFile, String.join(", ", names())));
        }
        return JSON.read(file);
    }

    /** A form for the maker's sheet, to be filled in. */
    public static String template() {
        return """
                {
                  "format": "offtape-limits",
                  "version": 1,
                  "name": "My machine, maker's sheet",
                  "source": "which sheet, which page; delete the lines of which it says nothing",
                  "limits": [
                    {"quantity": "speed-deviation", "least": -0.5, "most": 0.5},
                    {"quantity": "wow-and-flutter", "most": 0.1, "tapeSpeedMmPerS": 190.5, "clause": "weighted peak"},
                    {"quantity": "wow-and-flutter", "most": 0.2, "tapeSpeedMmPerS": 95.25, "clause": "weighted peak"},
                    {"quantity": "response", "fromHz": 40, "toHz": 18000, "lowDb": -3, "highDb": 3, "tapeSpeedMmPerS": 190.5},
                    {"quantity": "level-at-3-percent", "least": 6},
                    {"quantity": "weighted-noise-distance", "least": 60},
                    {"quantity": "noise-distance", "least": 50},
                    {"quantity": "crosstalk", "most": -40},
                    {"quantity": "balance", "least": -1, "most": 1},
                    {"quantity": "interchannel-delay", "least": -20, "most": 20}
                  ]
                }
                """;
    }
}
