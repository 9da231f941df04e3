package offtape.report.compare;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import offtape.core.fault.UnusableInputException;
import offtape.core.text.Sentences;
import offtape.report.result.Session;

/**
 * Whether two sessions were measured alike, so that their figures may be set against each other.
 */
final class Conditions {

    private static final Sentences SAID = Sentences.near(Conditions.class);

    /** Speeds of the same setting differ by rounding only. */
    private static final double SAME_SPEED = 0.01;

    /** So do reference levels. */
    private static final double SAME_LEVEL_DB = 0.05;

    private Conditions() {}

    /**
     * Refuses sessions that differ in what every figure hangs on.
     *
     * @throws UnusableInputException if they do
     */
    static void requireAlike(Session before, Session after) {
        requireSame("mode", before.mode(), after.mode());
        if (!near(before.tapeSpeedMmPerS(), after.tapeSpeedMmPerS())) {
            throw unlike(
                    "tape-speed", speed(before.tapeSpeedMmPerS()), speed(after.tapeSpeedMmPerS()));
        }
        Double first = before.referenceDbfs();
        Double second = after.referenceDbfs();
        if (first != null && second != null && Math.abs(first - second) > SAME_LEVEL_DB) {
            throw unlike("reference-level", level(first), level(second));
        }
    }

    /** What differs beside what is to be compared and can be lived with, as sentences. */
    static List<String> notes(Session before, Session after, Pairing pairing) {
        boolean service = pairing == Pairing.SERVICE;
        List<String> notes = new ArrayList<>();
        if (!Objects.equals(before.programmeSha256(), after.programmeSha256())) {
            notes.add(SAID.say("programmes-differ"));
        }
        if (!Objects.equals(before.tape(), after.tape())) {
            notes.add(SAID.say("tapes-differ-" + pairing.key()));
        }
        if (service && !Objects.equals(before.machineName(), after.machineName())) {
            notes.add(SAID.say("machines-differ"));
        }
        return notes;
    }

    private static boolean near(Double a, Double b) {
        return a == null || b == null || Math.abs(a - b) <= SAME_SPEED * Math.abs(a);
    }

    private static String speed(double mmPerS) {
        return String.format(Locale.ROOT, "%.2f cm/s", mmPerS / 10);
    }

    private static String level(double dbfs) {
        return String.format(Locale.ROOT, "%.1f dBFS", dbfs);
    }

    private static void requireSame(String what, String before, String after) {
        if (before != null && after != null && !before.equals(after)) {
            throw unlike(what, before, after);
        }
    }

    private static UnusableInputException unlike(String what, String before, String after) {
        return new UnusableInputException(SAID.say("unlike-" + what, before, after));
    }
}
