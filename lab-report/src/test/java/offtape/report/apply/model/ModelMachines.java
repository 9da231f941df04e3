package offtape.report.apply.model;

import java.util.List;
import offtape.report.measure.MachineDraft;

/** Simulated machines that models are tried on, from cassette to studio. */
final class ModelMachines {

    /** One of them, the sample rate of its programme and its tape speed. */
    record Machine(String name, int rateHz, double mmPerS, MachineDraft draft) {}

    private static final String WOW =
            """
            [{"frequencyHz": 0.8, "peakPercent": 0.04}, {"frequencyHz": %s, "peakPercent": 0.05}]
            """;
    private static final String FLUTTER = "{\"rmsPercent\": %s, \"lowHz\": 0.5, \"highHz\": 120}";

    private ModelMachines() {}

    static List<Machine> all() {
        return List.of(
                ordinary(),
                cassette(),
                darkCassette(),
                studio(),
                clean(),
                worn(),
                wrongEqualisation(),
                amplifiers(),
                steep(),
                bumpy());
    }

    static Machine ordinary() {
        return machine("ordinary 19 cm/s, tanh", 48_000, 190.5, 5.3, 0.05, MachineDraft.ordinary());
    }

    static Machine cassette() {
        return machine(
                "cassette, tanh, 90 µs, hiss -50",
                48_000,
                47.625,
                9.7,
                0.12,
                MachineDraft.ordinary()
                        .with("saturation.emphasisMicroseconds", 90)
                        .with("saturation.levelAtK3ThreePercentDb", 7)
                        .with("heads.spacingLossMicrometres", 0.15)
                        .with("heads.gapMicrometres", 0.9)
                        .with("heads.azimuthArcMinutes", 4)
                        .with("heads.trackWidthMm", 0.6)
                        .with("heads.trackSpacingMm", 0.9)
                        .with("electronics.upperEdgeHz", 15_500)
                        .with("electronics.upperOrder", "3")
                        .with("crosstalk", "{\"leftToRightDb\": -34, \"rightToLeftDb\": -36}")
                        .with("hiss.levelDb", -50));
    }

    private static Machine darkCassette() {
        return machine(
                "cassette, cubic, 120 µs, dull",
                44_100,
                47.625,
                8.1,
                0.1,
                MachineDraft.ordinary()
                        .with("saturation.kind", "\"cubic\"")
                        .with("saturation.emphasisMicroseconds", 120)
                        .with("saturation.levelAtK3ThreePercentDb", 6)
                        .with("saturation.secondHarmonicPercent", 0.6)
                        .with("heads.spacingLossMicrometres", 0.6)
                        .with("heads.gapMicrometres", 1.4)
                        .with("heads.azimuthArcMinutes", -9)
                        .with("heads.trackWidthMm", 0.6)
                        .with("heads.trackSpacingMm", 0.9)
                        .with("electronics.upperEdgeHz", 13_000)
                        .with("crosstalk", "{\"leftToRightDb\": -30, \"rightToLeftDb\": -33}")
                        .with("hiss.levelDb", -52));
    }

    private static Machine studio() {
        return machine(
                "studio 38 cm/s, cubic, two bumps",
                96_000,
                381,
                12,
                0.02,
                MachineDraft.ordinary()
                        .with("saturation.kind", "\"cubic\"")
                        .with("saturation.levelAtK3ThreePercentDb", 11)
                        .with("saturation.emphasisMicroseconds", 17.5)
                        .with("heads.spacingLossMicrometres", 0.4)
                        .with(
                                "heads.bumps",
                                "[{\"frequencyHz\": 55, \"gainDb\": 2, \"q\": 1.5},"
                                        + "{\"frequencyHz\": 110, \"gainDb\": -1, \"q\": 2}]")
                        .with("electronics.upperEdgeHz", 22_000)
                        .with("electronics.upperOrder", "4")
                        .with("electronics.lowerEdgeHz", 20)
                        .with("crosstalk", "{\"leftToRightDb\": -55, \"rightToLeftDb\": -60}")
                        .with("hiss.levelDb", -65));
    }

    private static Machine clean() {
        return machine(
                "no emphasis, little loss",
                48_000,
                190.5,
                6.9,
                0.05,
                MachineDraft.ordinary()
                        .with("saturation.emphasisMicroseconds", 0)
                        .with("saturation.secondHarmonicPercent", 0)
                        .with("heads.spacingLossMicrometres", 0)
                        .with("heads.gapMicrometres", 0)
                        .with("heads.azimuthArcMinutes", 0)
                        .with("electronics.upperEdgeHz", 20_000)
                        .with("electronics.upperOrder", "1")
                        .with("hiss.levelDb", -60));
    }

    private static Machine worn() {
        return machine(
                "worn 9.5 cm/s, azimuth 15', dull",
                48_000,
                95.25,
                3.3,
                0.2,
                MachineDraft.ordinary()
                        .with("heads.spacingLossMicrometres", 2)
                        .with("heads.gapMicrometres", 3)
                        .with("heads.azimuthArcMinutes", 15)
                        .with("saturation.secondHarmonicPercent", 1)
                        .with("saturation.emphasisMicroseconds", 50)
                        .with("hiss.levelDb", -53));
    }

    private static Machine wrongEqualisation() {
        return machine(
                "wrong equalisation 120/70 µs",
                48_000,
                190.5,
                4.1,
                0.07,
                MachineDraft.ordinary()
                        .with(
                                "electronics.equalisation",
                                "{\"tapeMicroseconds\": 120, \"replayMicroseconds\": 70}")
                        .with("saturation.kind", "\"cubic\""));
    }

    private static Machine amplifiers() {
        return machine(
                "amplifiers of order 6 and 4",
                48_000,
                190.5,
                7.7,
                0.05,
                MachineDraft.ordinary()
                        .with("electronics.upperEdgeHz", 12_000)
                        .with("electronics.upperOrder", "6")
                        .with("electronics.lowerEdgeHz", 45)
                        .with("electronics.lowerOrder", "4")
                        .with("electronics.thirdHarmonicPercent", 0.3));
    }

    private static Machine steep() {
        return machine(
                "hard curve, soft edges, 44.1 kHz",
                44_100,
                190.5,
                2.9,
                0.1,
                MachineDraft.ordinary()
                        .with("saturation.levelAtK3ThreePercentDb", 3)
                        .with("saturation.emphasisMicroseconds", 70)
                        .with("electronics.upperEdgeHz", 9000)
                        .with("electronics.upperOrder", "1")
                        .with("electronics.lowerEdgeHz", 60)
                        .with("electronics.lowerOrder", "1"));
    }

    private static Machine bumpy() {
        return machine(
                "bias too high, unequal channels",
                48_000,
                190.5,
                11.3,
                0.05,
                MachineDraft.ordinary()
                        .with("bias", "{\"overDb\": 2, \"leftDb\": -1.5}")
                        .with("electronics.right.upperEdgeHz", 14_000)
                        .with("electronics.right.replayGainDb", 2.5)
                        .with("electronics.polarityInverted", "true")
                        .with("heads.bumps", "[{\"frequencyHz\": 90, \"gainDb\": 3.5, \"q\": 2}]"));
    }

    private static Machine machine(
            String name, int rateHz, double mmPerS, double lineHz, double rms, MachineDraft draft) {
        return new Machine(
                name,
                rateHz,
                mmPerS,
                draft.with("tapeSpeedMmPerS", mmPerS)
                        .with("mode", "\"two-pass\"")
                        .with("transport.components", String.format(WOW, lineHz))
                        .with("transport.randomFlutter", String.format(FLUTTER, rms)));
    }
}
