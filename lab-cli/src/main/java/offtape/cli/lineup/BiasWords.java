package offtape.cli.lineup;

import java.util.ArrayList;
import java.util.List;

/**
 * What to turn for bias, and when to stop.
 *
 * @param wording how it is said
 */
record BiasWords(Wording wording) {

    /** Sentences: one a channel, and what is common practice. */
    List<String> of(Readings r) {
        List<String> words = new ArrayList<>();
        for (int c = 0; c < r.bias().size(); c++) {
            String name =
                    r.bias().size() == 1 ? wording.say("lineup.the-return") : wording.first(c);
            words.add(
                    r.tones().size() > c && r.tones().get(c).isTone()
                            ? channel(name, r.bias().get(c))
                            : wording.say("lineup.bias-no-tone", name));
        }
        words.add(wording.say("lineup.bias-practice"));
        return words;
    }

    private String channel(String name, BiasTrack track) {
        return switch (track.side()) {
            case START -> wording.say("lineup.bias-start", name);
            case CLIMBING -> wording.say("lineup.bias-climbing", name);
            case OVER -> wording.say("lineup.bias-over", name, wording.of(track.belowDb(), 1));
            case BACK -> wording.say("lineup.bias-back", name);
            case UNKNOWN -> wording.say("lineup.bias-unknown", name);
        };
    }
}
