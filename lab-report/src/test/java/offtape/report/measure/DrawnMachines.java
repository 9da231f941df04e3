package offtape.report.measure;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.SplittableRandom;

/**
 * Machines drawn at random from what second-hand machines are like, so that no trial is picked by
 * hand: tape speed, sample rate, speed error, wow and flutter of one or several rates or of a whole
 * band, losses, saturation, channels. Hiss is −58 dB, wow and flutter together at most 0.3 %.
 * Record emphasis and saturation are such that a sweep 20 dB under reference is compressed by less
 * than 0.05 dB at 16 kHz: by hand, K3 is 3 % at 4 dB or more, 35 µs add 11.3 dB at 16 kHz, so K3
 * there is at most 3 % · 10^(−12.7 · 2/20) = 0.16 %, and a cubic curve compresses by three times
 * that.
 */
final class DrawnMachines {

    private static final long SEED = 20_261;
    private static final double[] TAPE_MM_PER_S = {47.6, 95.25, 190.5, 190.5, 381};
    private static final int[] RATES_HZ = {
        44_100, 44_100, 48_000, 48_000, 48_000, 48_000, 48_000, 96_000
    };

    private final SplittableRandom random = new SplittableRandom(SEED);

    private DrawnMachines() {}

    static List<TrialMachines.Machine> draw(int count) {
        DrawnMachines source = new DrawnMachines();
        List<TrialMachines.Machine> all = new ArrayList<>();
        for (int i = 0; i < count; i++) {
            all.add(source.machine(i));
        }
        return all;
    }

    private TrialMachines.Machine machine(int number) {
        double mmPerS = TAPE_MM_PER_S[random.nextInt(TAPE_MM_PER_S.length)];
        int rateHz = RATES_HZ[random.nextInt(RATES_HZ.length)];
        double deviation = between(-3, 3);
        MachineDraft draft =
                motion(heads(tapeAndElectronics(MachineDraft.ordinary(), mmPerS), mmPerS))
                        .with("seed", Integer.toString(1000 + number))
                        .with("tapeSpeedMmPerS", mmPerS)
                        .with("transport.speedDeviationPercent", deviation);
        String name =
                String.format(
                        Locale.ROOT,
                        "drawn %02d: %.1f mm/s, %+.2f %%, %.1f kHz",
                        number + 1,
                        mmPerS,
                        deviation,
                        rateHz / 1000.0);
        return TrialMachines.brief(name, draft, mmPerS, rateHz, false);
    }

    private MachineDraft motion(MachineDraft draft) {
        int kind = random.nextInt(3);
        if (kind == 0) {
            String band =
                    String.format(
                            Locale.ROOT,
                            "{\"rmsPercent\": %.3f, \"lowHz\": %.2f, \"highHz\": %.0f}",
                            between(0.03, 0.2),
                            between(0.3, 2),
                            between(20, 150));
            return draft.with("transport.randomFlutter", band);
        }
        double capstanHz = between(1, 12);
        double reelHz = between(0.2, 0.9);
        String lines =
                String.format(
                        Locale.ROOT,
                        "[{\"frequencyHz\": %.3f, \"peakPercent\": %.3f, \"phaseDegrees\": %.0f},"
                                + " {\"frequencyHz\": %.3f, \"peakPercent\": %.3f},"
                                + " {\"frequencyHz\": %.3f, \"peakPercent\": %.3f}]",
                        capstanHz,
                        between(0.02, 0.15),
                        between(0, 360),
                        2 * capstanHz,
                        between(0, 0.03),
                        reelHz,
                        between(0, 0.1));
        MachineDraft moved = draft.with("transport.components", lines);
        return kind == 1
                ? moved
                : moved.with(
                        "transport.scrapeFlutter",
                        "{\"rmsPercent\": 0.03, \"lowHz\": 60, \"highHz\": 190}");
    }

    private MachineDraft heads(MachineDraft draft, double mmPerS) {
        return draft.with("heads.spacingLossMicrometres", between(0, 1) * Math.min(1, mmPerS / 190))
                .with("heads.gapMicrometres", mmPerS < 100 ? between(0.8, 1.5) : between(1.5, 4))
                .with("heads.azimuthArcMinutes", between(-8, 8) * Math.min(1, mmPerS / 190))
                .with("heads.trackWidthMm", mmPerS < 50 ? 0.6 : 1)
                .with("heads.trackSpacingMm", mmPerS < 50 ? 0.9 : 3.4)
                .with(
                        "heads.bumps",
                        String.format(
                                Locale.ROOT,
                                "[{\"frequencyHz\": %.1f, \"gainDb\": %.2f, \"q\": %.2f}]",
                                between(40, 120),
                                between(-1, 3),
                                between(0.8, 2)));
    }

    private MachineDraft tapeAndElectronics(MachineDraft draft, double mmPerS) {
        return draft.with("saturation.kind", random.nextBoolean() ? "\"tanh\"" : "\"cubic\"")
                .with("saturation.levelAtK3ThreePercentDb", between(4, 10))
                .with("saturation.secondHarmonicPercent", between(0, 0.4))
                .with("saturation.emphasisMicroseconds", mmPerS < 100 ? 20 : between(0, 35))
                .with("electronics.lowerEdgeHz", between(18, 45))
                .with("electronics.upperEdgeHz", between(13_000, 19_000))
                .with("electronics.polarityInverted", Boolean.toString(random.nextBoolean()))
                .with("electronics.right.recordGainDb", between(-3, 3))
                .with("crosstalk.leftToRightDb", between(-50, -30))
                .with("crosstalk.rightToLeftDb", between(-50, -30))
                .with("hiss.tiltDbPerOctave", between(-1, 2))
                .with("recorder.startSeconds", between(0.2, 4));
    }

    private double between(double low, double high) {
        return random.nextDouble(low, high);
    }
}
