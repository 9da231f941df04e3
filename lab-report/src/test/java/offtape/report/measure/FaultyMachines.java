package offtape.report.measure;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.SplittableRandom;
import java.util.random.RandomGenerator;
import offtape.core.unit.TapeSpeed;

/**
 * Machines with faults drawn at random, wider than those of {@link DrawnMachines}: what uncertainty
 * has to hold for. Hiss of −80 to −45 dB, wow and flutter of rates, bands and their mixtures,
 * drift, wear, saturation early and late, hum, unlike channels, a tape that skews, a recorder whose
 * clock is off. Programmes of various lengths, so that an uncertainty has to follow from how long
 * something was heard.
 */
final class FaultyMachines {

    /** Of the recorder's clock, one standard deviation: half of what is allowed for at k = 2. */
    private static final double CLOCK_PPM = 25;

    /** How well somebody measures the distance of tracks, one standard deviation, a share. */
    private static final double SPACING_SHARE = 0.005;

    private static final double[] TAPE_MM_PER_S = {47.6, 95.25, 190.5, 190.5, 381};
    private static final int[] RATES_HZ = {
        44_100, 44_100, 44_100, 44_100, 44_100, 48_000, 48_000, 48_000, 48_000, 96_000
    };

    /**
     * A machine and what its owner says of it.
     *
     * @param trackSpacingMm as measured, not quite what it is
     */
    record Faulty(TrialMachines.Machine machine, double tapeMmPerS, double trackSpacingMm) {}

    private final SplittableRandom random;

    private FaultyMachines(SplittableRandom random) {
        this.random = random;
    }

    /** Draws machines; the first ones of a seed are the same however many are drawn. */
    static List<Faulty> draw(int count, long seed) {
        SplittableRandom seeds = new SplittableRandom(seed);
        List<Faulty> all = new ArrayList<>();
        for (int i = 0; i < count; i++) {
            all.add(new FaultyMachines(seeds.split()).machine(i));
        }
        return all;
    }

    private Faulty machine(int number) {
        double mmPerS = TAPE_MM_PER_S[random.nextInt(TAPE_MM_PER_S.length)];
        int rateHz = RATES_HZ[random.nextInt(RATES_HZ.length)];
        double spacingMm = mmPerS < 50 ? 0.9 : 3.4;
        MachineDraft draft =
                MachineDraft.ordinary()
                        .with("seed", Integer.toString(random.nextInt(1, 1_000_000)))
                        .with("tapeSpeedMmPerS", mmPerS);
        draft = motion(draft);
        draft = heads(draft, mmPerS, spacingMm * (1 + SPACING_SHARE * gaussian()));
        draft = tape(draft, mmPerS);
        draft = electronics(draft);
        draft = noise(draft);
        TapeSpeed speed = new TapeSpeed(mmPerS);
        TrialMachines.Machine machine =
                new TrialMachines.Machine(
                        String.format(Locale.ROOT, "faulty %03d", number),
                        TrialSheet.of(speed, rateHz, lengths()),
                        TrialSheet.midHz(speed),
                        draft.spec(),
                        false,
                        0,
                        0);
        return new Faulty(machine, mmPerS, spacingMm);
    }

    private TrialSheet.Lengths lengths() {
        return new TrialSheet.Lengths(
                between(0.5, 1.5),
                between(2, 4),
                between(4.5, 7),
                between(0.25, 0.5),
                between(0.4, 1),
                chance(0.6) ? between(15.5, 18) : between(9, 14),
                0,
                chance(0.3));
    }

    private MachineDraft motion(MachineDraft draft) {
        MachineDraft d =
                draft.with("transport.speedDeviationPercent", between(-3, 3))
                        .with(
                                "transport.driftPercentPerMinute",
                                chance(0.7) ? between(-0.1, 0.1) : 0);
        boolean lines = chance(0.7);
        if (lines) {
            double capstanHz = between(1, 12);
            d =
                    d.with(
                            "transport.components",
                            "["
                                    + line(capstanHz, between(0.01, 0.15))
                                    + ","
                                    + line(2 * capstanHz, between(0, 0.03))
                                    + ","
                                    + line(between(0.25, 0.9), between(0, 0.1))
                                    + "]");
        }
        if (!lines || chance(0.5)) {
            d =
                    d.with(
                            "transport.randomFlutter",
                            band(between(0.005, 0.12), between(0.3, 2), between(20, 150)));
        }
        return chance(0.4)
                ? d.with("transport.scrapeFlutter", band(between(0.01, 0.1), 60, 1500))
                : d;
    }

    private String line(double hz, double percent) {
        return String.format(
                Locale.ROOT,
                "{\"frequencyHz\": %.4f, \"peakPercent\": %.4f, \"phaseDegrees\": %.1f}",
                hz,
                percent,
                between(0, 360));
    }

    private static String band(double percent, double lowHz, double highHz) {
        return String.format(
                Locale.ROOT,
                "{\"rmsPercent\": %.4f, \"lowHz\": %.3f, \"highHz\": %.1f}",
                percent,
                lowHz,
                highHz);
    }

    private MachineDraft heads(MachineDraft draft, double mmPerS, double spacingMm) {
        double slow = Math.min(1, mmPerS / 190);
        MachineDraft d =
                draft.with("heads.spacingLossMicrometres", between(0, 1) * slow)
                        .with(
                                "heads.gapMicrometres",
                                mmPerS < 100 ? between(0.8, 1.5) : between(1.5, 4))
                        .with("heads.azimuthArcMinutes", between(-8, 8) * slow)
                        .with("heads.trackWidthMm", mmPerS < 50 ? 0.6 : 1)
                        .with("heads.trackSpacingMm", spacingMm)
                        .with(
                                "heads.bumps",
                                String.format(
                                        Locale.ROOT,
                                        "[{\"frequencyHz\": %.1f, \"gainDb\": %.2f, \"q\": %.2f}]",
                                        between(40, 120),
                                        between(-1, 3),
                                        between(0.8, 2)));
        return chance(0.5)
                ? d.with(
                        "heads.azimuthWander",
                        String.format(
                                Locale.ROOT,
                                "[{\"frequencyHz\": %.3f, \"peakArcMinutes\": %.4f,"
                                        + " \"phaseDegrees\": %.1f}]",
                                between(0.2, 4),
                                between(0.01, 0.3) * slow,
                                between(0, 360)))
                : d;
    }

    private MachineDraft tape(MachineDraft draft, double mmPerS) {
        MachineDraft d =
                draft.with("saturation.kind", chance(0.5) ? "\"tanh\"" : "\"cubic\"")
                        .with("saturation.levelAtK3ThreePercentDb", between(4, 10))
                        .with("saturation.secondHarmonicPercent", between(0, 1))
                        .with("saturation.emphasisMicroseconds", mmPerS < 100 ? 20 : between(0, 35))
                        .with("crosstalk.leftToRightDb", between(-50, -30))
                        .with("crosstalk.rightToLeftDb", between(-50, -30));
        return chance(0.3)
                ? d.with(
                        "modulationNoise",
                        String.format(
                                Locale.ROOT,
                                "{\"levelDb\": %.1f, \"highHz\": %.0f}",
                                between(-65, -45),
                                between(3500, 8000)))
                : d;
    }

    private MachineDraft electronics(MachineDraft draft) {
        double upperHz = between(13_000, 19_000);
        MachineDraft d =
                draft.with("electronics.lowerEdgeHz", between(18, 45))
                        .with("electronics.upperEdgeHz", upperHz)
                        .with("electronics.polarityInverted", Boolean.toString(chance(0.5)))
                        .with("electronics.right.recordGainDb", between(-3, 3));
        return chance(0.3)
                ? d.with("electronics.right.upperEdgeHz", upperHz * between(0.97, 1.03))
                : d;
    }

    private MachineDraft noise(MachineDraft draft) {
        double hissDb = between(-80, -45);
        MachineDraft d =
                draft.with("hiss.levelDb", hissDb)
                        .with("hiss.rightDb", hissDb + between(-2, 2))
                        .with("hiss.tiltDbPerOctave", between(-1, 2))
                        .with("recorder.startSeconds", between(0.2, 4))
                        .with("recorder.clockErrorPpm", CLOCK_PPM * gaussian());
        return chance(0.6)
                ? d.with(
                        "hum",
                        String.format(
                                Locale.ROOT,
                                "{\"mainsHz\": %.3f, \"lines\": [{\"harmonic\": 1, \"levelDb\": %.1f},"
                                        + " {\"harmonic\": 2, \"levelDb\": %.1f},"
                                        + " {\"harmonic\": 3, \"levelDb\": %.1f}]}",
                                (chance(0.5) ? 50 : 60) + between(-0.1, 0.1),
                                hissDb + between(-15, 5),
                                hissDb + between(-20, 0),
                                hissDb + between(-20, 0)))
                : d;
    }

    private boolean chance(double share) {
        return random.nextDouble() < share;
    }

    private double between(double low, double high) {
        return low + (high - low) * random.nextDouble();
    }

    private double gaussian() {
        RandomGenerator source = random;
        return source.nextGaussian();
    }
}
