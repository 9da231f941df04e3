package offtape.cli.command;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import offtape.report.result.Erasure;

/** Erasing in words. */
final class ErasureWords {

    /** DIN 45500 part 4, by the table of that name among the reference data: 60 dB at 1 kHz. */
    private static final double LEAST_DB = 60;

    private ErasureWords() {}

    /** One line a channel and what to do. */
    static List<String> lines(List<Erasure> channels) {
        List<String> lines = new ArrayList<>();
        boolean weak = false;
        for (Erasure e : channels) {
            lines.add(line(e));
            weak |= e.erasure().isKnown() && e.erasure().value() < LEAST_DB;
        }
        if (weak) {
            lines.add(
                    "DIN 45500 part 4 asks for 60 dB. Clean the erase head and see that the tape lies"
                            + " against it; then it may be worn or get too little current, which is"
                            + " work inside the machine: mains voltage, leave it to somebody licensed"
                            + " for it if you are not.");
        }
        return lines;
    }

    private static String line(Erasure e) {
        if (e.erasure().isKnown()) {
            return String.format(
                    Locale.ROOT,
                    "%-5s  %.0f Hz: %.1f ± %.1f dB weaker where it was erased",
                    e.channel(),
                    e.frequencyHz(),
                    e.erasure().value(),
                    e.erasure().uncertainty());
        }
        return e.atLeastDb() == null
                ? String.format(Locale.ROOT, "%-5s  unknown: %s", e.channel(), e.erasure().reason())
                : String.format(
                        Locale.ROOT,
                        "%-5s  %.0f Hz: at least %.1f dB weaker where it was erased; what is left lies"
                                + " under the noise",
                        e.channel(),
                        e.frequencyHz(),
                        e.atLeastDb());
    }
}
