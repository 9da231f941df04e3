package offtape.report.render;

import offtape.report.compare.Change.Direction;
import offtape.report.compare.PairWords;

/** Which way a figure went, with a sign of its own, so that it needs no colour. */
final class DirectionWords {

    private DirectionWords() {}

    /**
     * A word for a table.
     *
     * @param unclear what is not clear, such as {@code "trend"}
     */
    static String of(Direction direction, String unclear) {
        return switch (direction) {
            case BETTER -> "▲\u00a0better";
            case WORSE -> "▼\u00a0worse";
            case UNCLEAR -> "≈\u00a0no clear " + unclear;
            case UNKNOWN -> "?\u00a0unknown";
        };
    }

    /**
     * A word for a table of two sessions; of two machines the sign points to the better's column.
     */
    static String of(Direction direction, PairWords words) {
        if (!words.areMachines()) {
            return of(direction, "change");
        }
        return switch (direction) {
            case BETTER -> "►\u00a0" + words.second();
            case WORSE -> "◄\u00a0" + words.first();
            case UNCLEAR, UNKNOWN -> of(direction, "difference");
        };
    }
}
