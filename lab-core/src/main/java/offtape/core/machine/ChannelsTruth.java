package offtape.core.machine;

import offtape.core.machine.spec.CrosstalkSpec;
import offtape.core.machine.spec.MachineSpec;

/**
 * How the channels compare, named by the input at which they come in. Where left and right are
 * exchanged, the leak is still that between the two tracks; a tone that the programme sends on one
 * side alone is then found whole on the other.
 *
 * @param balance level of the returned reference tone, right re left, dB
 * @param crosstalkLeftToRight dB re the right channel's reference, or null if there is none
 * @param crosstalkRightToLeft dB re the left channel's reference, or null if there is none
 * @param interchannelDelay µs of return time, + if the right channel is late
 * @param azimuth arc minutes, + if the right channel is late
 * @param monoLossAt10kHz dB lost at 10 kHz by that delay when the channels are summed, without its
 *     wander
 * @param interchannelDelayWander µs of return time, root mean square about the mean delay
 */
public record ChannelsTruth(
        double balance,
        Double crosstalkLeftToRight,
        Double crosstalkRightToLeft,
        double interchannelDelay,
        double azimuth,
        double monoLossAt10kHz,
        double interchannelDelayWander) {

    private static final double MONO_HZ = 10_000;

    static ChannelsTruth of(MachineRun run, SteadyTone left, SteadyTone right) {
        MachineSpec spec = run.spec();
        CrosstalkSpec leak = leak(run);
        int sign = run.swapped() ? -1 : 1;
        double delay = sign * run.azimuthDelaySeconds() / run.timeMap().meanRate();
        double sum = Math.abs(Math.cos(Math.PI * MONO_HZ * delay));
        // Leakage is between the tracks, ahead of the replay amplifiers: what one channel's own
        // reference tone is there counts, not what it becomes.
        double tracks = trackDb(run, 1, right) - trackDb(run, 0, left);
        return new ChannelsTruth(
                20 * Math.log10(right.referenceReturnPeak() / left.referenceReturnPeak()),
                leak.leftToRightDb() == null ? null : leak.leftToRightDb() - tracks,
                leak.rightToLeftDb() == null ? null : leak.rightToLeftDb() + tracks,
                1e6 * delay,
                run.hasTape() ? sign * spec.heads().azimuthArcMinutes() : 0,
                -20 * Math.log10(Math.max(1e-6, sum)),
                1e6 * wander(run) / run.timeMap().meanRate());
    }

    private static CrosstalkSpec leak(MachineRun run) {
        CrosstalkSpec own = run.spec().crosstalk();
        if (!run.hasTape()) {
            return CrosstalkSpec.NONE;
        }
        return run.swapped() ? new CrosstalkSpec(own.rightToLeftDb(), own.leftToRightDb()) : own;
    }

    // Small about the mean angle, so that the tangent's slope there stands for it.
    private static double wander(MachineRun run) {
        double tangent = run.spec().heads().azimuthTangent();
        double radians = Math.toRadians(run.spec().heads().azimuthWanderRms() / 60);
        return run.delaySeconds((1 + tangent * tangent) * radians);
    }

    /** Level of the reference tone on a track ahead of the replay amplifier, dB. */
    private static double trackDb(MachineRun run, int input, SteadyTone tone) {
        double gain = Math.abs(run.chains().get(run.channelAt(input)).replayGain());
        return 20 * Math.log10(tone.referenceReturnPeak() / gain);
    }
}
