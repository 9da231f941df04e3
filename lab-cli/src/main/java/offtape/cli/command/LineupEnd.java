package offtape.cli.command;

import offtape.cli.lineup.LiveLineup;
import offtape.cli.lineup.Readings;
import offtape.cli.lineup.Stage;

/** Knows the last readings, and when a line-up has lasted as long as it was to last. */
final class LineupEnd {

    private final Double seconds;
    private double read;
    private Readings last;

    /** After so many seconds of readings, or never if null. */
    LineupEnd(Double seconds) {
        this.seconds = seconds;
    }

    /** Notes readings; says whether to go on. */
    boolean goesOn(Readings readings) {
        last = readings;
        read += readings.stage() == Stage.READING ? LiveLineup.STEP_S : 0;
        return seconds == null || read < seconds || readings.stage() != Stage.READING;
    }

    /** Seconds of readings so far. */
    double read() {
        return read;
    }

    /** The last readings, or null. */
    Readings last() {
        return last;
    }
}
