package offtape.report.measure.noise;

import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import offtape.core.dsp.Baseband;
import offtape.core.dsp.Downconverter;
import offtape.core.dsp.PhaseLaw;
import offtape.core.dsp.PowerDensity;
import offtape.core.programme.ChannelSet;
import offtape.core.programme.Cue;
import offtape.core.text.Sentences;
import offtape.core.unit.Quantity;
import offtape.report.locate.ProgrammeReturn;

/**
 * Noise that is there only while a tone is: the random fluctuation of a steady tone's level.
 *
 * <p>A tone A·(1 + m(t))·cos ωt that fluctuates by m has sidebands of the power of m² re its own,
 * so the mean square of the relative fluctuation of its amplitude, between two rates, is the power
 * of the noise beside it in the band of those distances on both sides. Flutter moves the phase and
 * not the amplitude and does not enter; nor does that part of a tape's modulation noise that moves
 * the phase, which cannot be told from flutter.
 *
 * <p>Steady noise of density N beside a tone of mean square P adds to the amplitude what of it is
 * in phase, half of its power: ∫N df over both sidebands, over 2P. That is read from the silence
 * and taken out. The median over half-second blocks keeps dropouts out.
 */
public final class ModulationNoise {

    private static final Sentences SAID = Sentences.near(ModulationNoise.class);

    /** Slowest fluctuation that counts. */
    public static final double LOW_HZ = 10;

    /** Fastest fluctuation that counts. */
    public static final double HIGH_HZ = 1000;

    /** Both sidebands and the lines of the mains fit beside such tones. */
    private static final double LOWEST_TONE_HZ = 2500;

    private static final double HIGHEST_TONE_HZ = 7000;
    private static final double SHORTEST_S = 3;
    private static final double MARGIN_S = 0.2;
    private static final double PASS_HZ = 1100;
    private static final double STOP_HZ = 1450;
    private static final int FEWEST_BLOCKS = 4;

    /** Share of the silence's power that may be wrong beside its scatter. */
    private static final double SILENCE_DOUBT = 0.02;

    /** A median of normal values scatters by so much more than their mean. */
    private static final double MEDIAN_OF_MEAN = 1.2533;

    /** Independent values among blocks that overlap by half. */
    private static final double INDEPENDENT = 0.6;

    private static final double OWN_UNCERTAINTY_DB = 0.1;

    private final Cue.Tone tone;
    private final double hz;
    private final List<Baseband> bands;
    private final NoiseDensities silence;

    private ModulationNoise(
            Cue.Tone tone, double hz, List<Baseband> bands, NoiseDensities silence) {
        this.tone = tone;
        this.hz = hz;
        this.bands = bands;
        this.silence = silence;
    }

    /**
     * Reads the longest suitable tone.
     *
     * @param silence the silence of the same recording, or null if there is none
     */
    public static ModulationNoise of(ProgrammeReturn ret, NoiseDensities silence) {
        int rate = ret.recording().sampleRateHz();
        Optional<Cue.Tone> longest =
                ret.cues(Cue.Tone.class).stream()
                        .filter(t -> t.channels() == ChannelSet.BOTH)
                        .filter(t -> t.frequencyHz() >= LOWEST_TONE_HZ)
                        .filter(t -> t.frequencyHz() <= HIGHEST_TONE_HZ)
                        .filter(t -> 2 * (t.frequencyHz() + STOP_HZ) < rate)
                        .filter(t -> ret.sheet().seconds(t.frames()) >= SHORTEST_S)
                        .max(Comparator.comparingLong(Cue::frames));
        if (longest.isEmpty() || silence == null) {
            return new ModulationNoise(longest.orElse(null), 0, List.of(), silence);
        }
        Cue.Tone tone = longest.get();
        double hz = tone.frequencyHz() * ret.speedRatio(tone.startFrame(), tone.frames());
        ProgrammeReturn.Span span = ret.span(tone.startFrame(), tone.frames(), MARGIN_S);
        List<Baseband> bands =
                Downconverter.of(PASS_HZ, STOP_HZ, rate)
                        .convert(ret.recording(), span.from(), span.to(), PhaseLaw.steady(hz));
        return new ModulationNoise(tone, hz, bands, silence);
    }

    /** The figure of a channel, dB re the tone. */
    public Quantity level(int channel) {
        if (tone == null) {
            return Quantity.unknown(SAID.say("no-tone"));
        }
        if (silence == null) {
            return Quantity.unknown(SAID.say("no-silence-beside-tone"));
        }
        Baseband band = bands.get(channel);
        double[] powers = powers(band);
        double steady = steadyShare(channel, 2 * band.meanPower());
        if (powers.length < FEWEST_BLOCKS || !(band.meanPower() > 0) || !(steady < 0.01)) {
            return Quantity.unknown(SAID.say("faint-tone"));
        }
        return figure(powers, steady);
    }

    /** The excess of a median over the steady share. */
    static Quantity figure(double[] powers, double steady) {
        double[] sorted = powers.clone();
        Arrays.sort(sorted);
        double median = (sorted[(sorted.length - 1) / 2] + sorted[sorted.length / 2]) / 2;
        // Half the distance of the quartiles is 0.6745 deviations.
        double spread = (sorted[3 * sorted.length / 4] - sorted[sorted.length / 4]) / 2 / 0.6745;
        double doubt =
                2
                        * Math.hypot(
                                MEDIAN_OF_MEAN * spread / Math.sqrt(INDEPENDENT * sorted.length),
                                SILENCE_DOUBT * steady);
        double excess = median - steady;
        if (excess < doubt) {
            return Quantity.unknown(
                    SAID.say(
                            "below-steady-noise",
                            Math.ceil(10 * Math.log10(Math.max(0, excess) + doubt))));
        }
        return Quantity.known(
                10 * Math.log10(excess),
                "dB",
                10 * Math.log10(1 + doubt / excess) + OWN_UNCERTAINTY_DB);
    }

    /** Mean square of the relative fluctuation in the band, block after block. */
    private static double[] powers(Baseband band) {
        int length = Integer.highestOneBit((int) (0.7 * band.rateHz()));
        int blocks = Math.max(0, 2 * band.size() / length - 1);
        double[] powers = new double[blocks];
        for (int b = 0; b < blocks; b++) {
            double[] amplitude = new double[length];
            for (int i = 0; i < length; i++) {
                amplitude[i] = Math.sqrt(band.power(b * length / 2 + i));
            }
            double mean = Arrays.stream(amplitude).average().orElseThrow();
            for (int i = 0; i < length && mean > 0; i++) {
                amplitude[i] = amplitude[i] / mean - 1;
            }
            powers[b] =
                    PowerDensity.of(amplitude, band.rateHz(), length)
                            .power(LOW_HZ, HIGH_HZ, f -> 1);
        }
        return powers;
    }

    private double steadyShare(int channel, double tonePower) {
        PowerDensity density = silence.densities()[channel];
        double beside =
                density.power(hz - HIGH_HZ, hz - LOW_HZ, f -> 1)
                        + density.power(hz + LOW_HZ, hz + HIGH_HZ, f -> 1);
        return beside / (2 * tonePower);
    }
}
