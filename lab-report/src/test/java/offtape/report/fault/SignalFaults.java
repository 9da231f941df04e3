package offtape.report.fault;

import static offtape.report.fault.FaultForms.at;
import static offtape.report.fault.FaultForms.size;

import java.util.List;

/** Faults of amplifiers, wiring, tape and interface. */
final class SignalFaults {

    static final List<FaultForm> ALL =
            List.of(
                    FaultForm.right(
                            "weak-channel",
                            "weak",
                            (w, s, d) ->
                                    w.with("electronics.right.replayGainDb", -size(s, 3.5, 25))),
                    FaultForm.right(
                            "weak-channel",
                            "dead",
                            (w, s, d) ->
                                    w.with("electronics.right.replayGainDb", "-40")
                                            .with("crosstalk.leftToRightDb", at(s, -50, -38))),
                    FaultForm.both(
                            "swapped-channels",
                            "exchanged",
                            (w, s, d) -> w.with("swapped", "true")),
                    FaultForm.both("inverted-channel", "one of two", SignalFaults::inverted),
                    FaultForm.both("ground-loop", "mains", (w, s, d) -> hum(w, s, d, true)),
                    FaultForm.both("supply-hum", "ripple", (w, s, d) -> hum(w, s, d, false)),
                    FaultForm.both("hiss", "both channels", (w, s, d) -> hiss(w, s, d, false)),
                    FaultForm.right("hiss", "one channel", (w, s, d) -> hiss(w, s, d, true)),
                    FaultForm.both("dropouts", "many", SignalFaults::dropouts),
                    FaultForm.both(
                            "overload",
                            "clips",
                            (w, s, d) -> w.with("recorder.clipDbfs", at(s, -8, -18))));

    private SignalFaults() {}

    private static Workshop inverted(Workshop w, double s, Draws d) {
        return w.with("electronics.polarityInverted", "false")
                .with(
                        "electronics." + (d.chance(0.5) ? "right" : "left") + ".polarityInverted",
                        "true");
    }

    private static Workshop hum(Workshop w, double s, Draws d, boolean odd) {
        double level = at(s, -52, -28);
        int[] orders = odd ? new int[] {1, 3, 2} : new int[] {2, 4, 1};
        return w.with(
                "hum",
                Draws.json(
                        "{\"mainsHz\": %.3f, \"lines\": [{\"harmonic\": %d, \"levelDb\": %.1f},"
                                + " {\"harmonic\": %d, \"levelDb\": %.1f},"
                                + " {\"harmonic\": %d, \"levelDb\": %.1f}]}",
                        (d.chance(0.6) ? 50 : 60) + d.between(-0.05, 0.05),
                        orders[0],
                        level,
                        orders[1],
                        level - d.between(3, 14),
                        orders[2],
                        level - d.between(10, 22)));
    }

    private static Workshop hiss(Workshop w, double s, Draws d, boolean one) {
        double usual = w.isCassette() ? -49.5 : -58.5;
        double level = usual + at(s, 8, 22);
        return one
                ? w.with("hiss.rightDb", level)
                : w.with("hiss.levelDb", level).with("hiss.rightDb", level + 0.4 * d.gaussian());
    }

    private static Workshop dropouts(Workshop w, double s, Draws d) {
        double perMinute = size(s, 12, 80);
        StringBuilder list = new StringBuilder("[");
        double until = w.full() ? 196 : 80;
        for (double at = d.between(0.5, 4);
                at < until;
                at += d.between(0.4, 1.6) * 60 / perMinute) {
            list.append(list.length() > 1 ? "," : "")
                    .append(
                            Draws.json(
                                    "{\"channel\": \"%s\", \"atSeconds\": %.3f,"
                                            + " \"milliseconds\": %.1f, \"depthDb\": %.1f}",
                                    new String[] {"left", "right", "both"}[d.oneOf(3)],
                                    at,
                                    d.between(12, 90),
                                    d.between(4.5, 22)));
        }
        return w.with("dropouts", list.append("]").toString());
    }
}
