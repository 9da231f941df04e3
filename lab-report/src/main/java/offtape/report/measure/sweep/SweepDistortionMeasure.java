package offtape.report.measure.sweep;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import offtape.core.dsp.PowerDensity;
import offtape.report.result.HarmonicCurve;

/** Second and third harmonic over the frequency of their fundamental, from a followed sweep. */
final class SweepDistortionMeasure {

    private static final double STANDS_OUT = 4;

    /** A fundamental less than this over its noise has no phase to go by, as a power ratio. */
    private static final double HEARD = 1000;

    /** What remains of filters and of averaging over a band, as a share of the reading, k = 2. */
    private static final double OWN_SHARE = 0.02;

    /** What remains of filters and of averaging over a band, degrees, k = 2. */
    private static final double OWN_DEGREES = 0.5;

    private final FollowedHarmonics followed;
    private final int channel;
    private final PowerDensity noise;
    private final double speedRatio;

    /**
     * @param noise density of the noise on the channel, or null if unknown
     */
    SweepDistortionMeasure(
            FollowedHarmonics followed, int channel, PowerDensity noise, double speedRatio) {
        this.followed = followed;
        this.channel = channel;
        this.noise = noise;
        this.speedRatio = speedRatio;
    }

    /** One curve an order, without those that have no points. */
    List<HarmonicCurve> measure() {
        return IntStream.rangeClosed(2, HarmonicFollower.HIGHEST)
                .mapToObj(this::curve)
                .filter(c -> !c.points().isEmpty())
                .toList();
    }

    private HarmonicCurve curve(int order) {
        List<HarmonicCurve.Point> points = new ArrayList<>();
        for (int i = 0; i < followed.size(); i++) {
            if (followed.reaches(order, i)) {
                double fundamental = followed.power(channel, 1, i);
                if (fundamental > HEARD * followed.noise(channel, 1, i, noise, speedRatio)) {
                    points.add(point(order, i, fundamental));
                }
            }
        }
        return new HarmonicCurve(order, points);
    }

    private HarmonicCurve.Point point(int order, int i, double fundamental) {
        double noisePower = followed.noise(channel, order, i, noise, speedRatio);
        double power = followed.power(channel, order, i) - noisePower;
        double floor = 100 * Math.sqrt(noisePower / fundamental);
        double percent = 100 * Math.sqrt(Math.max(0, power) / fundamental);
        // Noise of power N beside a line moves its amplitude by √(N/2), one standard deviation.
        return percent > STANDS_OUT * floor
                ? new HarmonicCurve.Point(
                        followed.frequencyHz(i),
                        percent,
                        Math.hypot(floor * Math.sqrt(2), OWN_SHARE * percent),
                        floor,
                        Math.toDegrees(followed.phase(channel, order, i)),
                        // across the line noise moves as much as along it
                        Math.hypot(Math.toDegrees(floor * Math.sqrt(2) / percent), OWN_DEGREES))
                : new HarmonicCurve.Point(followed.frequencyHz(i), null, null, floor);
    }
}
