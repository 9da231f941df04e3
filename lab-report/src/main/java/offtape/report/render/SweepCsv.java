package offtape.report.render;

import java.util.Map;
import offtape.core.unit.Quantity;
import offtape.report.result.ContourPoint;
import offtape.report.result.HarmonicCurve;
import offtape.report.result.LevelDependence;
import offtape.report.result.Response;
import offtape.report.result.ResponseBand;
import offtape.report.result.Results;

/** What the sweeps tell beside the response itself, as CSV files. */
final class SweepCsv {

    private static final String LEVEL = "sweep level (dB re reference)";

    private SweepCsv() {}

    /** File names and contents. */
    static Map<String, CsvTable> of(Results results) {
        return Map.of(
                "response-bands.csv", bands(results),
                "response-contour.csv", contour(results),
                "response-level.csv", level(results),
                "sweep-harmonics.csv", harmonics(results));
    }

    private static CsvTable bands(Results results) {
        CsvTable table =
                new CsvTable(
                        "channel",
                        LEVEL,
                        "within (dB re 1 kHz)",
                        "from (Hz)",
                        "from uncertainty k=2 (Hz)",
                        "to (Hz)",
                        "to uncertainty k=2 (Hz)",
                        "reaches the end of the sweep");
        for (Response r : results.response()) {
            for (ResponseBand b : r.bands()) {
                table.text(r.channel())
                        .number(r.levelDb(), 2)
                        .number(b.toleranceDb(), 2)
                        .number(b.fromHz(), 2)
                        .number(b.lowerEnd().uncertainty(), 2)
                        .number(b.toHz(), 1)
                        .number(b.upperEnd().uncertainty(), 1)
                        .text(reach(b))
                        .end();
            }
        }
        return table;
    }

    private static String reach(ResponseBand b) {
        boolean lower = !b.lowerEnd().isKnown();
        boolean upper = !b.upperEnd().isKnown();
        if (lower && upper) {
            return "both";
        }
        return lower ? "lower" : upper ? "upper" : "";
    }

    private static CsvTable contour(Results results) {
        CsvTable table =
                new CsvTable(
                        "channel",
                        LEVEL,
                        "kind",
                        "frequency (Hz)",
                        "frequency uncertainty k=2 (Hz)",
                        "magnitude (dB re 1 kHz)",
                        "magnitude uncertainty k=2 (dB)",
                        "prominence (dB)",
                        "wavelength (mm)");
        for (Response r : results.response()) {
            for (ContourPoint p : r.contour()) {
                table.text(r.channel()).number(r.levelDb(), 2).text(p.kind());
                figure(table, p.frequency(), 2);
                figure(table, p.magnitude(), 3)
                        .number(p.prominenceDb(), 3)
                        .number(p.wavelengthMm(), 3)
                        .end();
            }
        }
        return table;
    }

    private static CsvTable figure(CsvTable table, Quantity figure, int decimals) {
        return table.number(figure.value(), decimals).number(figure.uncertainty(), decimals);
    }

    private static CsvTable level(Results results) {
        CsvTable table =
                new CsvTable(
                        "channel",
                        LEVEL,
                        "quiet sweep level (dB re reference)",
                        "frequency (Hz)",
                        "loud less quiet (dB)",
                        "uncertainty k=2 (dB)");
        for (Response r : results.response()) {
            LevelDependence d = r.levelDependence();
            for (int i = 0; d != null && i < d.frequencyHz().length; i++) {
                table.text(r.channel())
                        .number(r.levelDb(), 2)
                        .number(d.quietLevelDb(), 2)
                        .number(d.frequencyHz()[i], 2)
                        .number(d.differenceDb()[i], 3)
                        .number(d.uncertaintyDb()[i], 3)
                        .end();
            }
        }
        return table;
    }

    private static CsvTable harmonics(Results results) {
        CsvTable table =
                new CsvTable(
                        "channel",
                        LEVEL,
                        "order",
                        "fundamental (Hz)",
                        "harmonic (%)",
                        "uncertainty k=2 (%)",
                        "floor (%)");
        for (Response r : results.response()) {
            for (HarmonicCurve h : r.harmonics()) {
                for (HarmonicCurve.Point p : h.points()) {
                    table.text(r.channel())
                            .number(r.levelDb(), 2)
                            .number((double) h.order(), 0)
                            .number(p.frequencyHz(), 2)
                            .number(p.percent(), 5)
                            .number(p.uncertaintyPercent(), 5)
                            .number(p.floorPercent(), 5)
                            .end();
                }
            }
        }
        return table;
    }
}
