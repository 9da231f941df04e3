package offtape.report.measure;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import offtape.core.machine.DistortionTruth;
import offtape.core.machine.DropoutTruth;
import offtape.core.machine.MachineRun;
import offtape.core.machine.MachineTruth;
import offtape.core.machine.ResponseTruth;
import offtape.core.machine.SteadyTone;
import offtape.reference.ReferenceTable;
import offtape.report.result.Distortion;
import offtape.report.result.Dropout;
import offtape.report.result.HarmonicCurve;
import offtape.report.result.LadderStep;
import offtape.report.result.Response;
import offtape.report.result.Results;
import offtape.report.result.Session;

/** One machine measured, and how far each figure lies from the truth. */
final class Trial {

    /** A figure's distance from the truth beside what it may be. */
    record FigureError(
            String machine, String figure, double error, double allowance, String unit) {}

    private static final int SILENCE_S = 4;

    private final MeasuredMachine measured;
    private final TrialMachines.Machine machine;
    private final MachineRun run;
    private final MachineTruth truth;
    private final Results results;
    private static final List<String> SELF_CHECKS =
            List.of(
                    "sweep-and-tones-differ",
                    "channels-shift",
                    "balance-changes",
                    "markers-disagree",
                    "level-changes");

    private final List<FigureError> errors = new ArrayList<>();

    private Trial(MeasuredMachine measured) {
        this.measured = measured;
        this.machine = measured.machine();
        this.run = measured.run();
        this.truth = measured.truth();
        this.results = measured.results();
        compare();
    }

    static Trial run(TrialMachines.Machine machine, Path folder) {
        Session session =
                new Session(machine.name(), null, null, "reference-tape", "", null, "", "");
        return new Trial(Unbroken.required(MeasuredMachine.of(machine, session, folder)));
    }

    String name() {
        return machine.name();
    }

    List<FigureError> errors() {
        return errors;
    }

    private void add(
            String figure, double error, double allowedHissy, double allowedClean, String unit) {
        double allowed = machine.clean() ? allowedClean : allowedHissy;
        errors.add(new FigureError(machine.name(), figure, error, allowed, unit));
    }

    private void compare() {
        speed();
        results.response().stream().filter(r -> r.levelDb() == -20).forEach(this::response);
        results.response().stream().filter(r -> r.levelDb() == 0).forEach(this::loudSweep);
        results.distortion().stream().filter(d -> d.frequencyHz() < 5000).forEach(this::distortion);
        noise();
        channels();
        if (!machine.clean()) {
            dropouts();
        }
        double delay =
                results.timing().delay().value()
                        - truth.timing().delayMs()
                        - measured.edgeDelayMs();
        add("delay", delay, 0.05, 0.005, "ms");
        boolean inverted = machine.spec().electronics().polarityInverted();
        boolean right = results.timing().polarity().equals(inverted ? "inverted" : "normal");
        add("polarity", right ? 0 : 1, 0.5, 0.5, "");
        add("false warnings of the self-check", falseWarnings(), 0.5, 0.5, "");
    }

    private long falseWarnings() {
        return results.health().stream().filter(n -> SELF_CHECKS.contains(n.code())).count();
    }

    private void speed() {
        // The mean over the tone itself, which drift and wow make differ from that of the whole.
        double[] tone = DeviationTruth.overSpeedTone(run, machine.sheet());
        double mean = Arrays.stream(tone).average().orElseThrow();
        add("speed deviation", results.speed().deviation().value() - mean, 0.002, 0.0005, "%");
        double rms = DeviationTruth.weightedRms(tone);
        double read = results.speed().weightedRms().value();
        add("weighted rms", read - rms, 0.02 * rms + 0.002, 0.002, "%");
        if (machine.peakHz() > 0) {
            double peak = machine.peakPercent() * Math.pow(10, tableDb(machine.peakHz()) / 20);
            double error = results.speed().weightedPeak().value() - peak;
            add("weighted peak", error, 0.02 * peak + 0.002, 0.002, "%");
        }
    }

    /** IEC 60386 weighting at a frequency of the table. */
    private static double tableDb(double hz) {
        ReferenceTable table = ReferenceTable.load("wf-weighting-iec60386");
        double[] f = table.numbers("frequency");
        for (int i = 0; i < f.length; i++) {
            if (f[i] == hz) {
                return table.numbers("weighting")[i];
            }
        }
        throw new IllegalArgumentException(hz + " Hz is not in the table");
    }

    private void response(Response found) {
        ResponseTruth right =
                truth.response().stream()
                        .filter(t -> t.channel().equals(found.channel()))
                        .findFirst()
                        .orElseThrow();
        double low = 0;
        double high = 0;
        for (int n = -56; n <= 48; n++) {
            double hz = 1000 * Math.pow(2, n / 12.0);
            if (hz >= 40 && hz <= 16_000) {
                double e =
                        at(found.frequencyHz(), found.magnitudeDb(), hz)
                                - at(right.frequencyHz(), right.magnitudeDb(), hz);
                if (hz <= 10_000 && Math.abs(e) > Math.abs(low)) {
                    low = e;
                } else if (hz > 10_000 && Math.abs(e) > Math.abs(high)) {
                    high = e;
                }
            }
        }
        add("response to 10 kHz, " + found.channel(), low, 0.1, 0.03, "dB");
        add("response to 16 kHz, " + found.channel(), high, 0.15, 0.03, "dB");
        double lower = 100 * (found.lowerEdge().value() / right.lowerEdgeHz() - 1);
        double upper = 100 * (found.upperEdge().value() / right.upperEdgeHz() - 1);
        add("lower edge, " + found.channel(), lower, 2, 0.5, "%");
        add("upper edge, " + found.channel(), upper, 2, 0.5, "%");
    }

    /** Harmonics and loss of the highs of the reference sweep, by the Fourier components. */
    private void loudSweep(Response found) {
        SteadyTone tone = run.tone(found.channel().equals("left") ? 0 : 1);
        double worst = 0;
        for (HarmonicCurve.Point p : found.harmonics().get(1).points()) {
            if (p.standsOut() && p.frequencyHz() > 100 && p.frequencyHz() < 5000) {
                double right = tone.harmonicPercent(3, p.frequencyHz(), 0);
                double e = 100 * (p.percent() / right - 1);
                worst = Math.abs(e) > Math.abs(worst) ? e : worst;
            }
        }
        add("K3 of the sweep, " + found.channel(), worst, 4, 1, "% of reading");
        double loud = tone.compressionDb(10_000, 0) - tone.compressionDb(1000, 0);
        double quiet = tone.compressionDb(10_000, -20) - tone.compressionDb(1000, -20);
        double loss = found.levelDependence().lossAt10kHz().value() - (loud - quiet);
        add("loss at 10 kHz, " + found.channel(), loss, 0.1, 0.03, "dB");
    }

    private static double at(double[] x, double[] y, double hz) {
        int i = 0;
        while (x[i + 1] < hz) {
            i++;
        }
        double part = Math.log(hz / x[i]) / Math.log(x[i + 1] / x[i]);
        return y[i] * (1 - part) + y[i + 1] * part;
    }

    private void distortion(Distortion found) {
        DistortionTruth right =
                truth.distortion().stream()
                        .filter(t -> t.channel().equals(found.channel()))
                        .filter(t -> t.frequencyHz() == found.frequencyHz())
                        .findFirst()
                        .orElseThrow();
        double worst = 0;
        for (LadderStep step : found.steps()) {
            for (DistortionTruth.Step t : right.steps()) {
                if (t.recordLevelDb() == step.recordLevelDb() && !step.limitedByNoise()) {
                    double e = 100 * (step.k3Percent() / t.k3Percent() - 1);
                    worst = Math.abs(e) > Math.abs(worst) ? e : worst;
                }
            }
        }
        add("K3, " + found.channel(), worst, 4, 1, "% of reading");
        double three = found.levelAtK3ThreePercent().value() - right.levelAtK3ThreePercent();
        add("record level at K3 3 %, " + found.channel(), three, 0.15, 0.05, "dB");
        double output =
                found.maximumOutputLevel().value()
                        - right.maximumOutputLevel()
                        + measured.referenceDb(found.channel().equals("left") ? 0 : 1);
        add("maximum output level, " + found.channel(), output, 0.15, 0.05, "dB");
    }

    private void noise() {
        double[] hiss = measured.quasiPeakOfHissDb(SILENCE_S);
        for (int c = 0; c < 2; c++) {
            var found = results.noise().get(c);
            var right = truth.noise().get(c);
            double flat =
                    found.unweighted().value()
                            - right.unweighted()
                            + measured.referenceDb(c)
                            + measured.leakDb(c);
            double a =
                    found.aWeighted().value()
                            - right.aWeighted()
                            + measured.referenceDb(c)
                            + measured.leakDb(c);
            double quasiPeak = found.itu468().value() - hiss[c] + measured.leakDb(c);
            add("noise 468, " + found.channel(), quasiPeak, 0.3, 0.3, "dB");
            add("noise unweighted, " + found.channel(), flat, 0.3, 0.3, "dB");
            add("noise A, " + found.channel(), a, 0.3, 0.3, "dB");
        }
    }

    private void channels() {
        var found = results.channels();
        var right = truth.channels();
        add("balance", found.balance().value() - right.balance(), 0.03, 0.03, "dB");
        double there =
                found.crosstalkLeftToRight().value()
                        - right.crosstalkLeftToRight()
                        + measured.referenceDb(1);
        double back =
                found.crosstalkRightToLeft().value()
                        - right.crosstalkRightToLeft()
                        + measured.referenceDb(0);
        add("crosstalk left to right", there, 0.5, 0.5, "dB");
        add("crosstalk right to left", back, 0.5, 0.5, "dB");
        double delay = found.interchannelDelay().value() - right.interchannelDelay();
        add("interchannel delay", delay, 0.3, 0.05, "µs");
        // Where there is none it is not known.
        boolean wanders = found.interchannelDelayWander().isKnown();
        double wander = wanders ? found.interchannelDelayWander().value() : 0;
        add("wander of it, rms", wander - right.interchannelDelayWander(), 0.005, 0.005, "µs");
    }

    private void dropouts() {
        int missed = 0;
        for (DropoutTruth t : truth.dropouts()) {
            missed += results.dropouts().stream().noneMatch(d -> same(d, t)) ? 1 : 0;
        }
        int invented = 0;
        for (Dropout d : results.dropouts()) {
            invented += truth.dropouts().stream().noneMatch(t -> same(d, t)) ? 1 : 0;
        }
        add("dropouts missed", missed, 0.5, 0.5, "");
        add("dropouts invented", invented, 0.5, 0.5, "");
    }

    private static boolean same(Dropout d, DropoutTruth t) {
        boolean channel = t.channel().equals("both") || t.channel().equals(d.channel());
        return channel && Math.abs(d.atSeconds() - t.atSeconds()) < 0.03;
    }
}
