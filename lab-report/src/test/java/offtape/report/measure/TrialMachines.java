package offtape.report.measure;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import offtape.core.machine.spec.MachineSpec;
import offtape.core.programme.Cue;
import offtape.core.programme.CueSheet;
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
            CueSheet sheet,
            double midHz,
            MachineSpec spec,
            boolean clean,
            double peakHz,
            double peakPercent) {}

    /** How far into the speed tone the dropouts of hissy machines lie, seconds. */
    private static final double[] DROPOUTS_AT_S = {3.1, 8.4, 13.2};

    private static final String DROPOUTS =
            """
            [{"channel": "left", "atSeconds": %.3f, "milliseconds": 30, "depthDb": 8},
             {"channel": "right", "atSeconds": %.3f, "milliseconds": 12, "depthDb": 5},
             {"channel": "both", "atSeconds": %.3f, "milliseconds": 80, "depthDb": 15}]
            """;

    /** Slight, so that the delay at the moment of the sweep stays near its mean. */
    private static final String WANDER = "[{\"frequencyHz\": 0.7, \"peakArcMinutes\": 0.02}]";

    private TrialMachines() {}

    /** Rates at which the weighting is tabulated, so that its truth depends on no interpolation. */
    private static final double[] WOW_HZ = {0.63, 0.8, 2, 4, 6.3, 10, 40};

    static List<Machine> all() {
        List<Machine> all = new ArrayList<>();
        all.addAll(shortProgramme());
        all.addAll(clean());
        for (double hz : WOW_HZ) {
            double percent = hz < 8 ? 0.3 : 0.2;
            all.add(wow(hz, percent));
        }
        for (String motion : List.of("transport-a", "transport-b", "transport-c")) {
            all.add(moving(motion, 190.5));
        }
        all.add(moving("transport-a", 95.25));
        all.add(moving("transport-b", 381));
        all.add(farOff(-16.7));
        all.add(farOff(20));
        all.addAll(DrawnMachines.draw(22));
        return all;
    }

    /** On the short programme that users get. */
    private static List<Machine> shortProgramme() {
        MachineDraft random =
                hissy("random flutter, short programme")
                        .with(
                                "transport.randomFlutter",
                                "{\"rmsPercent\": 0.15, \"lowHz\": 0.5, \"highHz\": 120}");
        MachineDraft cubic =
                quiet("clean, cubic, short programme")
                        .with("tapeSpeedMmPerS", 95.25)
                        .with("saturation.kind", "\"cubic\"")
                        .with("saturation.levelAtK3ThreePercentDb", 8.5)
                        .with("transport.speedDeviationPercent", 0.3);
        return List.of(
                onShort("random flutter, short programme", random, 190.5, false),
                onShort("clean, cubic, short programme", cubic, 95.25, true));
    }

    private static Machine onShort(String name, MachineDraft draft, double mmPerS, boolean clean) {
        ProgrammePlan plan = new ProgrammePlan(new TapeSpeed(mmPerS), 48_000, -18, true);
        CueSheet sheet = plan.sheet();
        double tone =
                sheet.cues(Cue.Tone.class)
                        .filter(t -> t.id().equals("speed"))
                        .mapToDouble(t -> sheet.seconds(t.startFrame()))
                        .findFirst()
                        .orElseThrow();
        MachineSpec spec =
                clean ? draft.spec() : draft.with("dropouts", dropouts(tone + 1.7)).spec();
        return new Machine(name, sheet, plan.midHz(), spec, clean, 0, 0);
    }

    private static List<Machine> clean() {
        return List.of(clean(44_100, -1), clean(48_000, 0), clean(96_000, 0.3));
    }

    private static Machine clean(int rateHz, double deviationPercent) {
        String name = "clean, " + deviationPercent + " %, " + rateHz / 1000 + " kHz";
        MachineDraft draft = quiet(name).with("transport.speedDeviationPercent", deviationPercent);
        return brief(name, draft, 190.5, rateHz, true);
    }

    private static Machine moving(String motion, double mmPerS) {
        String name = String.format(Locale.ROOT, "real motion %s, %.0f mm/s", motion, mmPerS);
        MachineDraft draft =
                hissy(name)
                        .with("transport.speedDeviationPercent", 0.4)
                        .with("transport.motion", "{\"recorded\": \"" + motion + "\"}")
                        .with("tapeSpeedMmPerS", mmPerS);
        return brief(name, draft, mmPerS, 48_000, false);
    }

    private static Machine wow(double hz, double percent) {
        String name = "wow " + hz + " Hz";
        String line =
                String.format(
                        Locale.ROOT, "[{\"frequencyHz\": %s, \"peakPercent\": %s}]", hz, percent);
        MachineDraft draft =
                hissy(name)
                        .with("transport.speedDeviationPercent", 0.2)
                        .with("transport.components", line);
        Machine m = brief(name, draft, 190.5, 48_000, false);
        return new Machine(name, m.sheet(), m.midHz(), m.spec(), false, hz, percent);
    }

    /** As a machine made for another mains frequency runs. */
    private static Machine farOff(double deviationPercent) {
        String name = "other mains, " + deviationPercent + " %";
        MachineDraft draft =
                hissy(name)
                        .with("transport.speedDeviationPercent", deviationPercent)
                        .with(
                                "transport.components",
                                "[{\"frequencyHz\": 4, \"peakPercent\": 0.12}]");
        return brief(name, draft, 190.5, 48_000, false);
    }

    private static MachineDraft hissy(String name) {
        return MachineDraft.ordinary()
                .with("seed", Integer.toString(name.hashCode() & 0xffff))
                .with("heads.azimuthWander", WANDER);
    }

    private static MachineDraft quiet(String name) {
        return hissy(name)
                .with("hiss.levelDb", -80)
                .with("heads.azimuthWander", "[]")
                .with("heads.spacingLossMicrometres", 0.2)
                .with("heads.azimuthArcMinutes", 1)
                .with("electronics.right.recordGainDb", 0.4);
    }

    /** A machine on the brief programme of the trials; a hissy one gets dropouts. */
    static Machine brief(
            String name, MachineDraft draft, double mmPerS, int rateHz, boolean clean) {
        TapeSpeed speed = new TapeSpeed(mmPerS);
        MachineDraft whole =
                clean ? draft : draft.with("dropouts", dropouts(TrialSheet.SPEED_TONE_AT_S + 1.7));
        return new Machine(
                name,
                TrialSheet.of(speed, rateHz),
                TrialSheet.midHz(speed),
                whole.spec(),
                clean,
                0,
                0);
    }

    private static String dropouts(double toneAtSeconds) {
        return String.format(
                Locale.ROOT,
                DROPOUTS,
                toneAtSeconds + DROPOUTS_AT_S[0],
                toneAtSeconds + DROPOUTS_AT_S[1],
                toneAtSeconds + DROPOUTS_AT_S[2]);
    }
}
