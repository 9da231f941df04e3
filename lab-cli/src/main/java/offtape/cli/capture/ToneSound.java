package offtape.cli.capture;

import offtape.core.audio.AudioSource;
import offtape.core.text.Sentences;

/**
 * A steady tone on both channels that swells and fades, or silence.
 *
 * @param frequencyHz in hertz
 * @param peak full-scale units, 0 for silence
 * @param sampleRateHz frames a second
 * @param frames length
 */
public record ToneSound(double frequencyHz, double peak, int sampleRateHz, long frames)
        implements AudioSource {

    private static final Sentences SAID = Sentences.near(ToneSound.class);

    private static final double FADE_S = 0.1;

    @Override
    public int channels() {
        return 2;
    }

    @Override
    public double[][] read(long startFrame, int count) {
        double[] x = new double[count];
        for (int i = 0; i < count; i++) {
            x[i] = at(startFrame + i);
        }
        return new double[][] {x, x.clone()};
    }

    private double at(long n) {
        if (n < 0 || n >= frames) {
            return 0;
        }
        double edge = Math.min(n + 0.5, frames - n - 0.5) / (FADE_S * sampleRateHz);
        double fade = edge >= 1 ? 1 : 0.5 - 0.5 * Math.cos(Math.PI * edge);
        return peak * fade * Math.sin(2 * Math.PI * frequencyHz * n / sampleRateHz);
    }

    @Override
    public String name() {
        return peak == 0 ? SAID.say("silence") : SAID.say("the-tone");
    }

    @Override
    public void close() {
        // nothing is open
    }
}
