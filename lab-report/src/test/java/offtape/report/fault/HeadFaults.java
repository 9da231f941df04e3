package offtape.report.fault;

import static offtape.report.fault.FaultForms.at;
import static offtape.report.fault.FaultForms.size;

import java.util.List;

/** Faults of the heads and of how the tape lies against them. */
final class HeadFaults {

    static final List<FaultForm> ALL =
            List.of(
                    FaultForm.both("dirty-head", "both channels", (w, s, d) -> dirt(w, "", s)),
                    FaultForm.right("dirty-head", "one channel", (w, s, d) -> dirt(w, "right.", s)),
                    FaultForm.both("worn-head", "both channels", (w, s, d) -> gap(w, "", s)),
                    FaultForm.right("worn-head", "one channel", (w, s, d) -> gap(w, "right.", s)),
                    new FaultForm(
                            "azimuth", "tilted", "both", true, FaultForm.ANY, HeadFaults::azimuth),
                    FaultForm.both("azimuth-wander", "wandering", HeadFaults::wander),
                    FaultForm.both(
                            "magnetised-head",
                            "magnetised",
                            (w, s, d) ->
                                    w.with(
                                            "heads.magnetisation",
                                            Draws.json(
                                                    "{\"secondHarmonicPercent\": %.3f,"
                                                            + " \"noiseDb\": %.2f}",
                                                    size(s, 0.7, 3.5),
                                                    at(s, -53, -40) + d.gaussian()))));

    private HeadFaults() {}

    private static Workshop dirt(Workshop w, String side, double s) {
        double lostDb = size(s, 3.5, 20);
        return w.with(
                "heads." + side + "spacingLossMicrometres", (lostDb + 0.6) / 54.6 * w.waveUm());
    }

    private static Workshop gap(Workshop w, String side, double s) {
        return w.with(
                "heads." + side + "gapMicrometres",
                SoundMachines.gapUm(size(s, 3.5, 14), w.waveUm()));
    }

    /** Turns the head so far that the wave at 10 kHz falls by a share of itself over the track. */
    private static Workshop azimuth(Workshop w, double s, Draws d) {
        double widthMm = w.isCassette() ? 0.6 : 2;
        double share = at(s, 0.12, 0.85);
        double tangent = share * w.waveUm() / 1000 / widthMm;
        return w.with("heads.azimuthArcMinutes", Math.toDegrees(Math.atan(tangent)) * 60);
    }

    private static Workshop wander(Workshop w, double s, Draws d) {
        double spacingMm = w.isCassette() ? 0.9 : 3.6;
        double peakUm = Math.sqrt(2) * size(s, 0.4, 2.5);
        return w.with(
                "heads.azimuthWander",
                Draws.json(
                        "[{\"frequencyHz\": %.3f, \"peakArcMinutes\": %.4f}, {\"frequencyHz\": %.3f,"
                                + " \"peakArcMinutes\": %.4f}]",
                        d.size(0.2, 2),
                        SoundMachines.arcMinutes(0.8 * peakUm, spacingMm),
                        d.size(0.5, 5),
                        SoundMachines.arcMinutes(0.6 * peakUm, spacingMm)));
    }
}
