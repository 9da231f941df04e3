package offtape.report.measure;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.SplittableRandom;
import offtape.core.machine.SpeedTruth;
import offtape.core.standard.FlutterBand;
import offtape.core.unit.Quantity;
import offtape.report.result.Speed;
import offtape.report.result.SpeedComponent;

/**
 * The figures of speed against the truth.
 *
 * <p>Deviation: the transport's own mean, wow over whole turns, in the middle of the tone; an error
 * of the recorder's clock is an error of the figure. Drift: that of the transport from the
 * beginning to the end of the tone. Readings of wow and flutter: those of the meter over the very
 * stretch. A component: the transport's line.
 */
final class SpeedCases {

    private final MeasuredMachine measured;
    private final Speed found;
    private final List<CoverageCase> cases = new ArrayList<>();

    private SpeedCases(MeasuredMachine measured) {
        this.measured = measured;
        this.found = measured.results().speed();
    }

    static List<CoverageCase> of(MeasuredMachine measured) {
        SpeedCases cases = new SpeedCases(measured);
        cases.mean();
        cases.readings();
        measured.truth().speed().components().forEach(cases::component);
        return cases.cases;
    }

    private void add(String figure, Quantity quantity, double truth) {
        if (quantity.isKnown()) {
            cases.add(CoverageCase.of(measured.machine().name(), figure, quantity, truth));
        }
    }

    private void mean() {
        var transport = measured.machine().spec().transport();
        var map = measured.run().timeMap();
        double middle = found.fromSeconds() + found.seconds() / 2;
        double minutes = (middle - map.returnSeconds(0)) / 60;
        double mean =
                transport.speedDeviationPercent() + transport.driftPercentPerMinute() * minutes;
        add("speed deviation", found.deviation(), mean);
        double drift = Math.abs(transport.driftPercentPerMinute()) * found.seconds() / 60;
        add("drift", found.drift(), drift);
    }

    private void readings() {
        SplittableRandom random = new SplittableRandom(measured.machine().spec().seed());
        HeardStretch heard =
                new HeardStretch(
                        measured.run(),
                        found.fromSeconds(),
                        found.seconds(),
                        new DrawnMeter(random));
        add("weighted peak", found.weightedPeak(), heard.peak(FlutterBand.WEIGHTED));
        add("weighted two sigma", found.weightedTwoSigma(), heard.twoSigma());
        add("weighted rms", found.weightedRms(), heard.rms(FlutterBand.WEIGHTED));
        add("unweighted peak", found.unweightedPeak(), heard.peak(FlutterBand.UNWEIGHTED));
        add("unweighted rms", found.unweightedRms(), heard.rms(FlutterBand.UNWEIGHTED));
        add("wow rms", found.wowRms(), heard.rms(FlutterBand.WOW));
        add("flutter rms", found.flutterRms(), heard.rms(FlutterBand.FLUTTER));
        add("American rms", found.americanRms(), heard.rms(FlutterBand.AMERICAN));
    }

    /** A line within a turn and a half of the stretch is the one that is meant. */
    private void component(SpeedTruth.Component line) {
        double near = 1.5 / found.seconds();
        Optional<SpeedComponent> match =
                found.components().stream()
                        .filter(c -> Math.abs(c.middleHz() - line.frequencyHz()) < near)
                        .findFirst();
        match.ifPresent(
                c -> {
                    add(
                            "component, frequency",
                            Quantity.known(c.middleHz(), "Hz", c.frequencyUncertaintyHz()),
                            line.frequencyHz());
                    add(
                            "component, peak",
                            Quantity.known(c.peakPercent(), "%", c.peakUncertaintyPercent()),
                            line.transportPeakPercent());
                });
    }
}
