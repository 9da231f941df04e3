package offtape.core.machine;

import java.util.function.DoubleUnaryOperator;
import offtape.core.machine.spec.HissSpec;
import offtape.core.machine.spec.HumSpec;
import offtape.core.machine.spec.MachineSpec;
import offtape.core.machine.spec.MagnetisedHeadSpec;
import offtape.core.machine.spec.RecorderSpec;

/**
 * The noises of one channel's return. In loopback only the interface's own are there.
 *
 * @param hiss the tape's hiss, or null
 * @param magnet noise that a magnetised head left on the tape, or null
 * @param interfaceNoise the interface's noise, or null
 * @param rounding noise of rounding with its dither, or null
 * @param hum mains lines, or null
 * @param referencePeak peak of a sine at reference level
 */
record ChannelNoise(
        NoiseShape hiss,
        NoiseShape magnet,
        NoiseShape interfaceNoise,
        NoiseShape rounding,
        HumSpec hum,
        double referencePeak) {

    static ChannelNoise of(MachineRun run, int channel) {
        MachineSpec spec = run.spec();
        return new ChannelNoise(
                run.hasTape() ? hiss(spec.hiss(), channel, run) : null,
                run.hasTape() ? magnet(spec.heads().magnetisation(), run) : null,
                interfaceNoise(spec.recorder(), run.sampleRateHz()),
                rounding(spec.recorder(), run.sampleRateHz()),
                run.hasTape() ? spec.hum() : null,
                run.referencePeak());
    }

    /** Mean square between 22.4 Hz and 22.4 kHz behind a power weighting, all noises together. */
    double power(DoubleUnaryOperator weighting) {
        double sum = 0;
        for (NoiseShape shape : new NoiseShape[] {hiss, magnet, interfaceNoise, rounding}) {
            sum += shape == null ? 0 : shape.power(weighting);
        }
        if (hum != null) {
            for (HumSpec.Line line : hum.lines()) {
                double peak = referencePeak * Math.pow(10, line.levelDb() / 20);
                double weight = weighting.applyAsDouble(hum.mainsHz() * line.harmonic());
                sum += peak * peak / 2 * weight;
            }
        }
        return sum;
    }

    private static NoiseShape hiss(HissSpec spec, int channel, MachineRun run) {
        if (spec == null) {
            return null;
        }
        double levelDb = spec.channelDb(channel) + Bias.of(run.spec(), channel).hissDb();
        double rms = run.referencePeak() / Math.sqrt(2) * Math.pow(10, levelDb / 20);
        return NoiseShape.ofBandRms(run.sampleRateHz(), rms, spec.tiltDbPerOctave());
    }

    private static NoiseShape magnet(MagnetisedHeadSpec spec, MachineRun run) {
        if (spec.noiseDb() == null) {
            return null;
        }
        double rms = run.referencePeak() / Math.sqrt(2) * Math.pow(10, spec.noiseDb() / 20);
        return NoiseShape.ofBandRms(run.sampleRateHz(), rms, MagnetisedHeadSpec.TILT_DB_PER_OCTAVE);
    }

    private static NoiseShape interfaceNoise(RecorderSpec spec, double rateHz) {
        if (spec.noiseDbfs() == null) {
            return null;
        }
        double rms = Math.pow(10, spec.noiseDbfs() / 20) / Math.sqrt(2);
        return new NoiseShape(rateHz, rms, null);
    }

    // Rounding adds Δ²/12, triangular dither of ±Δ adds Δ²/6.
    private static NoiseShape rounding(RecorderSpec spec, double rateHz) {
        return spec.bits() == null
                ? null
                : new NoiseShape(rateHz, Recorder.step(spec.bits()) / 2, null);
    }
}
