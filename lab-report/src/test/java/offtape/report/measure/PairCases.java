package offtape.report.measure;

import java.util.ArrayList;
import java.util.List;
import offtape.core.machine.ChannelsTruth;
import offtape.core.unit.Decibels;
import offtape.core.unit.Quantity;
import offtape.report.measure.tone.Complex;
import offtape.report.result.Channels;

/**
 * The figures of the pair and of time against the truth: levels of steady tones, the mean delay
 * between the tracks for ever, the angle of the head; the loss in mono as it is heard, leak
 * included; where the programme's first frame lies, the delay of the electronics included.
 */
final class PairCases {

    private static final double MONO_HZ = 10_000;
    private static final double SWEEP_DB = -20;

    private final MeasuredMachine measured;
    private final List<CoverageCase> cases = new ArrayList<>();

    private PairCases(MeasuredMachine measured) {
        this.measured = measured;
    }

    static List<CoverageCase> of(MeasuredMachine measured) {
        PairCases cases = new PairCases(measured);
        cases.pair();
        cases.add(
                "delay",
                measured.results().timing().delay(),
                measured.truth().timing().delayMs() + measured.edgeDelayMs());
        return cases.cases;
    }

    private void add(String figure, Quantity quantity, double truth) {
        if (quantity.isKnown()) {
            cases.add(CoverageCase.of(measured.machine().name(), figure, quantity, truth));
        }
    }

    private void pair() {
        Channels found = measured.results().channels();
        ChannelsTruth right = measured.truth().channels();
        double zeroLeft = measured.referenceDb(0);
        double zeroRight = measured.referenceDb(1);
        add("balance", found.balance(), right.balance() + zeroRight - zeroLeft);
        add(
                "crosstalk left to right",
                found.crosstalkLeftToRight(),
                right.crosstalkLeftToRight() - zeroRight - measured.leakDb(1));
        add(
                "crosstalk right to left",
                found.crosstalkRightToLeft(),
                right.crosstalkRightToLeft() - zeroLeft - measured.leakDb(0));
        add("interchannel delay", found.interchannelDelay(), right.interchannelDelay());
        add("wander of it", found.interchannelDelayWander(), right.interchannelDelayWander());
        add("azimuth", found.azimuth(), right.azimuth());
        add("loss in mono at 10 kHz", found.monoLossAt10kHz(), monoLossDb(right));
    }

    /** Each channel is its own track and the leak of the other, through its own amplifier. */
    private double monoLossDb(ChannelsTruth right) {
        double rate = measured.run().timeMap().meanRate();
        double turn = -2e-6 * Math.PI * MONO_HZ * rate * right.interchannelDelay();
        Complex late = Complex.polar(1, turn);
        double intoLeft = Decibels.toAmplitude(right.crosstalkRightToLeft());
        double intoRight = Decibels.toAmplitude(right.crosstalkLeftToRight());
        Complex l = gain(0).times(new Complex(1, 0).plus(late.times(intoLeft)));
        Complex r = gain(1).times(late.plus(new Complex(intoRight, 0)));
        double spread = 2e-6 * Math.PI * MONO_HZ * rate * right.interchannelDelayWander();
        double cross = 2 * l.times(r.conjugate()).re() * Math.exp(-spread * spread / 2);
        double summed = l.size() * l.size() + r.size() * r.size() + cross;
        return -Decibels.ofPower(summed / Math.pow(l.size() + r.size(), 2));
    }

    /** What a channel makes of its own track, with the phase of its upper edge. */
    private Complex gain(int channel) {
        double rate = measured.run().sampleRateHz();
        double hz = MONO_HZ * measured.run().timeMap().meanRate();
        double edge = measured.machine().spec().electronics().channel(channel).upperEdgeHz();
        double x = Math.tan(Math.PI * hz / rate) / Math.tan(Math.PI * edge / rate);
        double size = measured.run().tone(channel).peak(1, MONO_HZ, SWEEP_DB);
        return Complex.polar(size, -Math.atan2(Math.sqrt(2) * x, 1 - x * x));
    }
}
