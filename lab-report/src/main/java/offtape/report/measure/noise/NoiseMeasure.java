package offtape.report.measure.noise;

import java.util.Arrays;
import java.util.List;
import java.util.function.DoubleUnaryOperator;
import offtape.core.dsp.PowerDensity;
import offtape.core.programme.Cue;
import offtape.core.standard.Iec61260;
import offtape.core.standard.Iec61672;
import offtape.core.standard.ItuBs468;
import offtape.core.text.Sentences;
import offtape.core.unit.Decibels;
import offtape.core.unit.Quantity;
import offtape.report.locate.ProgrammeReturn;
import offtape.report.measure.tone.ReferenceLevels;
import offtape.report.result.Distortion;
import offtape.report.result.Noise;
import offtape.report.result.NoiseSpectrum;

/**
 * Noise of recorded silence against the reference tone, on one channel.
 *
 * <p>Unweighted and A-weighted noise are read between 22.4 Hz and 22.4 kHz at every sample rate (or
 * up to half of it), with edges as sharp as the spectrum; a filter with slopes of 24 dB an octave
 * (Butterworth) passes (π/8)/sin(π/8) of white noise, 0.11 dB more. What a recorder's own filter
 * takes away below half the sample rate is missing.
 */
public final class NoiseMeasure {

    private static final Sentences SAID = Sentences.near(NoiseMeasure.class);

    private static final double LOWEST_HZ = 22.4;
    private static final double HIGHEST_HZ = 22_400;

    /** Under this rate there is no 20 kHz in a recording. */
    private static final double LOWEST_RATE_HZ = 44_100;

    /** What weighting and the sharp edges of the band may be wrong by, dB, k = 2. */
    private static final double OWN_UNCERTAINTY_DB = 0.02;

    private static final DoubleUnaryOperator A_WEIGHT =
            f -> Decibels.toPower(Iec61672.aWeightingDb(f));

    private static final DoubleUnaryOperator ITU_WEIGHT =
            f -> f <= 0 ? 0 : Decibels.toPower(ItuBs468.weightingDb(f));

    private final ProgrammeReturn ret;
    private final ReferenceLevels reference;
    private final NoiseDensities noise;
    private final ModulationNoise modulation;

    public NoiseMeasure(
            ProgrammeReturn ret,
            ReferenceLevels reference,
            NoiseDensities noise,
            ModulationNoise modulation) {
        this.ret = ret;
        this.reference = reference;
        this.noise = noise;
        this.modulation = modulation;
    }

    /** Noise of a channel; {@code ladders} supply the maximum output level. */
    public Noise measure(int channel, List<Distortion> ladders) {
        String name = ProgrammeReturn.channelName(channel);
        if (noise == null) {
            return unknown(
                    name, ret.whyMissing(Cue.Silence.class, s -> true, SAID.say("no-silence")));
        }
        if (reference == null || !reference.heard(channel)) {
            return unknown(name, SAID.say("no-reference"));
        }
        double rate = ret.recording().sampleRateHz();
        return rate < LOWEST_RATE_HZ
                ? narrow(channel, name, rate)
                : wide(channel, name, rate, ladders);
    }

    private Noise wide(int channel, String name, double rate, List<Distortion> ladders) {
        PowerDensity density = noise.densities()[channel];
        double zero = reference.power(channel);
        double[] x = noise.samples()[channel];
        double top = Math.min(HIGHEST_HZ, rate / 2);
        Hum hum = HumSearch.find(x, rate, zero);
        NoiseScatter scatter = new NoiseScatter(density, x.length / rate, hum.lines());
        double sure = 2 * Decibels.ofAmplitude(1 + reference.relativeUncertainty()[channel]);
        Level level = new Level(density, scatter, zero, Math.hypot(OWN_UNCERTAINTY_DB, sure));
        // What lies above the audio band would tell the recorder's sample rate, not the machine.
        Quantity a = level.of(LOWEST_HZ, top, A_WEIGHT);
        return new Noise(
                name,
                level.of(LOWEST_HZ, top, f -> 1),
                a,
                itu468(x, rate, level),
                dynamicRange(a, name, ladders),
                hum.lines(),
                spectrum(density, zero, top),
                new double[] {LOWEST_HZ, top},
                hum.mainsFrequency(),
                hum.threshold(),
                modulation.level(channel),
                Residue.of(x, rate, density, hum, zero));
    }

    /**
     * Levels of a density.
     *
     * @param zero mean square of the reference tone
     * @param ownDb what weighting and reference may be wrong by, dB
     */
    private record Level(PowerDensity density, NoiseScatter scatter, double zero, double ownDb) {

        Quantity of(double fromHz, double toHz, DoubleUnaryOperator gain) {
            double power = density.power(fromHz, toHz, gain);
            return of(power, scatter.uncertaintyDb(fromHz, toHz, gain, power));
        }

        Quantity of(double power, double scatterDb) {
            return power > 0
                    ? Quantity.known(
                            10 * Math.log10(power / zero), "dB", Math.hypot(ownDb, scatterDb))
                    : Quantity.unknown(SAID.say("digital-silence"));
        }
    }

    /** What a recording tells that does not reach up to the end of the audible range. */
    private Noise narrow(int channel, String name, double rate) {
        double zero = reference.power(channel);
        Quantity none = Quantity.unknown(SAID.say("narrow", rate, rate / 2000));
        Hum hum = HumSearch.find(noise.samples()[channel], rate, zero);
        return new Noise(
                name,
                none,
                none,
                none,
                none,
                hum.lines(),
                spectrum(noise.densities()[channel], zero, rate / 2),
                null,
                hum.mainsFrequency(),
                hum.threshold(),
                modulation.level(channel),
                Residue.of(noise.samples()[channel], rate, noise.densities()[channel], hum, zero));
    }

    private Quantity itu468(double[] x, double rate, Level level) {
        if (x.length < 2 * ItuBs468.SETTLING_SECONDS * rate) {
            return Quantity.unknown(SAID.say("quasi-peak-too-short"));
        }
        double[] reading = ItuBs468.atRate(rate).reading(x);
        int settled = (int) Math.round(ItuBs468.SETTLING_SECONDS * rate);
        double[] pointer = Arrays.copyOfRange(reading, settled, reading.length);
        double peak = Arrays.stream(pointer).average().orElseThrow();
        // The pointer is as unsteady as the weighted noise over the time in which it is read.
        NoiseScatter scatter = level.scatter().over(pointer.length / rate);
        double power = level.density().power(0, rate / 2, ITU_WEIGHT);
        double least = peak > 0 ? scatter.uncertaintyDb(0, rate / 2, ITU_WEIGHT, power) : 0;
        return level.of(peak * peak, NoiseScatter.ofMeanDb(pointer, rate, least));
    }

    private static Noise unknown(String name, String reason) {
        Quantity q = Quantity.unknown(reason);
        return new Noise(name, q, q, q, q, List.of(), null, null, q, q, q, q);
    }

    private static Quantity dynamicRange(
            Quantity aWeighted, String name, List<Distortion> ladders) {
        if (!aWeighted.isKnown()) {
            return aWeighted;
        }
        for (Distortion d : ladders) {
            if (d.channel().equals(name) && d.maximumOutputLevel().isKnown()) {
                Quantity top = d.maximumOutputLevel();
                return Quantity.known(
                        top.value() - aWeighted.value(),
                        "dB",
                        Math.hypot(top.uncertainty(), aWeighted.uncertainty()));
            }
        }
        return Quantity.unknown(SAID.say("no-maximum"));
    }

    private static NoiseSpectrum spectrum(PowerDensity density, double zero, double top) {
        double[] centres = Iec61260.bandCentresHz(25, Math.min(20_000, top / 1.13), 3);
        double[] levels = new double[centres.length];
        for (int i = 0; i < centres.length; i++) {
            double power =
                    density.power(
                            Iec61260.lowerEdgeHz(centres[i], 3),
                            Iec61260.upperEdgeHz(centres[i], 3),
                            f -> 1);
            levels[i] = Math.max(-200, 10 * Math.log10(power / zero + 1e-30));
        }
        return new NoiseSpectrum(centres, levels);
    }
}
