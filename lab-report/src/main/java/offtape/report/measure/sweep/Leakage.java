package offtape.report.measure.sweep;

import offtape.report.measure.tone.Complex;

/**
 * What of each channel is heard in the other. It takes part in every comparison of the channels:
 * with a leak of one percent each way they seem two percent less apart in phase than they are. A
 * leak is known at one frequency; at others it is taken to be as strong and as late. A leak between
 * the replay heads is as late as its source, one between the record heads as late as its receiver.
 *
 * @param toRight right over left while left sounds alone
 * @param toLeft left over right while right sounds alone
 */
public record Leakage(Leak toRight, Leak toLeft) {

    /** Channels that do not hear each other, or not that it is known. */
    public static final Leakage NONE = new Leakage(Leak.NONE, Leak.NONE);

    /**
     * What one channel hears of the other.
     *
     * @param ratio the channel that should be silent over the one that sounds
     * @param frequencyHz frequency of the programme at which it was found
     */
    public record Leak(Complex ratio, double frequencyHz) {

        /** No leak, or none that is known. */
        public static final Leak NONE = new Leak(Complex.ZERO, 1000);

        Complex at(double hz) {
            double halfTurns = Math.rint(ratio.phase() / Math.PI);
            double late = ratio.phase() - Math.PI * halfTurns;
            double sign = halfTurns == 0 ? 1 : -1;
            return Complex.polar(sign * ratio.size(), late * hz / frequencyHz);
        }
    }

    /**
     * What a channel hears of the other one at a frequency, as a ratio to what is heard there.
     *
     * @param channel 0 left, 1 right
     * @param hz frequency in the programme
     */
    public Complex into(int channel, double hz) {
        return (channel == 0 ? toLeft : toRight).at(hz);
    }

    /**
     * The cross-spectrum (left times conjugate right) that the channels would have without the
     * leak. With L = l + a·r and R = r + b·l, l is proportional to L − a·R and r to R − b·L.
     *
     * @param cross the cross-spectrum as heard
     * @param left power of the left channel as heard
     * @param right power of the right channel as heard
     * @param hz frequency in the programme
     */
    public Complex unmixed(Complex cross, double left, double right, double hz) {
        Complex a = toLeft.at(hz);
        Complex b = toRight.at(hz);
        return cross.minus(b.conjugate().times(left))
                .minus(a.times(right))
                .plus(a.times(b.conjugate()).times(cross.conjugate()));
    }

    /**
     * Right over left as it would be without the leak.
     *
     * @param heard right over left as heard, not zero
     * @param hz frequency in the programme
     */
    public Complex unmixedRatio(Complex heard, double hz) {
        Complex one = new Complex(1, 0);
        return heard.minus(toRight.at(hz)).over(one.minus(toLeft.at(hz).times(heard)));
    }

    /**
     * Power of a channel as it would be without the leak, but for a factor that is the same at all
     * frequencies.
     *
     * @param channel 0 left, 1 right
     * @param own power of the channel as heard
     * @param other power of the other channel as heard
     * @param cross cross-spectrum as heard, left times conjugate right
     * @param hz frequency in the programme
     */
    double unmixedPower(int channel, double own, double other, Complex cross, double hz) {
        Complex leak = into(channel, hz);
        Complex otherTimesOwn = channel == 0 ? cross.conjugate() : cross;
        double size = leak.size();
        return own - 2 * leak.times(otherTimesOwn).re() + size * size * other;
    }

    /**
     * Amplitude of a channel as it would be without the leak, but for a factor that is the same at
     * all frequencies.
     *
     * @param channel 0 left, 1 right
     * @param own amplitude of the channel as heard
     * @param other amplitude of the other channel as heard
     * @param hz frequency in the programme
     */
    public Complex unmixedAmplitude(int channel, Complex own, Complex other, double hz) {
        return own.minus(into(channel, hz).times(other));
    }
}
