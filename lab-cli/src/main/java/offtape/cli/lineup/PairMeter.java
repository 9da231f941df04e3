package offtape.cli.lineup;

import offtape.core.unit.Decibels;

/**
 * Delay between the channels by the slope of the cross-spectrum's phase over a wide band, so that
 * no whole period can be missed; wow and flutter move both channels alike and cancel.
 */
final class PairMeter {

    /** How much sound a reading takes. */
    static final double SECONDS = 1.0;

    private static final double WIDEST_S = 500e-6;
    private static final double STEP_S = 4e-6;
    private static final double ONE_TONE = 0.97;
    private static final double LEAST_COMMON = 0.5;
    private static final double MONO_FROM_HZ = 9500;
    private static final double MONO_TO_HZ = 10_500;

    /** With less of all power around 10 kHz a mono sum there is not told. */
    private static final double LEAST_SHARE = 1e-3;

    /** Share of the mean power with which a band counts half. */
    private static final double EMPTY = 0.003;

    /** Above this coherence a band weighs no more. */
    private static final double WEIGHT_LIMIT = 1e-3;

    private final int sampleRateHz;

    PairMeter(int sampleRateHz) {
        this.sampleRateHz = sampleRateHz;
    }

    /**
     * Reads a stretch.
     *
     * @param sound two channels
     */
    PairReading read(double[][] sound) {
        CrossBands bands =
                new CrossBands(
                        sound,
                        ManyTones.period(sampleRateHz),
                        sampleRateHz,
                        ManyTones.FROM_HZ,
                        Math.min(ManyTones.TO_HZ, 0.45 * sampleRateHz));
        if (bands.strongestShare() > ONE_TONE) {
            return oneTone(bands);
        }
        double[] weights = weights(bands);
        double sum = 0;
        for (double w : weights) {
            sum += w;
        }
        if (common(bands) < LEAST_COMMON || !(sum > 0)) {
            return PairReading.unrelated();
        }
        double coarse = coarse(bands, weights);
        boolean inverted = likeness(bands, weights, coarse) < 0;
        return fine(bands, weights, coarse, inverted);
    }

    private static PairReading oneTone(CrossBands bands) {
        double hz = bands.strongestHz();
        double delay = bands.strongestPhase() / (2 * Math.PI * hz);
        return new PairReading(
                PairReading.Kind.ONE_TONE, 1e6 * delay, 0, 1e6 / hz, false, monoLossDb(bands));
    }

    private static double[] weights(CrossBands bands) {
        double[] w = new double[bands.size()];
        double mean = 0;
        for (int i = 0; i < w.length; i++) {
            mean += power(bands, i) / w.length;
        }
        for (int i = 0; i < w.length; i++) {
            double c = bands.coherence(i);
            double power = power(bands, i);
            // a band without sound of its own holds only what leaks into it from beside
            double own = power > 0 ? power / (power + EMPTY * mean) : 0;
            w[i] = own * c / (1 - c + WEIGHT_LIMIT);
        }
        return w;
    }

    private static double power(CrossBands bands, int i) {
        return Math.hypot(bands.re[i], bands.im[i]);
    }

    /** Share of what the channels have in common, 0 to 1, of all bands together. */
    private static double common(CrossBands bands) {
        double cross = 0;
        double own = 0;
        for (int i = 0; i < bands.size(); i++) {
            cross += power(bands, i);
            own += Math.sqrt(bands.left[i] * bands.right[i]);
        }
        return own > 0 ? cross / own : 0;
    }

    /** How well a delay agrees with all phases, with its sign. */
    private static double likeness(CrossBands bands, double[] weights, double delay) {
        double sum = 0;
        for (int i = 0; i < weights.length; i++) {
            double phase = 2 * Math.PI * bands.hz(i) * delay;
            double size = power(bands, i);
            if (size > 0) {
                sum +=
                        weights[i]
                                * (bands.re[i] * Math.cos(phase) + bands.im[i] * Math.sin(phase))
                                / size;
            }
        }
        return sum;
    }

    private static double coarse(CrossBands bands, double[] weights) {
        double best = 0;
        double most = 0;
        for (double d = -WIDEST_S; d <= WIDEST_S; d += STEP_S) {
            double likeness = Math.abs(likeness(bands, weights, d));
            if (likeness > most) {
                most = likeness;
                best = d;
            }
        }
        return best;
    }

    /** Straight line through what phase is left, weighted by how clear each band is. */
    private static PairReading fine(
            CrossBands bands, double[] weights, double coarse, boolean inverted) {
        double top = 0;
        double bottom = 0;
        double information = 0;
        for (int i = 0; i < weights.length; i++) {
            double w = 2 * Math.PI * bands.hz(i);
            double sign = inverted ? -1 : 1;
            double phase = Math.atan2(sign * bands.im[i], sign * bands.re[i]) - w * coarse;
            phase -= 2 * Math.PI * Math.rint(phase / (2 * Math.PI));
            top += weights[i] * w * phase;
            bottom += weights[i] * w * w;
            double c = bands.coherence(i);
            information += 2 * bands.means * c / (1 - c + 1e-9) * w * w;
        }
        return new PairReading(
                PairReading.Kind.DELAY,
                1e6 * (coarse + top / bottom),
                1e6 * 2 / Math.sqrt(information),
                0,
                inverted,
                monoLossDb(bands));
    }

    private static Double monoLossDb(CrossBands bands) {
        double plain = 0;
        double best = 0;
        double all = 0;
        for (int i = 0; i < bands.size(); i++) {
            all += bands.left[i] + bands.right[i];
            if (bands.hz(i) >= MONO_FROM_HZ && bands.hz(i) <= MONO_TO_HZ) {
                double own = bands.left[i] + bands.right[i];
                plain += own + 2 * bands.re[i];
                best += own + 2 * Math.hypot(bands.re[i], bands.im[i]);
            }
        }
        if (!(best > LEAST_SHARE * all)) {
            return null;
        }
        return Math.min(0, Decibels.ofPower(Math.max(1e-6, plain / best)));
    }
}
