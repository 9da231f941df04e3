package offtape.core.music;

import java.util.List;
import offtape.core.random.Draw;

/** What one player plays, bar by bar. */
@FunctionalInterface
interface Part {

    /** Seconds of a bar: four beats at 104 a minute. */
    double BAR_SECONDS = 4 * 60.0 / 104;

    /** Seconds of a beat. */
    double BEAT_SECONDS = BAR_SECONDS / 4;

    /**
     * What begins in a bar; all of it has ended when the next bar ends.
     *
     * @param bar 0 or more
     * @param draw what chance decides in this bar
     */
    List<Sounding> bar(long bar, Draw draw);

    /** Frequency of a note, semitones above 55 Hz, in equal temperament. */
    static double pitchHz(double semitones) {
        return 55 * StrictMath.pow(2, semitones / 12);
    }

    /** The root of a bar's chord, semitones above 55 Hz. */
    static int root(long bar) {
        int[] roots = {0, 5, 3, 7, 0, 8, 3, 10};
        return roots[(int) (bar % roots.length)];
    }

    /** When a step of a bar begins as somebody plays it, up to some milliseconds off. */
    static double played(long bar, double beat, Draw draw, long place) {
        return bar * BAR_SECONDS + beat * BEAT_SECONDS + 0.006 * draw.at(place);
    }
}
