package offtape.core.machine;

import java.util.List;
import offtape.core.machine.spec.DropoutSpec;
import offtape.core.programme.ChannelSet;

/**
 * A dropout in the return.
 *
 * @param channel {@code both}, {@code left} or {@code right}
 * @param atSeconds start, seconds from the start of the return
 * @param milliseconds length between the 3 dB points (half-depth points of a shallow one)
 * @param depthDb greatest loss, dB
 */
public record DropoutTruth(String channel, double atSeconds, double milliseconds, double depthDb) {

    static List<DropoutTruth> of(MachineRun run) {
        return run.hasTape()
                ? run.spec().dropouts().stream().map(d -> of(d, run)).toList()
                : List.of();
    }

    private static DropoutTruth of(DropoutSpec spec, MachineRun run) {
        TimeMap map = run.timeMap();
        double from = map.returnSeconds(spec.atSeconds());
        double to = map.returnSeconds(spec.atSeconds() + spec.milliseconds() / 1000);
        return new DropoutTruth(
                heard(spec.channel(), run).key(), from, 1000 * (to - from), spec.depthDb());
    }

    private static ChannelSet heard(ChannelSet channel, MachineRun run) {
        if (!run.swapped() || channel == ChannelSet.BOTH) {
            return channel;
        }
        return channel == ChannelSet.LEFT ? ChannelSet.RIGHT : ChannelSet.LEFT;
    }
}
