package offtape.report.measure.noise;

import java.util.List;
import java.util.OptionalDouble;
import java.util.stream.IntStream;
import offtape.core.dsp.PowerDensity;
import offtape.core.text.Sentences;
import offtape.core.unit.Quantity;

/**
 * An earlier recording that is heard in silence: what changes from frame to frame by more than
 * steady noise does, in third-octave bands, and steady lines that are no multiples of the mains.
 * Noise that grows and shrinks in most bands together is hiss of another level and is taken out.
 *
 * <p>What is there all the time, without lines, is not told from hiss.
 */
final class Residue {

    private static final Sentences SAID = Sentences.near(Residue.class);

    /** Chance that noise alone is taken for sound, half of it for lines and half for the rest. */
    private static final double FALSE_ALARMS = 5e-5;

    /** The floor of a band may have been found too low by so many deviations. */
    private static final double DEVIATIONS = 4.5;

    /** Where some band holds sound, others count from so many deviations. */
    private static final double CLEAR = 3;

    private static final int FEWEST_FRAMES = 20;

    /** Bands of so many degrees of freedom tell how loud all noise is in a frame. */
    private static final double TELLING_FREEDOM = 20;

    /** Share of those bands that may lie lower than what is taken for the level of the noise. */
    private static final double LOWER_BANDS = 0.25;

    private static final int FEWEST_BANDS = 4;

    /** What is fainter than this re reference is of no interest, nor to be trusted: −100 dB. */
    private static final double LEAST = 1e-10;

    /** What windows and the first and last frame may be wrong by, dB, k = 2. */
    private static final double OWN_UNCERTAINTY_DB = 0.3;

    private static final BandCourse.Excess NOTHING = new BandCourse.Excess(0, 0, 0);

    private final double zero;
    private final List<BandCourse> bands;
    private final double share;
    private final double middle;
    private final double[] levels;

    /**
     * A silence of which this is known.
     *
     * @param bands those in which there is noise
     * @param frames how many they have
     * @param zero mean square of the reference tone
     * @param middle how many times too much power a line may be told to have that sounds in the
     *     middle of the silence only
     */
    Residue(List<BandCourse> bands, int frames, double zero, double middle) {
        this.zero = zero;
        this.bands = bands;
        this.middle = middle;
        this.share = FALSE_ALARMS / frames / bands.size();
        this.levels = IntStream.range(0, frames).mapToDouble(this::level).toArray();
    }

    /**
     * Looks through a silence.
     *
     * @param x samples
     * @param density of the same
     * @param hum mains lines found in it
     * @param zero mean square of the reference tone
     * @return its rms over the whole silence, dB re reference, or why there is none
     */
    static Quantity of(double[] x, double rateHz, PowerDensity density, Hum hum, double zero) {
        ShortFrames frames = new ShortFrames(x, rateHz);
        if (frames.count() < FEWEST_FRAMES) {
            return Quantity.unknown(SAID.say("residue-too-short"));
        }
        List<BandCourse> bands = frames.bands().stream().filter(b -> b.floor() > 0).toList();
        if (bands.isEmpty()) {
            return Quantity.unknown(SAID.say("digital-silence"));
        }
        OptionalDouble mains =
                hum.mainsFrequency().isKnown()
                        ? OptionalDouble.of(hum.mainsFrequency().value())
                        : OptionalDouble.empty();
        SteadyTones tones = new SteadyTones(x, rateHz, density);
        return new Residue(bands, frames.count(), zero, tones.middle())
                .told(
                        tones.find(
                                ShortFrames.lowestHz(),
                                ShortFrames.highestHz(rateHz),
                                FALSE_ALARMS,
                                mains));
    }

    /** How much louder than usual all noise is in a frame, a ratio of powers, 1 at the least. */
    private double level(int frame) {
        double[] ratios =
                bands.stream()
                        .filter(b -> b.freedom() >= TELLING_FREEDOM)
                        .mapToDouble(b -> b.power(frame) / b.floor())
                        .sorted()
                        .toArray();
        return ratios.length < FEWEST_BANDS
                ? 1
                : Math.max(1, ratios[(int) (LOWER_BANDS * ratios.length)]);
    }

    /**
     * The figure.
     *
     * @param tones steady lines that are no hum
     * @return dB re reference, or why there is none
     */
    Quantity told(List<SteadyTones.Tone> tones) {
        double power = 0;
        double variance = 0;
        double hidden = 0;
        boolean changes = bands.stream().anyMatch(b -> stands(b, least(b)));
        for (BandCourse band : bands) {
            BandCourse.Excess excess = changes ? excess(band) : NOTHING;
            // What comes and goes may be told too loud as a line.
            BandCourse.Excess lines = lines(band, tones, excess.power() > 0 ? middle - 1 : 0);
            // A tone for a part of the time is also seen as a line, and counts once.
            boolean steady = lines.power() > middle * excess.power();
            BandCourse.Excess more = steady ? lines : excess;
            power += more.power();
            variance += more.variance();
            hidden += more.hidden();
        }
        return power > 0 ? known(power, 2 * Math.sqrt(variance) + hidden) : none();
    }

    /** What a band has, now that some band has something: less would do to be sure of it. */
    private BandCourse.Excess excess(BandCourse band) {
        BandCourse.Excess excess = band.excess(levels);
        boolean counts =
                excess.power() > CLEAR * Math.sqrt(excess.variance()) || stands(band, least(band));
        return counts ? excess : NOTHING;
    }

    private BandCourse.Excess lines(BandCourse band, List<SteadyTones.Tone> tones, double doubt) {
        double power = 0;
        double variance = 0;
        for (SteadyTones.Tone tone : tones) {
            if (band.holds(tone.frequencyHz()) && tone.power() > LEAST * zero) {
                power += tone.power();
                variance += tone.variance();
            }
        }
        return new BandCourse.Excess(power, variance, doubt * power);
    }

    private double least(BandCourse band) {
        double threshold = band.threshold(share, DEVIATIONS) * band.floor();
        return Math.max(threshold, band.floor() + LEAST * zero);
    }

    private boolean stands(BandCourse band, double least) {
        return IntStream.range(0, levels.length).anyMatch(f -> band.power(f) > levels[f] * least);
    }

    private Quantity known(double power, double doubt) {
        return Quantity.known(
                10 * Math.log10(power / zero),
                "dB",
                10 * Math.log10(1 + doubt / power) + OWN_UNCERTAINTY_DB);
    }

    private Quantity none() {
        double seen = bands.stream().mapToDouble(b -> least(b) - b.floor()).max().orElseThrow();
        return Quantity.unknown(SAID.say("no-residue", Math.ceil(10 * Math.log10(seen / zero))));
    }
}
