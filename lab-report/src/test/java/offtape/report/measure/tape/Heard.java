package offtape.report.measure.tape;

import java.util.ArrayList;
import java.util.List;
import offtape.core.tape.ListedTone;
import offtape.core.unit.Quantity;

/** Invented tones as they are heard, two seconds long unless said otherwise. */
final class Heard {

    static final Quantity DROWNED = Quantity.unknown("It was drowned.");

    private Heard() {}

    /** A tone of 2 s with the same level on both channels, known within 0.03 dB. */
    static HeardTone tone(double from, double hz, double levelDb) {
        return tone(from, 2, hz, levelDb, levelDb);
    }

    /** A tone by the level of each channel, NaN if it is not heard there. */
    static HeardTone tone(double from, double seconds, double hz, double... levelsDb) {
        List<Quantity> levels = new ArrayList<>();
        for (double db : levelsDb) {
            levels.add(Double.isNaN(db) ? DROWNED : Quantity.known(db, "dBFS", 0.03));
        }
        return new HeardTone(from, from + seconds, hz, 1e-4 * hz, levels, DROWNED, null, 0);
    }

    /** Tones of −20 dB one after another, each for 2 s with a second between. */
    static List<HeardTone> tones(double... hz) {
        List<HeardTone> all = new ArrayList<>();
        for (double f : hz) {
            all.add(tone(3 * all.size(), f, -20));
        }
        return all;
    }

    /** Tones by their nominal frequencies, numbered from 1. */
    static List<NamedTone> named(double... hz) {
        List<NamedTone> all = new ArrayList<>();
        for (HeardTone tone : tones(hz)) {
            all.add(new NamedTone(all.size() + 1, tone, tone.hz(), null));
        }
        return all;
    }

    static ListedTone listed(double hz, Double levelDb, ListedTone.Purpose purpose) {
        return new ListedTone(hz, levelDb, null, purpose);
    }
}
