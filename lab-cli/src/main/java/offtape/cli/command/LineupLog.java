package offtape.cli.command;

import offtape.cli.lineup.Lineup;
import offtape.cli.lineup.LiveLineup;
import offtape.cli.lineup.PlainLog;
import offtape.cli.lineup.Readings;
import offtape.cli.lineup.Stage;
import offtape.cli.lineup.Wording;
import offtape.cli.terminal.Terminal;

/** Writes a line a second: figures to standard output, what to turn to standard error. */
final class LineupLog implements LiveLineup.Watcher {

    private static final double EVERY_S = 1;

    private final Terminal terminal;
    private final LineupEnd end;
    private final boolean figuresElsewhere;
    private final PlainLog log;
    private double next;

    /**
     * Begins.
     *
     * @param figuresElsewhere whether standard output is wanted for something else
     */
    LineupLog(Terminal terminal, LineupEnd end, boolean figuresElsewhere) {
        this.terminal = terminal;
        this.log = new PlainLog(Wording.on(terminal));
        this.end = end;
        this.figuresElsewhere = figuresElsewhere;
    }

    @Override
    public boolean look(Readings readings) {
        boolean goesOn = end.goesOn(readings);
        log.news(readings).forEach(this::figures);
        if (readings.stage() == Stage.READING && (end.read() >= next || !goesOn)) {
            next += EVERY_S;
            figures(log.line(readings));
            log.advice(readings).forEach(a -> terminal.message("> " + a));
        }
        return goesOn;
    }

    private void figures(String line) {
        if (figuresElsewhere) {
            terminal.message(line);
        } else {
            terminal.result(line);
        }
    }

    @Override
    public boolean keys(Lineup lineup) {
        return true;
    }
}
