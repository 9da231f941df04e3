package offtape.core.music;

import java.util.ArrayList;
import java.util.List;
import offtape.core.random.Draw;

/** A plucked bass on the chord's notes. */
final class BassPart implements Part {

    private static final int[] NOTES = {0, 0, 12, 7, 0, 10, 7, 12};
    private static final int HARMONICS = 14;

    @Override
    public List<Sounding> bar(long bar, Draw draw) {
        List<Sounding> notes = new ArrayList<>();
        for (int step = 0; step < 8; step++) {
            if (step > 0 && draw.at(step) < 0.3) {
                continue;
            }
            double begin = Part.played(bar, step / 2.0, draw, 10 + step);
            int pick = NOTES[draw.choice(20 + step, NOTES.length)];
            double hz = Part.pitchHz(Part.root(bar) + (step == 0 ? 0 : pick) - 5);
            double held = Part.BEAT_SECONDS * (draw.at(30 + step) < 0.3 ? 0.9 : 0.45);
            double[] harmonics = harmonics(0.34 * (0.7 + 0.3 * draw.at(40 + step)));
            notes.add(new HarmonicNote(begin, held, 0.5, hz, 0, 0.5, harmonics));
        }
        return notes;
    }

    private static double[] harmonics(double peak) {
        double[] amplitudes = new double[HARMONICS];
        for (int k = 1; k <= HARMONICS; k++) {
            amplitudes[k - 1] = peak / (k * Math.sqrt(k));
        }
        return amplitudes;
    }
}
