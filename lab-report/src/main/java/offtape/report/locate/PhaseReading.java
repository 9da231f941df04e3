package offtape.report.locate;

/**
 * How late a moment of the programme came back, read from phase.
 *
 * @param programmeSeconds the moment
 * @param lateSeconds programme seconds by which it is late against a map, up to an unknown phase
 * @param hz frequency at which it was read
 * @param sigmaSeconds standard uncertainty by noise
 * @param group readings of one group share one unknown phase, the path's
 */
record PhaseReading(
        double programmeSeconds, double lateSeconds, double hz, double sigmaSeconds, int group) {}
