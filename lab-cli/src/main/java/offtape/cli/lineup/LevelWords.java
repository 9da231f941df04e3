package offtape.cli.lineup;

import java.util.ArrayList;
import java.util.List;
import offtape.core.programme.ChannelSet;

/** What to turn so that both channels come back at the level at which they were sent. */
final class LevelWords {

    private static final double LEAST_HEARD_DB = -50;
    private static final double SWAPPED_DB = 20;

    /** Third harmonic at which a tape counts as fully driven (DIN 45500, IEC 60094). */
    private static final double DRIVEN_PERCENT = 3;

    private static final List<String> NAMES = List.of("left", "right");

    private LevelWords() {}

    /** Sentences, the most urgent first; at least one. */
    static List<String> of(Readings r) {
        List<String> words = new ArrayList<>();
        for (int c = 0; c < r.peaks().size(); c++) {
            if (r.peaks().get(c).clipped()) {
                words.add(
                        capital(c)
                                + " reaches full scale: lower the interface's input gain or the"
                                + " machine's replay level.");
            }
        }
        words.addAll(r.tones().size() == 1 ? one(r) : two(r));
        if (heard(r, 0) || heard(r, r.tones().size() - 1)) {
            words.addAll(distorted(r));
        }
        return words;
    }

    static String capital(int channel) {
        return channel == 0 ? "Left" : "Right";
    }

    private static double back(Readings r, int channel) {
        return r.tones().get(channel).levelDbfs() - r.desk().levelDbfs();
    }

    private static boolean heard(Readings r, int channel) {
        return r.tones().get(channel).isTone() && back(r, channel) > LEAST_HEARD_DB;
    }

    private static List<String> one(Readings r) {
        return heard(r, 0) ? single(r, 0, "The return") : List.of(nothing());
    }

    private static String nothing() {
        return "Nothing comes back. Check the cables, the input channels, that the machine is in"
                + " record and monitors what you want to hear, and that no input is muted.";
    }

    private static List<String> two(Readings r) {
        boolean left = heard(r, 0);
        boolean right = heard(r, 1);
        if (!left && !right) {
            return List.of(nothing());
        }
        if (r.desk().channels() != ChannelSet.BOTH) {
            return oneSent(r);
        }
        if (left != right) {
            String present = NAMES.get(left ? 0 : 1);
            String absent = NAMES.get(left ? 1 : 0);
            return List.of(
                    "Only "
                            + present
                            + " comes back. Check the cable, the track's record switch and the gain"
                            + " of "
                            + absent
                            + ".");
        }
        return BalanceWords.of(back(r, 0), back(r, 1), r.desk().limits().referenceDbfs());
    }

    private static List<String> oneSent(Readings r) {
        int sent = r.desk().channels() == ChannelSet.LEFT ? 0 : 1;
        int other = 1 - sent;
        double step = back(r, other) - back(r, sent);
        if (heard(r, other) && (!heard(r, sent) || step > SWAPPED_DB)) {
            return List.of(
                    "Only "
                            + NAMES.get(sent)
                            + " is sent and "
                            + NAMES.get(other)
                            + " comes back: the channels are swapped. Change the two cables over, at"
                            + " the outputs or at the inputs.");
        }
        List<String> words = new ArrayList<>(single(r, sent, capital(sent)));
        words.add(
                heard(r, other)
                        ? Decimals.of(-step, 1)
                                + " dB lower it leaks into "
                                + NAMES.get(other)
                                + "."
                        : "Nothing of it is heard on " + NAMES.get(other) + ".");
        return words;
    }

    private static List<String> single(Readings r, int channel, String name) {
        double off = back(r, channel);
        if (Math.abs(off) <= BalanceWords.CLOSE_DB) {
            return List.of(name + " comes back at the level at which it is sent.");
        }
        return List.of(
                name
                        + " comes back "
                        + BalanceWords.amount(off)
                        + ": "
                        + BalanceWords.turn(off)
                        + " the record gain, or the interface's input gain if the tape gets the"
                        + " level it should.");
    }

    private static List<String> distorted(Readings r) {
        List<String> words = new ArrayList<>();
        for (int c = 0; c < r.tones().size(); c++) {
            Double k3 = r.tones().get(c).k3Percent();
            if (heard(r, c) && k3 != null && k3 > DRIVEN_PERCENT) {
                words.add(
                        capital(c)
                                + " distorts, K3 "
                                + Decimals.of(k3, 1)
                                + " %: the tape or an amplifier is driven too far. Send less (-) or"
                                + " lower the record gain.");
            }
        }
        return words;
    }
}
