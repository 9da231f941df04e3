package offtape.cli.lineup;

import java.util.ArrayList;
import java.util.List;

/**
 * What to turn for the replay level of a calibration tape.
 *
 * @param wording how it is said
 */
record TapeWords(Wording wording) {

    /** As near as a trimmer is set by hand; common practice, no source. */
    private static final double CLOSE_DB = 0.2;

    /** Sentences; at least one. */
    List<String> of(Readings r, double targetDbfs) {
        if (r.tapeHz() == null) {
            return List.of(wording.say("lineup.tape-none"));
        }
        List<String> words = new ArrayList<>();
        for (int c = 0; c < r.tones().size(); c++) {
            double off = r.tones().get(c).levelDbfs() - targetDbfs;
            String name =
                    r.tones().size() == 1 ? wording.say("lineup.the-level") : wording.first(c);
            if (!r.tones().get(c).isTone()) {
                words.add(wording.say("lineup.tape-no-tone", name));
            } else if (Math.abs(off) > CLOSE_DB) {
                words.add(
                        wording.say(
                                off < 0 ? "lineup.tape-low" : "lineup.tape-high",
                                name,
                                wording.of(Math.abs(off), 1)));
            }
        }
        if (words.isEmpty()) {
            words.add(wording.say("lineup.tape-on-target", wording.of(CLOSE_DB, 1)));
        }
        return words;
    }
}
