package offtape.core.machine;

import java.util.List;
import offtape.core.machine.spec.DropoutSpec;
import offtape.core.programme.ChannelSet;

/**
 * Damaged places of one track. The loss in decibels rises and falls along raised cosines of a
 * quarter of the length, 2 ms at most, placed so that the 3 dB points (half-depth points of a
 * shallow one) lie where the description says.
 */
final class Dropouts {

    private static final double EDGE_SECONDS = 0.002;

    private final List<Place> places;

    private Dropouts(List<Place> places) {
        this.places = places;
    }

    /** The damage on a channel, 0 left or 1 right. */
    static Dropouts of(List<DropoutSpec> specs, int channel) {
        ChannelSet other = channel == 0 ? ChannelSet.RIGHT : ChannelSet.LEFT;
        return new Dropouts(
                specs.stream().filter(s -> s.channel() != other).map(Place::of).toList());
    }

    /** Applies the loss to samples read at these programme times, which rise. */
    void apply(double[] samples, double[] programmeSeconds, int count) {
        for (Place place : places) {
            if (count > 0
                    && place.from < programmeSeconds[count - 1]
                    && place.to > programmeSeconds[0]) {
                for (int i = 0; i < count; i++) {
                    samples[i] *= place.gain(programmeSeconds[i]);
                }
            }
        }
    }

    private record Place(double from, double to, double edge, double depthDb) {

        private static Place of(DropoutSpec spec) {
            double length = spec.milliseconds() / 1000;
            double edge = Math.min(EDGE_SECONDS, length / 4);
            double mark = spec.depthDb() > 3 ? 3 : spec.depthDb() / 2;
            double share = Math.acos(1 - 2 * mark / spec.depthDb()) / Math.PI;
            double from = spec.atSeconds() - share * edge;
            double to = spec.atSeconds() + length + share * edge;
            return new Place(from, to, edge, spec.depthDb());
        }

        private double gain(double seconds) {
            double inside = Math.min(seconds - from, to - seconds) / edge;
            if (inside <= 0) {
                return 1;
            }
            double share = inside >= 1 ? 1 : (1 - Math.cos(Math.PI * inside)) / 2;
            return Math.pow(10, -depthDb * share / 20);
        }
    }
}
