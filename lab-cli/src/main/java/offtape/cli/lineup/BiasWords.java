package offtape.cli.lineup;

import java.util.ArrayList;
import java.util.List;

/** What to turn for bias, and when to stop. */
final class BiasWords {

    private BiasWords() {}

    /** Sentences: one a channel, and what is common practice. */
    static List<String> of(Readings r) {
        List<String> words = new ArrayList<>();
        for (int c = 0; c < r.bias().size(); c++) {
            String name = r.bias().size() == 1 ? "The return" : c == 0 ? "Left" : "Right";
            words.add(
                    r.tones().size() > c && r.tones().get(c).isTone()
                            ? channel(name, r.bias().get(c))
                            : name + ": no tone comes back.");
        }
        words.add(
                "Stop at the over-bias that the tape's maker states for this speed; where nothing is"
                        + " stated, 2 to 4 dB at 10 kHz are common practice.");
        return words;
    }

    private static String channel(String name, BiasTrack track) {
        String below = Decimals.of(track.belowDb(), 1) + " dB";
        return switch (track.side()) {
            case START ->
                    name
                            + ": begin with too little bias and raise it slowly; the level has not"
                            + " climbed yet.";
            case CLIMBING -> name + ": before the maximum, raise the bias further.";
            case OVER -> name + ": over-biased by " + below + ".";
            case BACK ->
                    name
                            + ": back at the maximum. Lower the bias until the level has clearly"
                            + " fallen, press c, and raise it again.";
            case UNKNOWN ->
                    name
                            + ": the level fell without a climb before, so the side is not known."
                            + " Lower the bias well below the maximum, press c, and raise it slowly.";
        };
    }
}
