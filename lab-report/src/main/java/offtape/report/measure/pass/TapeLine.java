package offtape.report.measure.pass;

import offtape.report.measure.line.FoundLine;

/**
 * A line as it lies along the tape. Its rate may move as that of a reel does: f(t) = f₀/√(1 + b·t),
 * t from the middle.
 *
 * @param hz rate in the middle
 * @param bend b, 1/s; 0 for a steady line
 */
record TapeLine(double hz, double bend) {

    /**
     * A line that was found.
     *
     * @param seconds length of the stretch in which it was
     */
    static TapeLine of(FoundLine line, double seconds) {
        if (!line.moves()) {
            return new TapeLine(line.startHz(), 0);
        }
        double start = 1 / (line.startHz() * line.startHz());
        double end = 1 / (line.endHz() * line.endHz());
        double squared = 2 / (start + end);
        return new TapeLine(Math.sqrt(squared), squared * (end - start) / seconds);
    }

    /** Phase in radians at a time from the middle, seconds. */
    double phase(double seconds) {
        double turned = 2 * seconds / (1 + Math.sqrt(1 + bend * seconds));
        return 2 * Math.PI * hz * turned;
    }
}
