package offtape.report.apply.correct;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import offtape.core.audio.AudioSource;
import offtape.core.filter.ConvolvedSound;
import offtape.core.text.Sentences;
import offtape.core.unit.Decibels;
import offtape.core.unit.Quantity;
import offtape.report.result.Results;

/** Holds a programme against the tape's headroom. */
final class MusicReading {

    private static final Sentences SAID = Sentences.near(MusicReading.class);

    private static final int STRETCH = 1 << 16;
    private static final double SILENT = 1e-10;

    /** What third-octave bands of music tell of a limit for single tones, dB, k = 2. */
    private static final double UNCERTAINTY_DB = 2;

    private final Results results;
    private final Map<String, Curve> gains;
    private final AudioSource music;
    private final double referenceDbfs;

    private MusicReading(
            Results results, Map<String, Curve> gains, AudioSource music, double referenceDbfs) {
        this.results = results;
        this.gains = gains;
        this.music = music;
        this.referenceDbfs = referenceDbfs;
    }

    /**
     * Reads a programme through.
     *
     * @param gains the filter's gain of each channel
     * @param referenceDbfs level of the reference, dB re a full-scale sine
     */
    static MusicCheck of(
            Results results, Map<String, Curve> gains, AudioSource music, double referenceDbfs) {
        return new MusicReading(results, gains, music, referenceDbfs).read();
    }

    private MusicCheck read() {
        FilterFile filter = FilterSet.of(gains, music.sampleRateHz());
        double peak = peakDb(music);
        double filtered = peakDb(new ConvolvedSound(music, filter.response()));
        double[][] levels = LoudestBands.of(music);
        List<MusicCheck.Channel> channels = new ArrayList<>();
        for (Map.Entry<String, Curve> gain : gains.entrySet()) {
            double[] own = levels[Math.min(channels.size(), levels.length - 1)];
            channels.add(channel(gain.getKey(), gain.getValue(), own));
        }
        return new MusicCheck(
                music.name(),
                music.sampleRateHz(),
                peak,
                filtered,
                Math.max(0, filtered),
                lowerForTape(channels),
                channels);
    }

    private static double peakDb(AudioSource sound) {
        double most = SILENT;
        for (long at = 0; at < sound.frames(); at += STRETCH) {
            for (double[] channel : sound.read(at, (int) Math.min(STRETCH, sound.frames() - at))) {
                for (double x : channel) {
                    most = Math.max(most, Math.abs(x));
                }
            }
        }
        return Decibels.ofAmplitude(most);
    }

    private MusicCheck.Channel channel(String name, Curve gain, double[] dbfs) {
        double[] hz = LoudestBands.bands(music.sampleRateHz());
        double[] level = Arrays.stream(dbfs).map(x -> x - referenceDbfs).toArray();
        double[] boosted = new double[hz.length];
        Arrays.setAll(boosted, i -> level[i] + gain.at(hz[i]));
        Curve limits = LevelLimits.of(results, name);
        if (limits == null) {
            return new MusicCheck.Channel(name, hz, level, boosted, null, null);
        }
        double[] limit = Arrays.stream(hz).map(limits::at).toArray();
        double[] over = new double[hz.length];
        Arrays.setAll(over, i -> Math.max(0, boosted[i] - limit[i]));
        return new MusicCheck.Channel(name, hz, level, boosted, limit, over);
    }

    private static Quantity lowerForTape(List<MusicCheck.Channel> channels) {
        if (channels.stream().anyMatch(c -> c.overDb() == null)) {
            return Quantity.unknown(SAID.say("music.no-ladder"));
        }
        double most =
                channels.stream().flatMapToDouble(c -> Arrays.stream(c.overDb())).max().orElse(0);
        return Quantity.known(most, "dB", UNCERTAINTY_DB);
    }
}
