package offtape.core.realign;

import java.util.List;

/**
 * The delay of one window by maximum likelihood: that by which the original, passed through the
 * path's response, has to be delayed to explain most of the return, each frequency weighed by its
 * own noise.
 */
final class DelaySight {

    /** Bins of a Hann window are as many as two thirds of them that are independent. */
    private static final double INDEPENDENT = 1 / 1.5;

    private static final int NEWTON = 4;

    private final Windows windows;
    private final List<Transfer> path;
    private final double reach;
    private final double stride;
    private final int steps;

    /** Cosines and sines of every bin at every coarse delay, bin by bin. */
    private final double[] cosines;

    private final double[] sines;

    /**
     * A sight.
     *
     * @param path the response of each channel
     * @param reach how far the delay may be off, frames
     */
    DelaySight(Windows windows, List<Transfer> path, double reach) {
        this.windows = windows;
        this.path = path;
        this.reach = reach;
        this.stride = 0.7 / windows.omega(windows.bins() - 1);
        this.steps = (int) Math.ceil(reach / stride);
        int delays = 2 * steps + 1;
        this.cosines = new double[windows.bins() * delays];
        this.sines = new double[windows.bins() * delays];
        for (int s = 0; s < delays; s++) {
            Turn turn = new Turn(windows, (s - steps) * stride);
            for (int k = 0; k < windows.bins(); k++) {
                cosines[k * delays + s] = turn.cos;
                sines[k * delays + s] = turn.sin;
                turn.next();
            }
        }
    }

    /** A pointer that turns by ω·τ from bin to bin. */
    private static final class Turn {
        private double cos;
        private double sin;
        private final double stepCos;
        private final double stepSin;

        Turn(Windows windows, double late) {
            double turn = windows.omega(1) - windows.omega(0);
            cos = Math.cos(windows.omega(0) * late);
            sin = Math.sin(windows.omega(0) * late);
            stepCos = Math.cos(turn * late);
            stepSin = Math.sin(turn * late);
        }

        void next() {
            double next = cos * stepCos - sin * stepSin;
            sin = sin * stepCos + cos * stepSin;
            cos = next;
        }
    }

    /** Weighted cross-spectrum of a window, all channels one behind another. */
    private static final class Cross {
        final double[] re;
        final double[] im;
        double sound;
        double heard;
        double count;

        Cross(int bins) {
            re = new double[bins];
            im = new double[bins];
        }
    }

    /** Sum over the frequencies at a delay, and its slope and bend. */
    private record Sum(double value, double slope, double bend) {}

    /** The delay of a window; null if there is nothing in it that tells. */
    LocalDelay at(Windows.Pair pair) {
        Cross cross = cross(pair);
        if (!(cross.sound > 0)) {
            return null;
        }
        double late = coarse(cross);
        Sum sum = sum(cross, late);
        for (int round = 0; round < NEWTON && sum.bend() < 0; round++) {
            double move = -sum.slope() / sum.bend();
            late += Math.max(-stride, Math.min(stride, move));
            sum = sum(cross, late);
        }
        if (!(sum.value() > 0 && sum.bend() < 0) || Math.abs(late) > reach + stride) {
            return null;
        }
        double rest = cross.heard - sum.value() * sum.value() / cross.sound;
        double excess = Math.max(1, rest / cross.count);
        double information = -2 * INDEPENDENT * sum.bend() / excess;
        return new LocalDelay(pair.frame(), late, 1 / information);
    }

    private Cross cross(Windows.Pair pair) {
        Cross cross = new Cross(windows.bins());
        for (int c = 0; c < path.size(); c++) {
            Transfer t = path.get(c);
            Windows.Bins x = pair.original().get(c);
            Windows.Bins y = pair.returned().get(c);
            for (int k = 0; k < cross.re.length; k++) {
                double sound = t.power(k) * x.power(k);
                double noise = t.floor()[k] + t.share()[k] * sound;
                if (noise > 0) {
                    double w = 1 / noise;
                    double xr = t.re()[k] * x.re()[k] - t.im()[k] * x.im()[k];
                    double xi = t.re()[k] * x.im()[k] + t.im()[k] * x.re()[k];
                    cross.re[k] += w * (y.re()[k] * xr + y.im()[k] * xi);
                    cross.im[k] += w * (y.im()[k] * xr - y.re()[k] * xi);
                    cross.sound += w * sound;
                    cross.heard += w * y.power(k);
                    cross.count++;
                }
            }
        }
        return cross;
    }

    /** The best of the coarse delays, which are all looked at side by side. */
    private double coarse(Cross cross) {
        double[] values = new double[2 * steps + 1];
        for (int k = 0; k < cross.re.length; k++) {
            double re = cross.re[k];
            double im = cross.im[k];
            int row = k * values.length;
            for (int s = 0; s < values.length; s++) {
                values[s] += re * cosines[row + s] - im * sines[row + s];
            }
        }
        double best = 0;
        double most = Double.NEGATIVE_INFINITY;
        for (int s = 0; s < values.length; s++) {
            if (values[s] > most) {
                most = values[s];
                best = (s - steps) * stride;
            }
        }
        return best;
    }

    /** Re Σ C·exp(iωτ) and its derivatives by τ. */
    private Sum sum(Cross cross, double late) {
        double turn = windows.omega(1) - windows.omega(0);
        Turn pointer = new Turn(windows, late);
        double omega = windows.omega(0);
        double value = 0;
        double slope = 0;
        double bend = 0;
        for (int k = 0; k < cross.re.length; k++) {
            double in = cross.re[k] * pointer.cos - cross.im[k] * pointer.sin;
            double across = cross.re[k] * pointer.sin + cross.im[k] * pointer.cos;
            value += in;
            slope -= omega * across;
            bend -= omega * omega * in;
            omega += turn;
            pointer.next();
        }
        return new Sum(value, slope, bend);
    }
}
