package offtape.cli.command;

import java.util.Map;
import java.util.TreeMap;
import java.util.function.Supplier;

/** Descriptions that cannot be used, by name; the name says of which kind. */
final class BadTexts {

    private static final String MACHINE = "{\"format\": \"offtape-machine\", \"version\": 1";
    private static final String RESULTS = "{\"format\": \"offtape-results\", \"version\": 1";

    private final Map<String, Supplier<String>> all = new TreeMap<>();

    BadTexts() {
        all.put("deep", () -> "[".repeat(200_000));
        all.put("deep-object", () -> "{\"a\":".repeat(200_000));
        all.put("huge", () -> " ".repeat(2 << 20));
        all.put("not-json", () -> "steady as a rock");
        all.put("nothing", () -> "");
        all.put("list", () -> "[]");
        all.put("null", () -> "null");
        all.put("sane", () -> MACHINE + "}");
        all.put("machine-version-2", () -> "{\"format\": \"offtape-machine\", \"version\": 2}");
        all.put("machine-twice", () -> MACHINE + ", \"seed\": 1, \"seed\": 2}");
        all.put("machine-text-for-number", () -> MACHINE + ", \"seed\": \"one\"}");
        all.put("machine-number-huge", () -> MACHINE + ", \"seed\": " + "9".repeat(5000) + "}");
        all.put("machine-not-finite", () -> MACHINE + ", \"tapeSpeedMmPerS\": 1e999}");
        all.put("machine-nan", () -> MACHINE + ", \"tapeSpeedMmPerS\": NaN}");
        all.put(
                "results-version-2",
                () -> "{\"format\": \"offtape-results\", \"version\": 2, \"session\": {}}");
        all.put("results-twice", () -> RESULTS + ", \"speed\": null, \"speed\": null}");
        all.put("results-text-for-list", () -> RESULTS + ", \"session\": {}, \"noise\": \"none\"}");
        all.put("results-bare", () -> RESULTS + "}");
        all.put("results-falling", () -> response("[2000, 1000]", "[0, 0]"));
        all.put("results-from-nothing", () -> response("[0, 1000]", "[0, 0]"));
        all.put("results-loud", () -> response("[1000, 2000]", "[0, 1e300]"));
        all.put("results-reference", () -> RESULTS + ", \"session\": {\"referenceDbfs\": 100000}}");
    }

    private static String response(String hz, String db) {
        return RESULTS
                + ", \"session\": {}, \"response\": [{\"channel\": \"left\", \"frequencyHz\": "
                + hz
                + ", \"magnitudeDb\": "
                + db
                + ", \"uncertaintyDb\": [0, 0], \"bands\": [], \"contour\": [], \"harmonics\": []}], \"distortion\": [],"
                + " \"noise\": [], \"dropouts\": [], \"health\": [], \"losses\": []}";
    }

    /** Names and texts. */
    Map<String, Supplier<String>> all() {
        return all;
    }
}
