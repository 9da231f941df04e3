package offtape.report.apply.correct;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.stream.DoubleStream;
import java.util.stream.IntStream;
import offtape.core.filter.EqualiserBand;
import offtape.core.filter.EqualiserBand.Kind;

/**
 * Bands of a parametric equaliser fitted to a wanted gain: each choice of shelves, each from
 * several fixed starting points, by least squares over the logarithm of frequency; the best of
 * those that were rounded as they are dialled in is kept.
 */
final class BandFit {

    /** Bands are fitted this far beyond the band that counts, and with less weight there. */
    private static final double LOWEST_HZ = 30;

    private static final double HIGHEST_HZ = 18_000;
    private static final double LESS = 0.15;

    /** The band that counts, as far as the filter itself meets the target. */
    private static final double COUNTS_FROM_HZ = 40;

    private static final double COUNTS_TO_HZ = 15_000;

    /** A band of less does nothing that is heard, dB. */
    private static final double LEAST_GAIN_DB = 0.05;

    private static final int PER_OCTAVE = 12;

    /** What a decibel of gain is worth of a decibel of difference. */
    private static final double CALM = 0.015;

    /** What a band less to dial in is worth of a decibel of difference. */
    private static final double BAND = 0.02;

    /** What a decibel of gain weighs while the bands are looked for, and at last. */
    private static final double CALM_FIRST = 0.25;

    private static final double CALM_THEN = 0.06;

    private static final int STARTS = 3;

    private final double[] hz;
    private final double[] wanted;
    private final double[] weight;
    private final double fromHz;
    private final double toHz;
    private final BoostLimit limit;

    private BandFit(Curve gain, Stretch usable, BoostLimit limit) {
        this.limit = limit;
        fromHz = Math.max(COUNTS_FROM_HZ, usable.fromHz());
        toHz = Math.min(COUNTS_TO_HZ, usable.toHz());
        hz = Grid.over(LOWEST_HZ, HIGHEST_HZ, PER_OCTAVE);
        wanted = Arrays.stream(hz).map(gain::at).toArray();
        weight = Arrays.stream(hz).map(f -> f >= fromHz && f <= toHz ? 1 : LESS).toArray();
    }

    /**
     * Fits so many bands.
     *
     * @param gain wanted gain, 0 dB at 1 kHz
     * @param usable where it makes the return what is wanted
     * @param limit that the bands keep to as well
     * @param bands how many, at least 1
     */
    static EqualiserSettings of(Curve gain, Stretch usable, BoostLimit limit, int bands) {
        BandFit fit = new BandFit(gain, usable, limit);
        List<EqualiserSettings> found = new ArrayList<>(List.of(fit.judged(List.of())));
        for (int some = 1; some <= bands; some++) {
            for (int shelves = 0; shelves < 4; shelves++) {
                List<Kind> kinds = kinds(some, (shelves & 1) != 0, (shelves & 2) != 0);
                for (int start = 0; start < STARTS && kinds.size() == some; start++) {
                    found.add(fit.from(fit.start(kinds, start)));
                }
            }
        }
        return found.stream().min(Comparator.comparingDouble(BandFit::cost)).orElseThrow();
    }

    /** Rms and a share of the largest difference, and a little for what there is to dial in. */
    private static double cost(EqualiserSettings s) {
        double gains = s.bands().stream().mapToDouble(b -> Math.abs(b.gainDb())).sum();
        double turned = gains + Math.abs(s.trimDb());
        return s.rmsDb() + s.worstDb() / 4 + CALM * turned + BAND * s.bands().size();
    }

    private static List<Kind> kinds(int bands, boolean low, boolean high) {
        List<Kind> kinds = new ArrayList<>();
        if (low) {
            kinds.add(Kind.LOW_SHELF);
        }
        if (high) {
            kinds.add(Kind.HIGH_SHELF);
        }
        while (kinds.size() < bands) {
            kinds.add(Kind.PEAK);
        }
        return kinds;
    }

    private EqualiserSettings from(List<EqualiserBand> start) {
        BandSearch search = new BandSearch(hz, wanted, weight, limit);
        // what lies near a calm set of bands is looked for, not the nearest set of all
        List<EqualiserBand> calm = search.improved(start, false, CALM_FIRST);
        List<EqualiserBand> dialled =
                search.improved(calm, false, CALM_THEN).stream().map(Dial::near).toList();
        // frequency and Q are rounded more coarsely than gain, which then makes up for it
        List<EqualiserBand> best =
                search.improved(dialled, true, 0).stream().map(Dial::near).toList();
        return judged(best);
    }

    private EqualiserSettings judged(List<EqualiserBand> found) {
        List<EqualiserBand> bands =
                found.stream()
                        .filter(b -> Math.abs(b.gainDb()) >= LEAST_GAIN_DB)
                        .sorted(Comparator.comparingDouble(EqualiserBand::frequencyHz))
                        .toList();
        double trim = Dial.level(-EqualiserSettings.sum(bands, 1000));
        double[] off =
                IntStream.range(0, hz.length)
                        .filter(i -> hz[i] >= fromHz && hz[i] <= toHz)
                        .mapToDouble(i -> EqualiserSettings.gainDb(bands, hz[i]) - wanted[i])
                        .toArray();
        double squares = DoubleStream.of(off).map(x -> x * x).average().orElse(0);
        double worst = DoubleStream.of(off).map(Math::abs).max().orElse(0);
        return new EqualiserSettings(bands, trim, worst, Math.sqrt(squares), fromHz, toHz);
    }

    /** Shelves at the ends; peaks where most is missing, or spread evenly, or over the highs. */
    private List<EqualiserBand> start(List<Kind> kinds, int way) {
        List<EqualiserBand> bands = new ArrayList<>();
        for (int i = 0; i < kinds.size(); i++) {
            bands.add(
                    switch (kinds.get(i)) {
                        case LOW_SHELF -> shelf(Kind.LOW_SHELF, 100, 50);
                        case HIGH_SHELF -> shelf(Kind.HIGH_SHELF, 6000, 14_000);
                        case PEAK -> peak(bands, way, (i + 0.5) / kinds.size());
                    });
        }
        return bands;
    }

    private EqualiserBand shelf(Kind kind, double atHz, double readHz) {
        return new EqualiserBand(kind, atHz, wantedAt(readHz), EqualiserBand.SHELF_Q);
    }

    private EqualiserBand peak(List<EqualiserBand> others, int way, double share) {
        if (way == 0) {
            int most = 0;
            double[] left = new double[hz.length];
            for (int i = 0; i < hz.length; i++) {
                left[i] = weight[i] * (wanted[i] - EqualiserSettings.gainDb(others, hz[i]));
                most = Math.abs(left[i]) > Math.abs(left[most]) ? i : most;
            }
            return new EqualiserBand(Kind.PEAK, hz[most], left[most], 1.2);
        }
        double from = way == 1 ? 50 : 1500;
        double at = from * Math.pow(14_000 / from, share);
        return new EqualiserBand(Kind.PEAK, at, wantedAt(at), way == 1 ? 0.8 : 1.5);
    }

    private double wantedAt(double frequencyHz) {
        return new Curve(hz, wanted).at(frequencyHz);
    }
}
