package offtape.cli.lineup;

import java.util.ArrayList;
import java.util.List;

/** What to turn for the replay level of a calibration tape. */
final class TapeWords {

    /** As near as a trimmer is set by hand; common practice, no source. */
    private static final double CLOSE_DB = 0.2;

    private TapeWords() {}

    /** Sentences; at least one. */
    static List<String> of(Readings r, double targetDbfs) {
        if (r.tapeHz() == null) {
            return List.of(
                    "No steady tone yet. Replay the level tone of the calibration tape; record is"
                            + " locked out.");
        }
        List<String> words = new ArrayList<>();
        for (int c = 0; c < r.tones().size(); c++) {
            double off = r.tones().get(c).levelDbfs() - targetDbfs;
            String name = r.tones().size() == 1 ? "The level" : c == 0 ? "Left" : "Right";
            if (!r.tones().get(c).isTone()) {
                words.add(name + ": no tone.");
            } else if (Math.abs(off) > CLOSE_DB) {
                words.add(
                        name
                                + " is "
                                + Decimals.of(Math.abs(off), 1)
                                + (off < 0 ? " dB low: raise" : " dB high: lower")
                                + " its replay level.");
            }
        }
        if (words.isEmpty()) {
            words.add("On target within " + Decimals.of(CLOSE_DB, 1) + " dB. Stop here.");
        }
        return words;
    }
}
