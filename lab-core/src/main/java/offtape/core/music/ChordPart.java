package offtape.core.music;

import java.util.ArrayList;
import java.util.List;
import offtape.core.random.Draw;

/** Held chords, spread over both channels, and a plucked line over them. */
final class ChordPart implements Part {

    private static final int[] CHORD = {12, 19, 24, 27, 34};
    private static final int[] LINE = {36, 39, 41, 43, 46, 48};

    @Override
    public List<Sounding> bar(long bar, Draw draw) {
        List<Sounding> notes = new ArrayList<>();
        for (int i = 0; i < CHORD.length; i++) {
            double begin = Part.played(bar, 0, draw, i);
            double hz = Part.pitchHz(Part.root(bar) % 5 + CHORD[i] + 0.08 * draw.around(10 + i));
            double place = (i + 0.5) / CHORD.length;
            double held = 0.97 * Part.BAR_SECONDS;
            notes.add(new HarmonicNote(begin, held, place, hz, 0.002, 3, falling(0.06, 10)));
        }
        for (int step = 0; step < 8; step++) {
            if (draw.at(20 + step) < 0.45) {
                double begin = Part.played(bar, step / 2.0, draw, 30 + step);
                double hz = Part.pitchHz(LINE[draw.choice(40 + step, LINE.length)]);
                double place = draw.at(50 + step);
                notes.add(new HarmonicNote(begin, 0.5, place, hz, 0, 0.15, falling(0.1, 12)));
            }
        }
        return notes;
    }

    private static double[] falling(double peak, int harmonics) {
        double[] amplitudes = new double[harmonics];
        for (int k = 1; k <= harmonics; k++) {
            amplitudes[k - 1] = peak / k;
        }
        return amplitudes;
    }
}
