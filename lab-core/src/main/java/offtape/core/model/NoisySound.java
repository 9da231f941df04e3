package offtape.core.model;

import java.util.List;
import offtape.core.audio.AudioSource;

/** A sound with hiss and hum on top. */
public final class NoisySound implements AudioSource {

    private final AudioSource sound;
    private final AudioSource hiss;
    private final List<SteadyLines> hum;

    /**
     * A noisy sound.
     *
     * @param sound what is heard through the noise
     * @param hiss noise of the same rate and as many channels, without end
     * @param hum lines of each channel
     */
    public NoisySound(AudioSource sound, AudioSource hiss, List<SteadyLines> hum) {
        this.sound = sound;
        this.hiss = hiss;
        this.hum = List.copyOf(hum);
    }

    @Override
    public int sampleRateHz() {
        return sound.sampleRateHz();
    }

    @Override
    public int channels() {
        return sound.channels();
    }

    @Override
    public long frames() {
        return sound.frames();
    }

    @Override
    public double[][] read(long startFrame, int count) {
        double[][] out = sound.read(startFrame, count);
        double[][] noise = hiss.read(startFrame, count);
        for (int c = 0; c < out.length; c++) {
            for (int i = 0; i < count; i++) {
                out[c][i] += noise[c][i];
            }
            hum.get(c).addTo(out[c], startFrame, sampleRateHz());
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
