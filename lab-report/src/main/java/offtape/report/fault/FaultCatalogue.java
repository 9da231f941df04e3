package offtape.report.fault;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import offtape.core.json.StrictJson;
import offtape.reference.FaultFiles;

/** What is known of all faults. */
public final class FaultCatalogue {

    private static final StrictJson<FaultNote> JSON =
            new StrictJson<>(FaultNote.class, "what is known of a fault");

    /** Read once, when first asked for, and never changed. */
    private static final class Notes {
        static final Map<String, FaultNote> BY_CODE = read();

        private static Map<String, FaultNote> read() {
            Map<String, FaultNote> notes = new LinkedHashMap<>();
            FaultFiles.codes().forEach(c -> notes.put(c, JSON.read(FaultFiles.text(c), c)));
            return Collections.unmodifiableMap(notes);
        }
    }

    private FaultCatalogue() {}

    /** All faults, heads first. */
    public static List<FaultNote> all() {
        return List.copyOf(Notes.BY_CODE.values());
    }

    /**
     * The fault of a code.
     *
     * @throws IllegalArgumentException if there is none
     */
    public static FaultNote of(String code) {
        FaultNote note = Notes.BY_CODE.get(code);
        if (note == null) {
            throw new IllegalArgumentException("no fault \"" + code + "\"");
        }
        return note;
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
