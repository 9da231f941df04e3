package offtape.report.fault;

import offtape.report.measure.MachineDraft;

/**
 * Sound machines as a workshop sees them (common practice, no source): none like the other, none
 * with anything to mend.
 */
final class SoundMachines {

    private static final double[] REEL_MM_PER_S = {95.25, 190.5, 190.5, 381};
    private static final double CASSETTE_MM_PER_S = 47.6;

    /** Share of machines that play cassettes. */
    private static final double CASSETTES = 0.35;

    private final Draws draw;
    private final boolean cassette;
    private final double mmPerS;

    private SoundMachines(Draws draw) {
        this.draw = draw;
        this.cassette = draw.chance(CASSETTES);
        this.mmPerS = cassette ? CASSETTE_MM_PER_S : REEL_MM_PER_S[draw.oneOf(4)];
    }

    /**
     * Draws one.
     *
     * @param full share of machines on which the full programme is played
     */
    static Workshop draw(Draws draw, double full) {
        SoundMachines m = new SoundMachines(draw);
        Workshop w =
                new Workshop(
                        MachineDraft.ordinary()
                                .with("seed", Integer.toString(1 + draw.oneOf(1_000_000)))
                                .with("tapeSpeedMmPerS", m.mmPerS),
                        m.mmPerS,
                        draw.chance(full));
        return m.noise(m.electronics(m.tape(m.motion(m.heads(w)))));
    }

    private Workshop heads(Workshop w) {
        double spacingMm = cassette ? 0.9 : 3.6;
        double lostDb = draw.between(0, cassette ? 1.8 : 1.2);
        double gapDb = draw.between(0.1, cassette ? 1.5 : 1);
        return w.with("heads.spacingLossMicrometres", lostDb / 54.6 * w.waveUm())
                .with("heads.gapMicrometres", gapUm(gapDb, w.waveUm()))
                .with("heads.trackWidthMm", cassette ? 0.6 : 2)
                .with("heads.trackSpacingMm", spacingMm)
                .with("heads.azimuthArcMinutes", arcMinutes(0.35 * draw.gaussian(), spacingMm))
                .with(
                        "heads.azimuthWander",
                        Draws.json(
                                "[{\"frequencyHz\": %.3f, \"peakArcMinutes\": %.5f}]",
                                draw.size(0.2, 4), arcMinutes(draw.size(0.02, 0.2), spacingMm)))
                .with(
                        "heads.bumps",
                        Draws.json(
                                "[{\"frequencyHz\": %.1f, \"gainDb\": %.2f, \"q\": %.2f}]",
                                draw.between(35, 110),
                                draw.between(-1.2, 2.5),
                                draw.between(0.7, 1.8)));
    }

    /** Angle of a path along the tape between two tracks, arc minutes. */
    static double arcMinutes(double micrometres, double spacingMm) {
        return Math.toDegrees(Math.atan(micrometres / 1000 / spacingMm)) * 60;
    }

    /** The gap that loses so much at a wavelength: 20·log10 sinc(1.11·g/λ), solved by halving. */
    static double gapUm(double lossDb, double waveUm) {
        double low = 0;
        double high = 0.97 * waveUm / 1.11;
        for (int i = 0; i < 60; i++) {
            double g = (low + high) / 2;
            double x = Math.PI * 1.11 * g / waveUm;
            if (-20 * Math.log10(Math.sin(x) / x) < lossDb) {
                low = g;
            } else {
                high = g;
            }
        }
        return low;
    }

    private Workshop motion(Workshop w) {
        double slow = cassette ? 2.2 : mmPerS < 100 ? 1.5 : 1;
        double capstanMm = cassette ? draw.between(1.8, 3.2) : draw.between(5, 13);
        double rollerMm = cassette ? draw.between(8, 13) : draw.between(20, 45);
        double radiusMm = cassette ? draw.between(11, 24) : draw.between(28, 90);
        String lines =
                "["
                        + line(mmPerS / Math.PI / capstanMm, slow * draw.size(0.008, 0.05))
                        + ","
                        + line(mmPerS / Math.PI / rollerMm, slow * draw.size(0.003, 0.02))
                        + "]";
        Workshop moved =
                w.with("transport.components", lines)
                        .with(
                                "transport.reels",
                                Draws.json(
                                        "{\"takeUp\": {\"radiusMm\": %.2f, \"peakPercent\": %.4f}}",
                                        radiusMm, slow * draw.size(0.005, 0.035)))
                        .with(
                                "transport.speedDeviationPercent",
                                (cassette ? 0.45 : 0.25) * draw.gaussian())
                        .with("transport.driftPercentPerMinute", 0.02 * draw.gaussian())
                        .with(
                                "transport.randomFlutter",
                                band(slow * draw.size(0.01, 0.04), 0.4, draw.between(30, 150)));
        return draw.chance(0.7)
                ? moved.with("transport.scrapeFlutter", band(draw.size(0.01, 0.05), 200, 3000))
                : moved;
    }

    private String line(double hz, double percent) {
        return Draws.json(
                "{\"frequencyHz\": %.4f, \"peakPercent\": %.4f, \"phaseDegrees\": %.1f}",
                hz, percent, draw.between(0, 360));
    }

    private static String band(double percent, double lowHz, double highHz) {
        return Draws.json(
                "{\"rmsPercent\": %.4f, \"lowHz\": %.3f, \"highHz\": %.1f}",
                percent, lowHz, highHz);
    }

    private Workshop tape(Workshop w) {
        return w.with("saturation.kind", draw.chance(0.7) ? "\"tanh\"" : "\"cubic\"")
                .with(
                        "saturation.levelAtK3ThreePercentDb",
                        cassette ? draw.between(2, 6.5) : draw.between(4.5, 10))
                .with("saturation.secondHarmonicPercent", draw.size(0.03, 0.25))
                .with(
                        "saturation.emphasisMicroseconds",
                        cassette ? draw.between(20, 45) : draw.between(8, 35))
                .with("crosstalk.leftToRightDb", draw.between(-58, -38))
                .with("crosstalk.rightToLeftDb", draw.between(-58, -38))
                .with(
                        "modulationNoise",
                        Draws.json(
                                "{\"levelDb\": %.1f, \"highHz\": %.0f}",
                                draw.between(-60, -48), draw.between(2000, 6000)))
                .with("dropouts", cassette && draw.chance(0.3) ? oneDropout() : "[]");
    }

    private String oneDropout() {
        return Draws.json(
                "[{\"channel\": \"%s\", \"atSeconds\": %.2f, \"milliseconds\": %.1f,"
                        + " \"depthDb\": %.1f}]",
                draw.chance(0.5) ? "left" : "right",
                draw.between(5, 65),
                draw.between(10, 25),
                draw.between(3, 6));
    }

    private Workshop electronics(Workshop w) {
        double balance = 0.5 * draw.gaussian();
        double upperHz = cassette ? draw.between(13_500, 18_000) : draw.between(17_000, 23_000);
        return w.with("electronics.lowerEdgeHz", draw.between(16, 35))
                .with("electronics.lowerOrder", Integer.toString(1 + draw.oneOf(2)))
                .with("electronics.upperEdgeHz", upperHz)
                .with("electronics.polarityInverted", Boolean.toString(draw.chance(0.3)))
                .with("electronics.right.recordGainDb", 0.3 * draw.gaussian())
                .with("electronics.right.replayGainDb", balance)
                .with(
                        "electronics.right.upperEdgeHz",
                        upperHz * Math.max(0.9, Math.min(1.1, 1 + 0.03 * draw.gaussian())));
    }

    private Workshop noise(Workshop w) {
        double hissDb = cassette ? draw.between(-53, -46) : draw.between(-63, -54);
        double humDb = draw.between(-88, -66);
        return w.with("hiss.levelDb", hissDb)
                .with("hiss.rightDb", hissDb + 0.4 * draw.gaussian())
                .with("hiss.tiltDbPerOctave", draw.between(0, 1.5))
                .with(
                        "hum",
                        Draws.json(
                                "{\"mainsHz\": %.3f, \"lines\": [{\"harmonic\": 1, \"levelDb\": %.1f},"
                                        + " {\"harmonic\": 2, \"levelDb\": %.1f},"
                                        + " {\"harmonic\": 3, \"levelDb\": %.1f}]}",
                                (draw.chance(0.6) ? 50 : 60) + draw.between(-0.05, 0.05),
                                humDb,
                                humDb - draw.between(0, 10),
                                humDb - draw.between(3, 15)))
                .with("recorder.startSeconds", draw.between(0.3, 2))
                .with("recorder.noiseDbfs", draw.between(-105, -92));
    }
}
