package offtape.report.apply.correct;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.function.DoublePredicate;
import java.util.stream.IntStream;
import offtape.report.result.Response;

/** Works the correction of a channel out and tells what it achieves. */
final class ChannelDesign {

    private static final double MIDDLE_HZ = 1000;

    private final Curve target;
    private final BoostLimit limit;
    private final int bands;

    ChannelDesign(Curve target, BoostLimit limit, int bands) {
        this.target = target;
        this.limit = limit;
        this.bands = bands;
    }

    /**
     * The correction of a channel.
     *
     * @param response of the channel
     * @param gain of the filter, which may be common to both channels
     */
    ChannelCorrection of(Response response, Curve gain) {
        MeasuredCurve measured = MeasuredCurve.of(response);
        double[] hz = measured.hz();
        double[] wanted = at(hz, i -> target.at(hz[i]));
        double[] given = at(hz, i -> gain.at(hz[i]));
        Curve after = new Curve(hz, at(hz, i -> measured.db()[i] + given[i])).unityAt1kHz();
        double[] off = at(hz, i -> after.db()[i] - wanted[i]);
        Curve machine = measured.smoothed();
        double[] back = at(hz, i -> wanted[i] - machine.db()[i] - given[i]);
        int most = IntStream.range(0, hz.length).reduce(0, (a, b) -> given[b] > given[a] ? b : a);
        Stretch met = met(hz, off);
        EqualiserSettings dialled = BandFit.of(gain, met, limit, bands);
        return new ChannelCorrection(
                response.channel(),
                response.levelDb(),
                hz,
                measured.db(),
                measured.uncertaintyDb(),
                wanted,
                given,
                after.db(),
                met.fromHz(),
                met.toHz(),
                stretches(hz, back, x -> Math.abs(x) > ChannelCorrection.MET_DB),
                given[most],
                hz[most],
                dialled,
                at(hz, i -> dialled.gainDb(hz[i])));
    }

    private static double[] at(double[] hz, java.util.function.IntToDoubleFunction value) {
        double[] all = new double[hz.length];
        Arrays.setAll(all, value);
        return all;
    }

    /** The band around 1 kHz up to where the difference first leaves what is allowed. */
    static Stretch met(double[] hz, double[] off) {
        int middle = 0;
        for (int i = 0; i < hz.length; i++) {
            boolean nearer =
                    Math.abs(Math.log(hz[i] / MIDDLE_HZ))
                            < Math.abs(Math.log(hz[middle] / MIDDLE_HZ));
            middle = nearer ? i : middle;
        }
        return new Stretch(end(hz, off, middle, -1), end(hz, off, middle, 1));
    }

    private static double end(double[] hz, double[] off, int middle, int direction) {
        int last = middle;
        for (int i = middle; i >= 0 && i < hz.length; i += direction) {
            double excess = Math.abs(off[i]) - ChannelCorrection.MET_DB;
            if (excess > 0) {
                double inside = ChannelCorrection.MET_DB - Math.abs(off[last]);
                double part = i == last ? 0 : inside / (inside + excess);
                return hz[last] * Math.pow(hz[i] / hz[last], part);
            }
            last = i;
        }
        return hz[last];
    }

    // a single point, such as the last one, is no stretch
    private static List<Stretch> stretches(double[] hz, double[] x, DoublePredicate is) {
        List<Stretch> all = new ArrayList<>();
        for (int i = 0; i < hz.length; i++) {
            if (is.test(x[i])) {
                int from = i;
                while (i + 1 < hz.length && is.test(x[i + 1])) {
                    i++;
                }
                if (hz[i] > hz[from]) {
                    all.add(new Stretch(hz[from], hz[i]));
                }
            }
        }
        return all;
    }
}
