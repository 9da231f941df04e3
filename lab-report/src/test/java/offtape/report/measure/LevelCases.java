package offtape.report.measure;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.DoubleStream;
import offtape.core.machine.ChannelsTruth;
import offtape.core.machine.DistortionTruth;
import offtape.core.machine.NoiseTruth;
import offtape.core.machine.SteadyTone;
import offtape.core.unit.Decibels;
import offtape.core.unit.Quantity;
import offtape.report.result.Distortion;
import offtape.report.result.HumLine;
import offtape.report.result.LadderStep;
import offtape.report.result.Noise;

/**
 * The figures of distortion and noise against the truth: steady tones of the machine for ever, and
 * its noise for ever, re the reference tone as it returns.
 */
final class LevelCases {

    /** How long the quasi-peak meter reads for its truth, several times what it had. */
    private static final int METER_S = 24;

    private static final double HUM_WITHIN_HZ = 0.5;

    private final MeasuredMachine measured;
    private final double[] quasiPeak;
    private final List<CoverageCase> cases = new ArrayList<>();

    private LevelCases(MeasuredMachine measured) {
        this.measured = measured;
        this.quasiPeak = measured.quasiPeakOfHissDb(METER_S);
    }

    static List<CoverageCase> of(MeasuredMachine measured) {
        LevelCases cases = new LevelCases(measured);
        measured.results().distortion().forEach(cases::distortion);
        cases.noise(0);
        cases.noise(1);
        return cases.cases;
    }

    private void add(String figure, Quantity quantity, Double truth) {
        if (quantity.isKnown() && truth != null) {
            cases.add(CoverageCase.of(measured.machine().name(), figure, quantity, truth));
        }
    }

    private DistortionTruth truth(String channel, double hz) {
        return measured.truth().distortion().stream()
                .filter(t -> t.channel().equals(channel) && t.frequencyHz() == hz)
                .findFirst()
                .orElseThrow();
    }

    private void distortion(Distortion found) {
        int channel = found.channel().equals("left") ? 0 : 1;
        if (found.frequencyHz() > 6000) {
            saturation(found, channel);
            return;
        }
        DistortionTruth right = truth(found.channel(), found.frequencyHz());
        add("record level at K3 1 %", found.levelAtK3OnePercent(), right.levelAtK3OnePercent());
        add("record level at K3 3 %", found.levelAtK3ThreePercent(), right.levelAtK3ThreePercent());
        add(
                "record level at 1 dB compression",
                found.levelAtCompressionOneDb(),
                right.levelAtCompressionOneDb());
        double zero = measured.referenceDb(channel);
        add("maximum output level", found.maximumOutputLevel(), right.maximumOutputLevel() - zero);
        for (LadderStep step : found.steps()) {
            right.steps().stream()
                    .filter(t -> t.recordLevelDb() == step.recordLevelDb())
                    .forEach(t -> step(step, t));
        }
    }

    private void step(LadderStep found, DistortionTruth.Step right) {
        Double k3 = found.noise().k3UncertaintyPercent();
        if (found.k3Percent() != null && k3 != null) {
            add("K3 of a step", Quantity.known(found.k3Percent(), "%", k3), right.k3Percent());
        }
    }

    /** The highest level at which a tone comes back, and what leaks in of the other one's. */
    private void saturation(Distortion found, int channel) {
        double hz = found.frequencyHz();
        double own = highestDb(channel, hz);
        ChannelsTruth pair = measured.truth().channels();
        double leakDb = channel == 0 ? pair.crosstalkRightToLeft() : pair.crosstalkLeftToRight();
        double leak = Decibels.toAmplitude(leakDb + highestDb(1 - channel, hz) - own);
        double turn = 2e-6 * Math.PI * hz * pair.interchannelDelay();
        double heard = Math.hypot(1 + leak * Math.cos(turn), leak * Math.sin(turn));
        add(
                "saturation output level",
                found.saturationOutputLevel(),
                own
                        + Decibels.ofAmplitude(heard)
                        - measured.referenceDb(channel)
                        - measured.leakDb(channel));
    }

    private double highestDb(int channel, double hz) {
        SteadyTone tone = measured.run().tone(channel);
        return DoubleStream.iterate(0, db -> db <= 40, db -> db + 0.1)
                .map(db -> tone.levelDb(tone.peak(1, hz, db)))
                .max()
                .orElseThrow();
    }

    private void noise(int channel) {
        Noise found = measured.results().noise().get(channel);
        NoiseTruth right = measured.truth().noise().get(channel);
        double zero = measured.referenceDb(channel) + measured.leakDb(channel);
        add("noise unweighted", found.unweighted(), right.unweighted() - zero);
        add("noise A", found.aWeighted(), right.aWeighted() - zero);
        add("noise BS.468", found.itu468(), quasiPeak[channel] - measured.leakDb(channel));
        Double top = truth(found.channel(), measured.machine().midHz()).maximumOutputLevel();
        if (top != null) {
            double range = top - right.aWeighted() + measured.leakDb(channel);
            add("dynamic range", found.dynamicRange(), range);
        }
        for (HumLine line : found.hum()) {
            right.hum().stream()
                    .filter(t -> Math.abs(t.frequencyHz() - line.frequencyHz()) < HUM_WITHIN_HZ)
                    .forEach(
                            t ->
                                    add(
                                            "hum level",
                                            Quantity.known(
                                                    line.levelDb(), "dB", line.uncertaintyDb()),
                                            t.levelDb() - zero));
        }
    }
}
