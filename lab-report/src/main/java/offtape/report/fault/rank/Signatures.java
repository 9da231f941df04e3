package offtape.report.fault.rank;

import java.util.List;
import java.util.Map;
import offtape.core.json.StrictJson;
import offtape.reference.FaultFiles;
import offtape.report.fault.symptom.TapeKind;

/**
 * What sound machines look like, and how each fault moves that: learned from simulated machines.
 *
 * @param format always {@link #FORMAT}
 * @param version always {@link #VERSION}
 * @param made how it was learned
 * @param sound one entry for slow and one for fast tape
 * @param courses how faults move the symptoms
 */
public record Signatures(
        String format, int version, String made, List<Sound> sound, List<Course> courses) {

    /** The value of {@code format}. */
    public static final String FORMAT = "offtape-fault-signatures";

    /** The version read here. */
    public static final int VERSION = 1;

    /** Faults that look alike in one session and are told by how it was recorded. */
    private static final Map<String, String> SAME = Map.of("record-azimuth", "azimuth");

    private static final int MOST_MEBIBYTES = 4;

    private static final StrictJson<Signatures> JSON =
            new StrictJson<>(Signatures.class, "the signatures of faults", MOST_MEBIBYTES);

    /** Read once, when first asked for, and never changed. */
    private static final class Release {
        static final Signatures SIGNATURES =
                JSON.read(FaultFiles.signatures(), "the signatures of faults");
    }

    /** Copies the lists so that the record cannot change. */
    public Signatures {
        sound = List.copyOf(sound);
        courses = List.copyOf(courses);
    }

    /** Those of this release. */
    public static Signatures load() {
        return Release.SIGNATURES;
    }

    /** The courses of a fault, one for each of its forms. */
    public List<Course> courses(String code) {
        String same = SAME.getOrDefault(code, code);
        return courses.stream().filter(c -> c.code().equals(same)).toList();
    }

    /** As text. */
    public String json() {
        return JSON.write(this);
    }

    /** Sound machines of a tape speed in mm/s; that of reels where it is not known. */
    public Sound soundAt(Double tapeSpeedMmPerS) {
        boolean slow = tapeSpeedMmPerS != null && TapeKind.isCassette(tapeSpeedMmPerS);
        String tape = slow ? "cassette" : "reel";
        return sound.stream().filter(s -> s.tape().equals(tape)).findFirst().orElseThrow();
    }
}
