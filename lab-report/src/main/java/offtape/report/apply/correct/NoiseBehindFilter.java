package offtape.report.apply.correct;

import java.util.Arrays;
import java.util.function.DoubleUnaryOperator;
import java.util.stream.IntStream;
import offtape.core.standard.Iec61260;
import offtape.core.standard.Iec61672;
import offtape.core.standard.ItuBs468;
import offtape.core.text.Sentences;
import offtape.core.unit.Decibels;
import offtape.core.unit.Quantity;
import offtape.report.result.Noise;

/**
 * Noise of a session passed through a filter, from its third-octave bands. Within a band the noise
 * is taken to be even; what the unweighted figure holds beyond the highest band lies between that
 * band's end and the figure's own.
 */
final class NoiseBehindFilter {

    private static final Sentences SAID = Sentences.near(NoiseBehindFilter.class);

    private static final int POINTS = 8;

    /** What bands instead of a spectrum may err by, and the curve of the machine, dB, k = 2. */
    private static final double UNCERTAINTY_DB = 0.2;

    private static final DoubleUnaryOperator FLAT = hz -> 0;

    private final Noise noise;
    private final Curve gain;
    private final double[] from;
    private final double[] to;
    private final double[] power;

    private NoiseBehindFilter(Noise noise, Curve gain) {
        this.noise = noise;
        this.gain = gain;
        double[] middle = noise.spectrum().frequencyHz();
        int bands = middle.length;
        double bandEnd = Iec61260.upperEdgeHz(middle[bands - 1], 3);
        double rest = restPower();
        int all = rest > 0 && noise.unweightedBandHz()[1] > bandEnd ? bands + 1 : bands;
        from = new double[all];
        to = new double[all];
        power = new double[all];
        for (int i = 0; i < bands; i++) {
            from[i] = Iec61260.lowerEdgeHz(middle[i], 3);
            to[i] = Iec61260.upperEdgeHz(middle[i], 3);
            power[i] = Decibels.toPower(noise.spectrum().levelDb()[i]);
        }
        if (all > bands) {
            from[bands] = bandEnd;
            to[bands] = noise.unweightedBandHz()[1];
            power[bands] = rest;
        }
    }

    /** The change on a channel; figures are unknown, with the reason, where the noise is. */
    static NoiseChange of(String channel, Noise noise, Curve gain) {
        if (noise == null
                || noise.spectrum() == null
                || noise.spectrum().frequencyHz().length == 0) {
            Quantity none = Quantity.unknown(reason(noise));
            double[] nothing = {};
            return new NoiseChange(
                    channel, nothing, nothing, nothing, none, none, none, none, none);
        }
        return new NoiseBehindFilter(noise, gain).change(channel);
    }

    private static String reason(Noise noise) {
        return noise == null || noise.unweighted().isKnown()
                ? SAID.say("session.no-noise-spectrum")
                : noise.unweighted().reason();
    }

    private double restPower() {
        if (!noise.unweighted().isKnown() || noise.unweightedBandHz() == null) {
            return 0;
        }
        double sum = Arrays.stream(noise.spectrum().levelDb()).map(Decibels::toPower).sum();
        return Decibels.toPower(noise.unweighted().value()) - sum;
    }

    private NoiseChange change(String channel) {
        double[] levels = noise.spectrum().levelDb();
        double[] after =
                IntStream.range(0, levels.length)
                        .mapToDouble(i -> levels[i] + Decibels.ofPower(share(i, FLAT, gain::at)))
                        .toArray();
        double flat = changeDb(FLAT);
        double a = changeDb(Iec61672::aWeightingDb);
        return new NoiseChange(
                channel,
                noise.spectrum().frequencyHz(),
                levels,
                after,
                known(flat),
                known(a),
                known(changeDb(ItuBs468::weightingDb)),
                moved(noise.unweighted(), flat),
                moved(noise.aWeighted(), a));
    }

    private static Quantity known(double db) {
        return Quantity.known(db, "dB", UNCERTAINTY_DB);
    }

    private static Quantity moved(Quantity level, double db) {
        return level.isKnown()
                ? Quantity.known(
                        level.value() + db, "dB", Math.hypot(level.uncertainty(), UNCERTAINTY_DB))
                : level;
    }

    private double changeDb(DoubleUnaryOperator weightingDb) {
        double before = 0;
        double after = 0;
        for (int i = 0; i < power.length; i++) {
            before += power[i] * share(i, weightingDb, FLAT);
            after += power[i] * share(i, weightingDb, gain::at);
        }
        return Decibels.ofPower(after / before);
    }

    /** Mean power gain over a band's hertz. */
    private double share(int band, DoubleUnaryOperator one, DoubleUnaryOperator other) {
        double sum = 0;
        for (int k = 0; k < POINTS; k++) {
            double hz = from[band] + (k + 0.5) / POINTS * (to[band] - from[band]);
            sum += Decibels.toPower(one.applyAsDouble(hz) + other.applyAsDouble(hz));
        }
        return sum / POINTS;
    }
}
