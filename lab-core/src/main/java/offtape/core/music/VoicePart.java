package offtape.core.music;

import java.util.ArrayList;
import java.util.List;
import offtape.core.random.Draw;

/**
 * A voice that sings phrases of vowels with pauses between them, a breath of noise before each.
 * Formants are rounded figures for vowels of a grown-up voice, from memory.
 */
final class VoicePart implements Part {

    private static final int[] SCALE = {12, 14, 15, 17, 19, 20, 22, 24};
    private static final double[][] FORMANTS_HZ = {
        {730, 1090, 2440}, {530, 1840, 2480}, {300, 2250, 3000}, {570, 840, 2410}, {300, 870, 2240}
    };
    private static final double HIGHEST_HZ = 9000;

    @Override
    public List<Sounding> bar(long bar, Draw draw) {
        List<Sounding> notes = new ArrayList<>();
        if (bar % 4 == 3) {
            return notes;
        }
        double breath = Part.played(bar, 0, draw, 1);
        notes.add(new NoiseStroke(breath, 0.25, 0.5, 0.03, 0.5, 0.12, draw.of(2)));
        double beat = 0.5;
        for (int i = 0; beat < 3.4; i++) {
            double beats = 0.5 + 0.5 * draw.choice(10 + i, 3);
            double begin = Part.played(bar, beat, draw, 20 + i);
            double hz = Part.pitchHz(SCALE[draw.choice(30 + i, SCALE.length)]);
            double[] vowel = FORMANTS_HZ[draw.choice(40 + i, FORMANTS_HZ.length)];
            double held = beats * Part.BEAT_SECONDS * 0.92;
            notes.add(new HarmonicNote(begin, held, 0.5, hz, 0.012, 2, harmonics(hz, vowel)));
            notes.add(new NoiseStroke(begin, 0.09, 0.5, 0.06, 0.8, 0.03, draw.of(50 + i)));
            beat += beats;
        }
        return notes;
    }

    private static double[] harmonics(double hz, double[] formants) {
        double[] amplitudes = new double[(int) (HIGHEST_HZ / hz)];
        double sum = 0;
        for (int k = 1; k <= amplitudes.length; k++) {
            double strength = 0.05;
            for (double formant : formants) {
                double away = (k * hz - formant) / (0.08 * formant + 40);
                strength += 1 / (1 + away * away);
            }
            amplitudes[k - 1] = strength / k;
            sum += amplitudes[k - 1];
        }
        for (int k = 0; k < amplitudes.length; k++) {
            amplitudes[k] *= 0.55 / sum;
        }
        return amplitudes;
    }
}
