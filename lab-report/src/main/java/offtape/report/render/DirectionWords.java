package offtape.report.render;

import offtape.report.compare.Change.Direction;
import offtape.report.compare.PairWords;

/** Which way a figure went, with a sign of its own, so that it needs no colour. */
final class DirectionWords {

    private DirectionWords() {}

    /**
     * A word for a table.
     *
     * @param unclear key of what is said of what is not clear, such as a trend
     */
    static String of(Wording words, Direction direction, String unclear) {
        return switch (direction) {
            case BETTER -> "▲\u00a0" + words.say("pair.better");
            case WORSE -> "▼\u00a0" + words.say("pair.worse");
            case UNCLEAR -> "≈\u00a0" + words.say(unclear);
            case UNKNOWN -> "?\u00a0" + words.say("pair.unknown");
        };
    }

    /**
     * A word for a table of two sessions; of two machines the sign points to the better's column.
     */
    static String of(Wording words, Direction direction, PairWords pair) {
        if (!pair.areMachines()) {
            return of(words, direction, "pair.no-clear-change");
        }
        return switch (direction) {
            case BETTER -> "►\u00a0" + pair.second();
            case WORSE -> "◄\u00a0" + pair.first();
            case UNCLEAR, UNKNOWN -> of(words, direction, "pair.no-clear-difference");
        };
    }
}
