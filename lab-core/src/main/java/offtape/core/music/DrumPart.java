package offtape.core.music;

import java.util.ArrayList;
import java.util.List;
import offtape.core.random.Draw;

/** Kick, snare and cymbals; strokes differ in strength and time, and some are left out. */
final class DrumPart implements Part {

    private static final double SNARE_SECONDS = 0.35;

    @Override
    public List<Sounding> bar(long bar, Draw draw) {
        List<Sounding> strokes = new ArrayList<>();
        for (int step = 0; step < 8; step++) {
            double begin = Part.played(bar, step / 2.0, draw, 10 + step);
            double force = 0.6 + 0.4 * draw.at(20 + step);
            if (step == 0 || step == 4 || draw.at(30 + step) < 0.15) {
                strokes.add(new SkinStroke(begin, 0.4, 0.5, 0.42 * force, 160, 52, 0.09));
            }
            if (step == 2 || step == 6) {
                snare(strokes, begin, force, draw.of(40 + step));
            }
            if (draw.at(50 + step) < 0.9) {
                double ring = draw.at(60 + step) < 0.15 ? 0.2 : 0.03;
                strokes.add(
                        new NoiseStroke(
                                begin, 0.4, 0.65, 0.1 * force, 0.9, ring, draw.of(70 + step)));
            }
        }
        return strokes;
    }

    private static void snare(List<Sounding> strokes, double begin, double force, Draw noise) {
        strokes.add(new SkinStroke(begin, SNARE_SECONDS, 0.45, 0.18 * force, 330, 190, 0.05));
        strokes.add(new NoiseStroke(begin, SNARE_SECONDS, 0.45, 0.22 * force, 0.3, 0.07, noise));
    }
}
