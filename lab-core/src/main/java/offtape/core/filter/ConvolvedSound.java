package offtape.core.filter;

import offtape.core.audio.AudioSource;
import offtape.core.dsp.RealFft;
import offtape.core.dsp.Spectrum;

/**
 * A sound convolved with an impulse response, stretch by stretch (overlap-save), so that length
 * costs no memory. It is as much longer as the response rings on; the response's own delay stays.
 * One channel of either stands for both of the other.
 */
public final class ConvolvedSound implements AudioSource {

    private static final int LEAST_BLOCK = 1 << 14;

    private final AudioSource sound;
    private final int taps;
    private final RealFft transform;
    private final Spectrum[] responses;

    /**
     * A filtered sound.
     *
     * @param sound of the response's sample rate, closed together with this
     * @param response one array a channel, all of one length, at least one sample
     */
    public ConvolvedSound(AudioSource sound, double[][] response) {
        this.sound = sound;
        this.taps = response[0].length;
        this.transform = RealFft.ofSize(RealFft.nextPowerOfTwo(Math.max(LEAST_BLOCK, 4 * taps)));
        this.responses = new Spectrum[response.length];
        for (int c = 0; c < response.length; c++) {
            responses[c] = transform.forward(response[c]);
        }
    }

    @Override
    public int sampleRateHz() {
        return sound.sampleRateHz();
    }

    @Override
    public int channels() {
        return Math.max(sound.channels(), responses.length);
    }

    @Override
    public long frames() {
        return sound.frames() + taps - 1;
    }

    @Override
    public double[][] read(long startFrame, int count) {
        double[][] out = new double[channels()][count];
        int hop = transform.size() - taps + 1;
        for (int done = 0; done < count; done += hop) {
            int some = Math.min(hop, count - done);
            double[][] x = sound.read(startFrame + done - (taps - 1), some + taps - 1);
            for (int c = 0; c < out.length; c++) {
                Spectrum heard = transform.forward(x[Math.min(c, x.length - 1)]);
                Spectrum filter = responses[Math.min(c, responses.length - 1)];
                double[] y = transform.inverse(heard.times(filter));
                System.arraycopy(y, taps - 1, out[c], done, some);
            }
        }
        return out;
    }

    @Override
    public String name() {
        return sound.name();
    }

    @Override
    public void close() {
        sound.close();
    }
}
