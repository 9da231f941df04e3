package offtape.report.measure.noise;

import java.util.List;
import offtape.core.dsp.PowerDensity;
import offtape.core.programme.Cue;
import offtape.core.standard.Iec61260;
import offtape.core.standard.Iec61672;
import offtape.core.standard.ItuBs468;
import offtape.core.unit.Decibels;
import offtape.core.unit.Quantity;
import offtape.report.locate.ProgrammeReturn;
import offtape.report.measure.tone.ReferenceLevels;
import offtape.report.result.Distortion;
import offtape.report.result.Noise;
import offtape.report.result.NoiseSpectrum;

/** Noise of recorded silence against the reference tone, on one channel. */
public final class NoiseMeasure {

    private static final double LOWEST_HZ = 22.4;
    private static final double HIGHEST_HZ = 22_400;

    private final ProgrammeReturn ret;
    private final ReferenceLevels reference;
    private final NoiseDensities noise;

    public NoiseMeasure(ProgrammeReturn ret, ReferenceLevels reference, NoiseDensities noise) {
        this.ret = ret;
        this.reference = reference;
        this.noise = noise;
    }

    /** Noise of a channel; {@code ladders} supply the maximum output level. */
    public Noise measure(int channel, List<Distortion> ladders) {
        String name = ProgrammeReturn.channelName(channel);
        if (noise == null) {
            return unknown(
                    name,
                    ret.whyMissing(
                            Cue.Silence.class,
                            s -> true,
                            "The recording holds no recorded silence long enough."));
        }
        if (reference == null || !reference.heard(channel)) {
            return unknown(name, "The reference tone was not heard on this channel.");
        }
        PowerDensity density = noise.densities()[channel];
        double zero = reference.power(channel);
        double rate = ret.recording().sampleRateHz();
        double[] x = noise.samples()[channel];
        double top = Math.min(HIGHEST_HZ, rate / 2);
        Quantity a = level(density.power(0, rate / 2, NoiseMeasure::aWeighting), zero, x.length);
        return new Noise(
                name,
                level(density.power(LOWEST_HZ, top, f -> 1), zero, x.length),
                a,
                itu468(x, rate, zero),
                dynamicRange(a, name, ladders),
                HumSearch.find(x, rate, zero),
                spectrum(density, zero, top));
    }

    private static double aWeighting(double hz) {
        return hz <= 0 ? 0 : Decibels.toPower(Iec61672.aWeightingDb(hz));
    }

    private Quantity itu468(double[] x, double rate, double zero) {
        if (x.length < 2 * ItuBs468.SETTLING_SECONDS * rate) {
            return Quantity.unknown("The recorded silence is too short for a quasi-peak reading.");
        }
        if (rate < ItuBs468.LOWEST_RATE_HZ) {
            return Quantity.unknown(
                    "The weighting of BS.468 reaches higher than this recording: it needs 44.1 kHz"
                            + " or more.");
        }
        double peak = ItuBs468.atRate(rate).quasiPeak(x);
        return level(peak * peak, zero, x.length);
    }

    private static Noise unknown(String name, String reason) {
        Quantity q = Quantity.unknown(reason);
        return new Noise(name, q, q, q, q, List.of(), null);
    }

    /** The scatter of a noise level: 4.3 dB over the root of the independent values, k = 2. */
    private Quantity level(double power, double zero, int samples) {
        if (!(power > 0)) {
            return Quantity.unknown("The silence of the recording is digital silence.");
        }
        double scatter = 2 * 4.34 / Math.sqrt(samples / 8.0);
        return Quantity.known(10 * Math.log10(power / zero), "dB", 0.1 + scatter);
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
        return Quantity.unknown("The maximum output level is not known on this channel.");
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
