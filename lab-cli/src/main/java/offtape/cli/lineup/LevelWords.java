package offtape.cli.lineup;

import java.util.ArrayList;
import java.util.List;
import offtape.core.programme.ChannelSet;

/**
 * What to turn so that both channels come back at the level at which they were sent.
 *
 * @param wording how it is said
 */
record LevelWords(Wording wording) {

    private static final double LEAST_HEARD_DB = -50;
    private static final double SWAPPED_DB = 20;

    /** Third harmonic at which a tape counts as fully driven (DIN 45500, IEC 60094). */
    private static final double DRIVEN_PERCENT = 3;

    /** Sentences, the most urgent first; at least one. */
    List<String> of(Readings r) {
        List<String> words = new ArrayList<>();
        for (int c = 0; c < r.peaks().size(); c++) {
            if (r.peaks().get(c).clipped()) {
                words.add(wording.say("lineup.full-scale", wording.first(c)));
            }
        }
        words.addAll(r.tones().size() == 1 ? one(r) : two(r));
        if (heard(r, 0) || heard(r, r.tones().size() - 1)) {
            words.addAll(distorted(r));
        }
        return words;
    }

    private static double back(Readings r, int channel) {
        return r.tones().get(channel).levelDbfs() - r.desk().levelDbfs();
    }

    private static boolean heard(Readings r, int channel) {
        return r.tones().get(channel).isTone() && back(r, channel) > LEAST_HEARD_DB;
    }

    private List<String> one(Readings r) {
        return List.of(heard(r, 0) ? single(r, 0, wording.say("lineup.the-return")) : nothing());
    }

    private String nothing() {
        return wording.say("lineup.nothing");
    }

    private List<String> two(Readings r) {
        boolean left = heard(r, 0);
        boolean right = heard(r, 1);
        if (!left && !right) {
            return List.of(nothing());
        }
        if (r.desk().channels() != ChannelSet.BOTH) {
            return oneSent(r);
        }
        if (left != right) {
            return List.of(
                    wording.say(
                            "lineup.only",
                            wording.channel(left ? 0 : 1),
                            wording.channel(left ? 1 : 0)));
        }
        return new BalanceWords(wording)
                .of(back(r, 0), back(r, 1), r.desk().limits().referenceDbfs());
    }

    private List<String> oneSent(Readings r) {
        int sent = r.desk().channels() == ChannelSet.LEFT ? 0 : 1;
        int other = 1 - sent;
        double step = back(r, other) - back(r, sent);
        if (heard(r, other) && (!heard(r, sent) || step > SWAPPED_DB)) {
            return List.of(
                    wording.say("lineup.swapped", wording.channel(sent), wording.channel(other)));
        }
        return List.of(
                single(r, sent, wording.first(sent)),
                heard(r, other)
                        ? wording.say("lineup.leaks", wording.of(-step, 1), wording.channel(other))
                        : wording.say("lineup.no-leak", wording.channel(other)));
    }

    private String single(Readings r, int channel, String name) {
        double off = back(r, channel);
        if (Math.abs(off) <= BalanceWords.CLOSE_DB) {
            return wording.say("lineup.single-match", name);
        }
        return wording.say(
                off < 0 ? "lineup.single-low" : "lineup.single-high",
                name,
                wording.of(Math.abs(off), 1));
    }

    private List<String> distorted(Readings r) {
        List<String> words = new ArrayList<>();
        for (int c = 0; c < r.tones().size(); c++) {
            Double k3 = r.tones().get(c).k3Percent();
            if (heard(r, c) && k3 != null && k3 > DRIVEN_PERCENT) {
                words.add(wording.say("lineup.distorts", wording.first(c), wording.of(k3, 1)));
            }
        }
        return words;
    }
}
