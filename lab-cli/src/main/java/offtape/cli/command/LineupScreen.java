package offtape.cli.command;

import java.util.Optional;
import java.util.OptionalInt;
import offtape.cli.lineup.Key;
import offtape.cli.lineup.Lineup;
import offtape.cli.lineup.LiveLineup;
import offtape.cli.lineup.Picture;
import offtape.cli.lineup.Readings;
import offtape.cli.lineup.Wording;
import offtape.cli.terminal.LiveScreen;

/** Draws the readings and passes the keys on. */
final class LineupScreen implements LiveLineup.Watcher {

    private final LiveScreen screen;
    private final LineupEnd end;
    private final Picture picture;

    LineupScreen(LiveScreen screen, LineupEnd end, Wording wording) {
        this.picture = new Picture(wording);
        this.screen = screen;
        this.end = end;
    }

    @Override
    public boolean look(Readings readings) {
        screen.show(picture.of(readings, screen.width()));
        return end.goesOn(readings);
    }

    @Override
    public boolean keys(Lineup lineup) {
        OptionalInt typed = screen.key();
        if (typed.isEmpty()) {
            return true;
        }
        Optional<Key> key = Key.of(typed.getAsInt());
        if (key.isPresent()) {
            if (key.get() == Key.QUIT) {
                return false;
            }
            lineup.press(key.get());
            screen.show(picture.of(lineup.readings(), screen.width()));
        }
        return true;
    }
}
