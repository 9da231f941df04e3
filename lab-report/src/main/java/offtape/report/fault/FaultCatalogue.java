package offtape.report.fault;

import java.util.List;
import offtape.core.json.StrictJson;
import offtape.reference.FaultFiles;

/** What is known of all faults. */
public final class FaultCatalogue {

    private static final StrictJson<FaultNote> JSON =
            new StrictJson<>(FaultNote.class, "what is known of a fault");

    private FaultCatalogue() {}

    /** All faults, heads first. */
    public static List<FaultNote> all() {
        return FaultFiles.codes().stream().map(FaultCatalogue::of).toList();
    }

    /**
     * The fault of a code.
     *
     * @throws IllegalArgumentException if there is none
     */
    public static FaultNote of(String code) {
        return JSON.read(FaultFiles.text(code), code);
    }

    /** Whether there is a fault of that code. */
    public static boolean isKnown(String code) {
        return FaultFiles.codes().contains(code);
    }

    /** Codes of the faults that a capture mode can show; all if the mode is not known. */
    public static List<String> codesOf(String mode) {
        return all().stream().filter(n -> n.showsIn(mode)).map(FaultNote::code).toList();
    }
}
