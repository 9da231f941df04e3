package offtape.report.apply.level;

import java.util.Comparator;
import java.util.List;
import java.util.function.DoublePredicate;
import offtape.report.result.Distortion;
import offtape.report.result.FittedCurve;
import offtape.report.result.LadderStep;

/**
 * Compression over record level on a channel, read off the smooth curve of a ladder, or off its
 * steps where they are too few for one.
 *
 * @param ladder the ladder
 * @param recordDb record levels of its smooth curve, rising, dB re reference
 * @param compressionDb compression there, dB
 */
public record Compression(Distortion ladder, double[] recordDb, double[] compressionDb) {

    /** A ladder from here up tells of the highs. */
    private static final double HIGH_HZ = 6000;

    private static final double HIGHS_HZ = 10_000;
    private static final double MIDDLE_HZ = 1000;

    /** The ladder of the highs that lies nearest to 10 kHz, or null if there is none. */
    public static Compression ofHighs(List<Distortion> ladders, String channel) {
        return of(ladders, channel, hz -> hz >= HIGH_HZ, HIGHS_HZ);
    }

    /** The ladder of the middle that lies nearest to 1 kHz, or null if there is none. */
    public static Compression ofMiddle(List<Distortion> ladders, String channel) {
        return of(ladders, channel, hz -> hz < HIGH_HZ, MIDDLE_HZ);
    }

    private static Compression of(
            List<Distortion> ladders, String channel, DoublePredicate counts, double nearHz) {
        return ladders.stream()
                .filter(d -> d.channel().equals(channel) && counts.test(d.frequencyHz()))
                .filter(d -> d.steps().stream().filter(Compression::tellsGain).count() > 1)
                .min(Comparator.comparingDouble(d -> Math.abs(Math.log(d.frequencyHz() / nearHz))))
                .map(Compression::read)
                .orElse(null);
    }

    private static boolean tellsGain(LadderStep s) {
        return s.replayLevelDb() != null && s.compressionDb() != null && !s.noise().leftOut();
    }

    private static Compression read(Distortion d) {
        List<LadderStep> steps = d.steps().stream().filter(Compression::tellsGain).toList();
        FittedCurve curve = d.replayCurve();
        if (curve == null || curve.value().length < 2) {
            return new Compression(
                    d,
                    steps.stream().mapToDouble(LadderStep::recordLevelDb).toArray(),
                    steps.stream().mapToDouble(LadderStep::compressionDb).toArray());
        }
        LadderStep step = steps.get(0);
        // of every step replay and compression together are record level and small-signal gain
        double gain = step.replayLevelDb() + step.compressionDb() - step.recordLevelDb();
        double[] compression = new double[curve.value().length];
        for (int i = 0; i < compression.length; i++) {
            compression[i] = curve.recordLevelDb()[i] + gain - curve.value()[i];
        }
        return new Compression(d, curve.recordLevelDb(), compression);
    }

    /** Lowest level that the ladder tells of, dB re reference. */
    public double lowestDb() {
        return recordDb[0];
    }

    /** Highest level that it tells of, dB re reference. */
    public double highestDb() {
        return recordDb[recordDb.length - 1];
    }

    /** Compression in dB at a record level, or null above the ladder. Below it there is none. */
    public Double compressionAt(double levelDb) {
        if (levelDb > highestDb() + 1e-9) {
            return null;
        }
        if (levelDb < lowestDb()) {
            // it goes with the square of the amplitude, as the third-order term of a curve does
            double there = Math.max(0, compressionDb[0]);
            return there * Math.pow(10, (levelDb - lowestDb()) / 10);
        }
        int i = 1;
        while (i < recordDb.length - 1 && recordDb[i] < levelDb) {
            i++;
        }
        double part = (levelDb - recordDb[i - 1]) / (recordDb[i] - recordDb[i - 1]);
        double db = compressionDb[i - 1] + part * (compressionDb[i] - compressionDb[i - 1]);
        return Math.max(0, db);
    }

    /** The lowest record level at which compression reaches a value, or NaN. */
    public double levelAt(double db) {
        for (int i = 1; i < recordDb.length; i++) {
            double low = compressionDb[i - 1];
            if (low < db && compressionDb[i] >= db) {
                double part = (db - low) / (compressionDb[i] - low);
                return recordDb[i - 1] + part * (recordDb[i] - recordDb[i - 1]);
            }
        }
        return Double.NaN;
    }
}
