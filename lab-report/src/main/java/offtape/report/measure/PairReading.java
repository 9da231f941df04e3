package offtape.report.measure;

import java.util.List;
import java.util.Optional;
import offtape.core.programme.Cue;
import offtape.core.unit.Decibels;
import offtape.report.measure.tone.Complex;
import offtape.report.measure.tone.OrderSpectrum;

/**
 * How the two channels compare on one steady tone.
 *
 * @param atSeconds middle of the tone in the programme
 * @param hz frequency in the programme
 * @param levelDb programme level
 * @param rightLateUs how late the right channel is, up to whole periods
 * @param rightOverLeftDb balance
 * @param share standard uncertainty of the ratio of the channels, as a share of it
 */
record PairReading(
        double atSeconds,
        double hz,
        double levelDb,
        double rightLateUs,
        double rightOverLeftDb,
        double share) {

    /** A tone less than this over its noise tells too little, as a power ratio. */
    private static final double CLEAR = 100;

    /** The reading of a tone, if it was heard clearly on both channels. */
    static Optional<PairReading> of(Cue.Tone tone, double atSeconds, List<OrderSpectrum> orders) {
        if (orders.size() < 2) {
            return Optional.empty();
        }
        double noise = 0;
        for (OrderSpectrum o : orders) {
            if (!(o.power(1) > CLEAR * o.noise(1))) {
                return Optional.empty();
            }
            noise += o.noise(1) / o.power(1) / 2;
        }
        Complex ratio = orders.get(1).fundamental().over(orders.get(0).fundamental());
        return Optional.of(
                new PairReading(
                        atSeconds,
                        tone.frequencyHz(),
                        tone.levelDb(),
                        -1e6 * ratio.phase() / (2 * Math.PI * tone.frequencyHz()),
                        Decibels.ofAmplitude(ratio.size()),
                        Math.sqrt(noise)));
    }

    /** How much later the right channel is here than in another reading of the same frequency. */
    double laterUs(PairReading other) {
        double period = 1e6 / hz;
        double difference = rightLateUs - other.rightLateUs();
        return difference - period * Math.rint(difference / period);
    }

    /** Standard uncertainty of the delay by noise, µs. */
    double sigmaUs() {
        return 1e6 * share / (2 * Math.PI * hz);
    }
}
