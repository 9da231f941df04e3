package offtape.report.fault;

import static offtape.report.fault.FaultForms.at;
import static offtape.report.fault.FaultForms.size;

import java.util.List;

/** Faults of the transport. */
final class MotionFaults {

    static final List<FaultForm> ALL =
            List.of(
                    FaultForm.both(
                            "wrong-mains",
                            "made for 50 Hz, run at 60 Hz",
                            (w, s, d) ->
                                    w.with(
                                            "transport.speedDeviationPercent",
                                            Math.min(20, 19.7 + 0.3 * d.gaussian()))),
                    FaultForm.both(
                            "wrong-mains",
                            "made for 60 Hz, run at 50 Hz",
                            (w, s, d) ->
                                    w.with(
                                            "transport.speedDeviationPercent",
                                            -16.67 + 0.4 * d.gaussian())),
                    FaultForm.both(
                            "speed-setting",
                            "too fast",
                            (w, s, d) ->
                                    w.with("transport.speedDeviationPercent", size(s, 1.6, 9))),
                    FaultForm.both(
                            "speed-setting",
                            "too slow",
                            (w, s, d) ->
                                    w.with("transport.speedDeviationPercent", -size(s, 1.6, 9))),
                    FaultForm.both("belt", "slips and is uneven", MotionFaults::belt),
                    FaultForm.both("capstan", "eccentric", MotionFaults::capstan),
                    FaultForm.both("pinch-roller", "flat spot", MotionFaults::roller),
                    FaultForm.both("reel-tension", "uneven", MotionFaults::reel),
                    FaultForm.both(
                            "scrape-flutter",
                            "scrape",
                            (w, s, d) ->
                                    w.with(
                                            "transport.scrapeFlutter",
                                            Draws.json(
                                                    "{\"rmsPercent\": %.4f, \"lowHz\": 200,"
                                                            + " \"highHz\": %.0f}",
                                                    size(s, 0.2, 0.8), d.between(2000, 4000)))),
                    FaultForm.both("motor-ripple", "ripple", MotionFaults::motor));

    private MotionFaults() {}

    private static Workshop belt(Workshop w, double s, Draws d) {
        return w.with(
                "transport.belt",
                Draws.json(
                        "{\"slipPercent\": %.3f, \"wowPercent\": %.4f,"
                                + " \"driftPercentPerMinute\": %.3f}",
                        size(s, 0.8, 4), size(s, 0.2, 0.6), -size(s, 0.15, 0.6)));
    }

    private static Workshop capstan(Workshop w, double s, Draws d) {
        double mm = w.isCassette() ? d.between(1.8, 3.2) : d.between(5, 13);
        double percent = size(s, w.isCassette() ? 0.25 : 0.15, 0.8);
        return w.with(
                "transport.components",
                Draws.json(
                        "[{\"frequencyHz\": %.4f, \"peakPercent\": %.4f, \"phaseDegrees\": %.1f}]",
                        w.mmPerS() / Math.PI / mm, percent, d.between(0, 360)));
    }

    private static Workshop roller(Workshop w, double s, Draws d) {
        double mm = w.isCassette() ? d.between(8, 13) : d.between(20, 45);
        double percent = size(s, w.isCassette() ? 0.2 : 0.12, 0.7);
        return w.with(
                "transport.components",
                Draws.json(
                        "[{\"frequencyHz\": %.4f, \"peakPercent\": %.4f, \"phaseDegrees\": %.1f,"
                                + " \"harmonics\": [1, %.2f, %.2f, %.2f]}]",
                        w.mmPerS() / Math.PI / mm,
                        percent,
                        d.between(0, 360),
                        d.between(0.5, 0.85),
                        d.between(0.3, 0.6),
                        d.between(0.15, 0.4)));
    }

    private static Workshop reel(Workshop w, double s, Draws d) {
        double radiusMm = w.isCassette() ? d.between(11, 24) : d.between(28, 90);
        return w.with(
                "transport.reels",
                Draws.json(
                        "{\"%s\": {\"radiusMm\": %.2f, \"peakPercent\": %.4f,"
                                + " \"phaseDegrees\": %.1f}}",
                        d.chance(0.5) ? "supply" : "takeUp",
                        radiusMm,
                        size(s, w.isCassette() ? 0.25 : 0.15, 0.9),
                        d.between(0, 360)));
    }

    private static Workshop motor(Workshop w, double s, Draws d) {
        double mains = d.chance(0.6) ? 50 : 60;
        double hz = mains * (1 + d.oneOf(2));
        double peak = size(s, 0.08, 0.4);
        return w.with(
                "transport.components",
                Draws.json(
                        "[{\"frequencyHz\": %.3f, \"peakPercent\": %.4f}, {\"frequencyHz\": %.3f,"
                                + " \"peakPercent\": %.4f}]",
                        hz, peak, d.between(6, 8), at(d.between(0, 1), 0.01, 0.04)));
    }
}
