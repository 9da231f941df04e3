package offtape.report.render;

import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import offtape.report.result.Distortion;
import offtape.report.result.HumLine;
import offtape.report.result.LadderStep;
import offtape.report.result.Noise;
import offtape.report.result.Response;
import offtape.report.result.Results;
import offtape.report.result.Speed;
import offtape.report.result.SpeedTrace;
import offtape.report.result.TransportSpeed;

/** The curves of a session as CSV files. */
final class CsvFiles {

    private CsvFiles() {}

    /** File names and contents, in order of name. */
    static Map<String, CsvTable> of(Results results) {
        Map<String, CsvTable> files = new TreeMap<>();
        files.put("response.csv", response(results));
        files.put("ladder.csv", ladder(results));
        files.put("noise.csv", noise(results));
        files.put("speed.csv", trace(results.speed() == null ? null : results.speed().trace()));
        files.put("speed-readings.csv", speedReadings(results.speed()));
        files.put("speed-spectrum.csv", speedSpectrum(results.speed()));
        files.put("speed-passes.csv", SpeedPasses.csv(results.speed()));
        files.put(
                "speed-components.csv",
                SpeedComponents.csv(
                        results.speed() == null ? List.of() : results.speed().components()));
        TransportSpeed own = results.speed() == null ? null : results.speed().transport();
        files.put("transport-speed.csv", trace(own == null ? null : own.trace()));
        files.put("transport-spectrum.csv", TransportCharts.spectrumCsv(own));
        files.put(
                "transport-components.csv",
                SpeedComponents.csv(own == null ? List.of() : own.components()));
        files.putAll(SweepCsv.of(results));
        files.put("crosstalk.csv", ChannelTables.crosstalk(results.channels()));
        files.put("interchannel-delay.csv", ChannelTables.delay(results.channels()));
        files.put("dropouts.csv", ChannelTables.dropouts(results.dropouts()));
        return Collections.unmodifiableMap(files);
    }

    private static CsvTable response(Results results) {
        CsvTable table =
                new CsvTable(
                        "channel",
                        "sweep level (dB re reference)",
                        "frequency (Hz)",
                        "magnitude (dB re 1 kHz)",
                        "uncertainty k=2 (dB)");
        for (Response r : results.response()) {
            for (int i = 0; i < r.frequencyHz().length; i++) {
                table.text(r.channel())
                        .number(r.levelDb(), 2)
                        .number(r.frequencyHz()[i], 2)
                        .number(r.magnitudeDb()[i], 3)
                        .number(r.uncertaintyDb()[i], 3)
                        .end();
            }
        }
        return table;
    }

    private static CsvTable ladder(Results results) {
        CsvTable table =
                new CsvTable(
                        "channel",
                        "frequency (Hz)",
                        "record level (dB re reference)",
                        "replay level (dB re reference)",
                        "K2 (%)",
                        "K3 (%)",
                        "all harmonics (%)",
                        "compression (dB)",
                        "K3 floor (%)",
                        "limited by noise",
                        "K2 below (%)",
                        "K3 below (%)",
                        "all harmonics below (%)",
                        "K3 uncertainty k=2 (%)",
                        "replay level uncertainty k=2 (dB)",
                        "left out of the curve");
        for (Distortion d : results.distortion()) {
            d.steps().forEach(step -> ladderRow(table, d, step));
        }
        return table;
    }

    private static void ladderRow(CsvTable table, Distortion d, LadderStep s) {
        table.text(d.channel())
                .number(d.frequencyHz(), 2)
                .number(s.recordLevelDb(), 2)
                .number(s.replayLevelDb(), 3)
                .number(s.k2Percent(), 5)
                .number(s.k3Percent(), 5)
                .number(s.thdPercent(), 5)
                .number(s.compressionDb(), 3)
                .number(s.k3FloorPercent(), 5)
                .text(s.limitedByNoise() ? "yes" : "no")
                .number(s.noise().k2BelowPercent(), 5)
                .number(s.noise().k3BelowPercent(), 5)
                .number(s.noise().thdBelowPercent(), 5)
                .number(s.noise().k3UncertaintyPercent(), 5)
                .number(s.noise().replayUncertaintyDb(), 4)
                .text(s.noise().leftOut() ? "yes" : "no")
                .end();
    }

    private static CsvTable noise(Results results) {
        CsvTable table =
                new CsvTable(
                        "channel",
                        "kind",
                        "frequency (Hz)",
                        "level (dB re reference)",
                        "uncertainty k=2 (dB)");
        for (Noise n : results.noise()) {
            for (int i = 0; n.spectrum() != null && i < n.spectrum().frequencyHz().length; i++) {
                table.text(n.channel())
                        .text("third-octave band")
                        .number(n.spectrum().frequencyHz()[i], 2)
                        .number(n.spectrum().levelDb()[i], 2)
                        .number(null, 2)
                        .end();
            }
            for (HumLine hum : n.hum()) {
                table.text(n.channel())
                        .text("mains line")
                        .number(hum.frequencyHz(), 2)
                        .number(hum.levelDb(), 2)
                        .number(hum.uncertaintyDb(), 2)
                        .end();
            }
            if (n.residue() != null && n.residue().isKnown()) {
                table.text(n.channel())
                        .text("earlier recording")
                        .number(null, 2)
                        .number(n.residue().value(), 2)
                        .number(n.residue().uncertainty(), 2)
                        .end();
            }
        }
        return table;
    }

    private static CsvTable trace(SpeedTrace trace) {
        CsvTable table =
                new CsvTable(
                        "time (s)",
                        "lowest deviation from mean (%)",
                        "highest deviation from mean (%)");
        if (trace != null) {
            for (int i = 0; i < trace.seconds().length; i++) {
                table.number(trace.seconds()[i], 3)
                        .number(trace.lowestPercent()[i], 5)
                        .number(trace.highestPercent()[i], 5)
                        .end();
            }
        }
        return table;
    }

    private static CsvTable speedReadings(Speed speed) {
        CsvTable table = new CsvTable("time (s)", "highest weighted quasi-peak reading (%)");
        if (speed != null && speed.readings() != null) {
            for (int i = 0; i < speed.readings().seconds().length; i++) {
                table.number(speed.readings().seconds()[i], 3)
                        .number(speed.readings().weightedPeakPercent()[i], 5)
                        .end();
            }
        }
        return table;
    }

    private static CsvTable speedSpectrum(Speed speed) {
        CsvTable table = new CsvTable("rate (Hz)", "peak deviation (%)");
        if (speed != null && speed.spectrum() != null) {
            for (int i = 0; i < speed.spectrum().frequencyHz().length; i++) {
                table.number(speed.spectrum().frequencyHz()[i], 4)
                        .number(speed.spectrum().peakPercent()[i], 6)
                        .end();
            }
        }
        return table;
    }
}
