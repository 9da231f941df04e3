package offtape.report.measure.channel;

import offtape.core.text.Sentences;
import offtape.core.unit.Quantity;
import offtape.report.measure.noise.NoiseDensities;
import offtape.report.measure.sweep.FollowedSweep;
import offtape.report.measure.sweep.SweepFollower;
import offtape.report.measure.tone.Complex;

/**
 * What is lost at 10 kHz when the channels are summed to mono, 20·log (|L| + |R|) / |L + R|, from
 * the powers and the cross-spectrum around 10 kHz as they are heard, on average over the wander.
 */
final class MonoLoss {

    private static final Sentences SAID = Sentences.near(MonoLoss.class);

    private static final double AT_HZ = 10_000;
    private static final int REACH = SweepFollower.BANDS / 24;
    private static final double MOST_DB = 60;

    /** What the phase of the bands is known within on a clean path, radians, k = 2. */
    private static final double OWN_PHASE = 0.002;

    private static final double OWN_DB = 0.003;

    private double left;
    private double right;
    private Complex cross = Complex.ZERO;

    /** Sum over channels of noise over tone, and how many values stand behind the sums. */
    private double noiseShares;

    private double values;

    private MonoLoss() {}

    /** The loss of the pair that a sweep was followed on. */
    static Quantity of(
            FollowedSweep sweep,
            NoiseDensities noise,
            double speedRatio,
            InterchannelDelay delay,
            Quantity wander) {
        int at = sweep.index(AT_HZ);
        if (at - REACH < 0 || at + REACH >= sweep.size()) {
            return Quantity.unknown(SAID.say("sweep-too-low"));
        }
        if (!delay.delay().isKnown()) {
            return Quantity.unknown(delay.delay().reason());
        }
        MonoLoss sums = new MonoLoss();
        double late = 1e-6 * (delay.delay().value() + delay.responseDelay().value());
        for (int i = at - REACH; i <= at + REACH; i++) {
            sums.add(sweep, noise, i, speedRatio, late);
        }
        if (!(sums.left > 0 && sums.right > 0)) {
            return Quantity.unknown(SAID.say("not-heard-at-10-khz"));
        }
        double radiansPerUs = 2e-6 * Math.PI * AT_HZ * speedRatio;
        double spread = wander.isKnown() ? radiansPerUs * wander.value() : 0;
        double phase = sums.cross.phase();
        double doubt = Math.hypot(sums.phaseDoubt(), 2 * spread);
        double loss = sums.lossDb(phase, spread);
        double error =
                Math.max(
                        Math.abs(sums.lossDb(phase + doubt, spread) - loss),
                        Math.abs(sums.lossDb(phase - doubt, spread) - loss));
        return Quantity.known(loss, "dB", Math.hypot(error, OWN_DB));
    }

    /** Each channel's noise turns its phase by √(N/2P), less the more values there are; k = 2. */
    private double phaseDoubt() {
        int bands = 2 * REACH + 1;
        double each = noiseShares / bands / 2;
        return Math.hypot(OWN_PHASE, 2 * Math.sqrt(each / Math.max(1, values)));
    }

    /** Adds a band, turned to where it would be at 10 kHz. */
    private void add(
            FollowedSweep sweep, NoiseDensities noise, int i, double speedRatio, double late) {
        double[] floor = new double[2];
        for (int c = 0; c < 2 && noise != null; c++) {
            floor[c] = sweep.noisePower(c, i, noise.densities()[c], speedRatio);
        }
        for (int c = 0; c < 2; c++) {
            noiseShares += sweep.power(c, i) > 0 ? floor[c] / sweep.power(c, i) : 0;
        }
        values += sweep.values(i);
        left += sweep.power(0, i) - floor[0];
        right += sweep.power(1, i) - floor[1];
        double turn = 2 * Math.PI * (AT_HZ - sweep.frequencyHz(i)) * speedRatio * late;
        cross =
                cross.plus(
                        new Complex(sweep.crossRe(i), sweep.crossIm(i))
                                .times(Complex.polar(1, turn)));
    }

    /** Loss if the channels lay so far apart in phase on average, and wandered so far. */
    private double lossDb(double phase, double spread) {
        double inStep = left + right + 2 * Math.sqrt(left * right);
        double together = Math.cos(phase) * Math.exp(-spread * spread / 2);
        double summed = left + right + 2 * cross.size() * together;
        double ratio = Math.max(summed / inStep, Math.pow(10, -MOST_DB / 10));
        return Math.max(0, -10 * Math.log10(ratio));
    }
}
