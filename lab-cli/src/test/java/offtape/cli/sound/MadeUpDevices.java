package offtape.cli.sound;

import java.util.Arrays;
import java.util.List;
import java.util.concurrent.CopyOnWriteArrayList;
import javax.sound.sampled.Mixer;
import javax.sound.sampled.spi.MixerProvider;

/**
 * Puts made-up devices among those of the computer. Java finds this class by itself; there are no
 * devices but while a test has them plugged in.
 */
public final class MadeUpDevices extends MixerProvider {

    private static final List<MadeUpDevice> PLUGGED_IN = new CopyOnWriteArrayList<>();

    /** For Java. */
    public MadeUpDevices() {}

    static void plugIn(MadeUpDevice... devices) {
        PLUGGED_IN.addAll(Arrays.asList(devices));
    }

    static void unplugAll() {
        PLUGGED_IN.clear();
    }

    @Override
    public Mixer.Info[] getMixerInfo() {
        return PLUGGED_IN.stream().map(MadeUpDevice::info).toArray(Mixer.Info[]::new);
    }

    @Override
    public Mixer getMixer(Mixer.Info info) {
        return PLUGGED_IN.stream()
                .filter(d -> d.info().equals(info))
                .findFirst()
                .map(MadeUpDevice::mixer)
                .orElseThrow(() -> new IllegalArgumentException("not one of these"));
    }
}
