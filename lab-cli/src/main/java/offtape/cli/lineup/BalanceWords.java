package offtape.cli.lineup;

import java.util.ArrayList;
import java.util.List;

/**
 * What to turn when both channels come back.
 *
 * @param wording how it is said
 */
record BalanceWords(Wording wording) {

    /** As near as a trimmer is set by hand; common practice, no source. */
    static final double CLOSE_DB = 0.3;

    /** The loudest tones of the programme lie this far above the reference tone. */
    private static final double PROGRAMME_DB = 14;

    /**
     * Sentences; at least one.
     *
     * @param left what comes back less what is sent, dB
     * @param right the same
     * @param referenceDbfs level of the reference tone
     */
    List<String> of(double left, double right, double referenceDbfs) {
        double difference = right - left;
        List<String> words = new ArrayList<>();
        boolean match = Math.abs(difference) <= CLOSE_DB;
        if (!match) {
            words.add(balance(left, right));
        }
        double mean = (left + right) / 2;
        boolean sameSide = Math.min(Math.abs(left), Math.abs(right)) > CLOSE_DB && left * right > 0;
        if (match && Math.abs(mean) <= CLOSE_DB) {
            words.add(wording.say("lineup.match"));
        } else if (match) {
            words.add(wording.say(mean < 0 ? "lineup.match-low" : "lineup.match-high", size(mean)));
        } else if (sameSide) {
            double all = Math.abs(left) < Math.abs(right) ? left : right;
            words.add(wording.say(all < 0 ? "lineup.both-low" : "lineup.both-high", size(all)));
        }
        addHeadroom(referenceDbfs + Math.max(left, right), words);
        return words;
    }

    /** The channel that is further from where it should be is the one to turn. */
    private String balance(double left, double right) {
        int worse = Math.abs(right) >= Math.abs(left) ? 1 : 0;
        double off = worse == 1 ? right - left : left - right;
        boolean alone =
                Math.min(Math.abs(left), Math.abs(right)) <= CLOSE_DB
                        && Math.max(Math.abs(left), Math.abs(right)) > CLOSE_DB;
        if (alone) {
            double shown = worse == 1 ? right : left;
            return wording.say(
                    shown < 0 ? "lineup.one-low" : "lineup.one-high",
                    wording.first(worse),
                    size(shown),
                    wording.channel(worse));
        }
        return wording.say(
                off < 0 ? "lineup.against-low" : "lineup.against-high",
                wording.first(worse),
                size(off),
                wording.channel(1 - worse),
                wording.channel(worse));
    }

    private void addHeadroom(double loudestDbfs, List<String> words) {
        double room = -loudestDbfs;
        if (room < PROGRAMME_DB) {
            words.add(
                    wording.say(
                            "lineup.too-hot", wording.of(room, 1), wording.of(PROGRAMME_DB, 0)));
        }
    }

    private String size(double off) {
        return wording.of(Math.abs(off), 1);
    }
}
