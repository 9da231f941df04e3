package offtape.core.model;

import offtape.core.audio.AudioSource;
import offtape.core.dsp.RealFft;
import offtape.core.dsp.Spectrum;

/**
 * A pair of channels through four filters, each channel's own and what it hears of the other,
 * stretch by stretch (overlap-save). The filters' time zero may lie amid their taps, so that the
 * sound comes out where it went in.
 */
public final class CoupledSound implements AudioSource {

    private static final int LEAST_BLOCK = 1 << 14;

    private final AudioSource sound;
    private final int taps;
    private final int lead;
    private final RealFft transform;
    private final Spectrum[][] filters;

    /**
     * A filtered pair.
     *
     * @param sound of the filters' sample rate, one channel (which then stands for both) or two
     * @param filters by receiving and by sounding channel; all of one length, null for no leak
     * @param lead index of the filters' time zero
     */
    public CoupledSound(AudioSource sound, double[][][] filters, int lead) {
        this.sound = sound;
        this.taps = filters[0][0].length;
        this.lead = lead;
        this.transform = RealFft.ofSize(RealFft.nextPowerOfTwo(Math.max(LEAST_BLOCK, 4 * taps)));
        this.filters = new Spectrum[filters.length][filters.length];
        for (int into = 0; into < filters.length; into++) {
            for (int from = 0; from < filters.length; from++) {
                double[] filter = filters[into][from];
                this.filters[into][from] = filter == null ? null : transform.forward(filter);
            }
        }
    }

    @Override
    public int sampleRateHz() {
        return sound.sampleRateHz();
    }

    @Override
    public int channels() {
        return filters.length;
    }

    @Override
    public long frames() {
        return sound.frames();
    }

    @Override
    public double[][] read(long startFrame, int count) {
        double[][] out = new double[channels()][count];
        int hop = transform.size() - taps + 1;
        for (int done = 0; done < count; done += hop) {
            int some = Math.min(hop, count - done);
            double[][] x = sound.read(startFrame + done + lead - (taps - 1), some + taps - 1);
            Spectrum[] heard = new Spectrum[out.length];
            for (int c = 0; c < out.length; c++) {
                heard[c] = transform.forward(x[Math.min(c, x.length - 1)]);
            }
            for (int into = 0; into < out.length; into++) {
                add(heard, into, out[into], done, some);
            }
        }
        return out;
    }

    private void add(Spectrum[] heard, int into, double[] out, int at, int count) {
        for (int from = 0; from < heard.length; from++) {
            Spectrum filter = filters[into][from];
            if (filter != null) {
                double[] y = transform.inverse(heard[from].times(filter));
                for (int i = 0; i < count; i++) {
                    out[at + i] += y[taps - 1 + i];
                }
            }
        }
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
