package offtape.core.machine;

import java.util.List;
import java.util.function.DoubleUnaryOperator;
import offtape.core.machine.spec.HumSpec;
import offtape.core.machine.spec.ModulationNoiseSpec;
import offtape.core.standard.Iec61672;
import offtape.core.unit.Decibels;

/**
 * Noise of one channel's return with nothing recorded, from its spectrum; dB re the returned
 * reference tone. Hum counts as noise. What poor erasure leaves of an earlier recording is not in
 * it, for it is a programme and no spectrum.
 *
 * @param channel {@code left} or {@code right}
 * @param unweighted rms from 22.4 Hz to 22.4 kHz (or half the sample rate), or null if there is no
 *     noise
 * @param aWeighted the same behind the A weighting of IEC 61672-1, or null
 * @param hum the mains lines
 * @param modulationNoise rms fluctuation of the level of what is recorded, at rates from 10 Hz to 1
 *     kHz, dB re that level, or null
 */
public record NoiseTruth(
        String channel,
        Double unweighted,
        Double aWeighted,
        List<HumLine> hum,
        Double modulationNoise) {

    private static final double MODULATION_LOW_HZ = 10;
    private static final double MODULATION_HIGH_HZ = 1000;

    static NoiseTruth of(String name, MachineRun run, int input, SteadyTone tone) {
        int channel = run.channelAt(input);
        ChannelNoise noise = ChannelNoise.of(run, channel);
        List<HumLine> lines =
                noise.hum() == null
                        ? List.of()
                        : noise.hum().lines().stream()
                                .map(line -> line(noise, line, tone))
                                .toList();
        return new NoiseTruth(
                name,
                levelDb(noise, f -> 1, tone),
                levelDb(noise, f -> Decibels.toPower(Iec61672.aWeightingDb(f)), tone),
                lines,
                run.hasTape() ? modulationDb(modulation(run, channel)) : null);
    }

    private static ModulationNoiseSpec modulation(MachineRun run, int channel) {
        return Bias.of(run.spec(), channel).modulation(run.spec().modulationNoise());
    }

    private static Double modulationDb(ModulationNoiseSpec spec) {
        double share = spec == null ? 0 : spec.share(MODULATION_LOW_HZ, MODULATION_HIGH_HZ);
        return share > 0 ? spec.levelDb() + Decibels.ofPower(share) : null;
    }

    private static HumLine line(ChannelNoise noise, HumSpec.Line line, SteadyTone tone) {
        double peak = noise.referencePeak() * Math.pow(10, line.levelDb() / 20);
        return new HumLine(noise.hum().mainsHz() * line.harmonic(), tone.levelDb(peak));
    }

    private static Double levelDb(
            ChannelNoise noise, DoubleUnaryOperator weighting, SteadyTone tone) {
        double power = noise.power(weighting);
        return power > 0 ? tone.levelDb(Math.sqrt(2 * power)) : null;
    }

    /**
     * A mains line.
     *
     * @param frequencyHz its frequency
     * @param levelDb its level re the returned reference tone
     */
    public record HumLine(double frequencyHz, double levelDb) {}
}
