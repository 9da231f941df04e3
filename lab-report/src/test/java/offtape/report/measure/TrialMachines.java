package offtape.report.measure;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import offtape.core.machine.spec.MachineSpec;
import offtape.core.programme.ProgrammePlan;
import offtape.core.unit.TapeSpeed;

/** Simulated machines of all kinds. Invented; the motions are those of a real transport. */
final class TrialMachines {

    /**
     * A machine on trial.
     *
     * @param clean whether the allowances of clean returns apply
     * @param peakHz rate of its only speed component, 0 if it has none or others
     */
    record Machine(
            String name,
            ProgrammePlan plan,
            MachineSpec spec,
            boolean clean,
            double peakHz,
            double peakPercent) {}

    private static final String BASE =
            """
            {"format": "offtape-machine", "version": 1, "seed": %d, "tapeSpeedMmPerS": %s,
             "transport": {%s},
             "heads": {"spacingLossMicrometres": %s, "gapMicrometres": 2.2, "azimuthArcMinutes": %s,
                       "trackWidthMm": 2, "trackSpacingMm": 4,
                       "bumps": [{"frequencyHz": %s, "gainDb": 1.8, "q": 1.2}]},
             "saturation": {"kind": "%s", "levelAtK3ThreePercentDb": %s,
                            "secondHarmonicPercent": 0.1, "emphasisMicroseconds": %s},
             "electronics": {"lowerEdgeHz": %s, "lowerOrder": 2, "upperEdgeHz": %s,
                             "polarityInverted": %b,
                             "right": {"recordGainDb": %s}},
             "crosstalk": {"leftToRightDb": -46, "rightToLeftDb": -50},
             "hiss": {"levelDb": %s},
             "dropouts": [%s],
             "recorder": {"startSeconds": %s, "tailSeconds": 1, "bits": 24}}
            """;

    private static final String DROPOUTS =
            """
            {"channel": "left", "atSeconds": %s, "milliseconds": 30, "depthDb": 8},
            {"channel": "right", "atSeconds": %s, "milliseconds": 12, "depthDb": 5},
            {"channel": "both", "atSeconds": %s, "milliseconds": 80, "depthDb": 15}
            """;

    private TrialMachines() {}

    static List<Machine> all() {
        List<Machine> all = new ArrayList<>();
        all.add(steady("clean", 48_000, 190.5, true, 0, "tanh", -80));
        all.add(steady("clean, 1 % slow, 44.1 kHz", 44_100, 381, true, -1, "tanh", -80));
        all.add(steady("clean, cubic, 96 kHz", 96_000, 95.25, true, 0.3, "cubic", -80));
        all.add(steady("2.9 % fast, inverted", 48_000, 190.5, false, 2.9, "tanh", -58));
        all.add(steady("2.9 % slow", 44_100, 190.5, false, -2.9, "tanh", -58));
        all.add(wow("wow 0.63 Hz", 0.63, 0.3));
        all.add(wow("wow 4 Hz", 4, 0.12));
        all.add(wow("flutter 10 Hz", 10, 0.2));
        all.add(wow("flutter 40 Hz", 40, 0.1));
        all.add(
                moving(
                        "random flutter",
                        "\"randomFlutter\": {\"rmsPercent\": 0.15, \"lowHz\": 0.5, \"highHz\": 120}"));
        for (String motion : List.of("transport-a", "transport-b", "transport-c")) {
            all.add(
                    moving(
                            "real motion " + motion,
                            "\"speedDeviationPercent\": 0.4, \"motion\": {\"recorded\": \""
                                    + motion
                                    + "\"}"));
        }
        return all;
    }

    private static Machine steady(
            String name,
            int rateHz,
            double mmPerS,
            boolean clean,
            double deviationPercent,
            String curve,
            double hissDb) {
        String transport = "\"speedDeviationPercent\": " + deviationPercent;
        return machine(
                name, rateHz, mmPerS, transport, curve, hissDb, clean, 0, 0, 150, 163.2, 180.5);
    }

    private static Machine wow(String name, double hz, double percent) {
        String transport =
                "\"speedDeviationPercent\": 0.2, \"components\": [{\"frequencyHz\": "
                        + hz
                        + ", \"peakPercent\": "
                        + percent
                        + "}]";
        return machine(
                name, 48_000, 190.5, transport, "tanh", -58, false, hz, percent, 150, 163.2, 180.5);
    }

    /** Machines made for another mains frequency, on the brief programme. */
    static List<Machine> farOffSpeed() {
        return Stream.of(-16.7, 20.0)
                .map(
                        percent ->
                                machine(
                                        percent + " %",
                                        48_000,
                                        190.5,
                                        "\"speedDeviationPercent\": "
                                                + percent
                                                + ", \"components\": [{\"frequencyHz\": 4,"
                                                + " \"peakPercent\": 0.12}]",
                                        "tanh",
                                        -58,
                                        false,
                                        4,
                                        0.12,
                                        52,
                                        57,
                                        64))
                .map(
                        m ->
                                new Machine(
                                        m.name(),
                                        new ProgrammePlan(
                                                new TapeSpeed(190.5),
                                                48_000,
                                                ProgrammePlan.DEFAULT_REFERENCE_DBFS,
                                                true),
                                        m.spec(),
                                        false,
                                        m.peakHz(),
                                        m.peakPercent()))
                .toList();
    }

    private static Machine moving(String name, String transport) {
        return machine(name, 48_000, 190.5, transport, "tanh", -58, false, 0, 0, 150, 163.2, 180.5);
    }

    private static Machine machine(
            String name,
            int rateHz,
            double mmPerS,
            String transport,
            String curve,
            double hissDb,
            boolean clean,
            double peakHz,
            double peakPercent,
            Object... dropoutsAt) {
        boolean fast = mmPerS > 300;
        String json =
                String.format(
                        java.util.Locale.ROOT,
                        BASE,
                        name.hashCode() & 0xffff,
                        mmPerS,
                        transport,
                        clean ? "0.2" : "0.6",
                        clean ? "1.0" : "-3.5",
                        fast ? "55" : "70",
                        curve,
                        curve.equals("cubic") ? "8.5" : "6.5",
                        mmPerS < 100 ? "20" : "35",
                        fast ? "22" : "28",
                        rateHz < 48_000 ? "17000" : "18500",
                        name.contains("inverted"),
                        clean ? "0.4" : "-1.3",
                        hissDb,
                        clean ? "" : String.format(DROPOUTS, dropoutsAt),
                        "1.7");
        ProgrammePlan plan =
                new ProgrammePlan(
                        new TapeSpeed(mmPerS), rateHz, ProgrammePlan.DEFAULT_REFERENCE_DBFS, false);
        return new Machine(name, plan, MachineSpec.fromJson(json), clean, peakHz, peakPercent);
    }
}
