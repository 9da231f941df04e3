package offtape.report.apply.model;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import offtape.report.result.HarmonicCurve;
import offtape.report.result.LossFit;
import offtape.report.result.Response;
import offtape.report.result.Results;

/** Response and curve of one channel from a session's results. */
final class MagnitudeFit {

    private static final double RINGS = 1.25;
    private static final double MOST_DOUBT_DB = 3;
    private static final double HIGHEST_HZ = 24_000;

    private final Results results;
    private final String channel;

    MagnitudeFit(Results results, String channel) {
        this.results = results;
        this.channel = channel;
    }

    /** What the session tells, or null if it tells no response. */
    Magnitude magnitude() {
        List<Response> own =
                results.response().stream()
                        .filter(r -> isUsable(r) && r.channel().equals(channel))
                        .sorted(Comparator.comparingDouble(Response::levelDb))
                        .toList();
        if (own.isEmpty()) {
            return null;
        }
        Response quiet = own.get(0);
        double[] heard = LogGrid.sampled(settled(quiet)::at);
        BentModel bent = bent(heard, quiet.levelDb());
        bent = bent(uncompressed(heard, bent, quiet.levelDb()), quiet.levelDb());
        List<HarmonicCurve> harmonics = own.stream().flatMap(r -> r.harmonics().stream()).toList();
        return new Magnitude(
                uncompressed(heard, bent, quiet.levelDb()),
                electronic(),
                harmonics.stream().anyMatch(PhaseFit::evenTurned) ? bent.turned() : bent,
                harmonics,
                quiet);
    }

    private static boolean isUsable(Response r) {
        return r.frequencyHz() != null
                && r.magnitudeDb() != null
                && r.uncertaintyDb() != null
                && r.frequencyHz().length > 1
                && r.magnitudeDb().length == r.frequencyHz().length
                && r.uncertaintyDb().length == r.frequencyHz().length
                && (r.phaseDegrees() == null || r.phaseDegrees().length == r.frequencyHz().length);
    }

    /** The curve without its beginning, where the sweep still rings, and where noise hides it. */
    private static PointCurve settled(Response r) {
        double[] hz = r.frequencyHz();
        int[] kept =
                IntStream.range(0, hz.length)
                        .filter(i -> hz[i] >= RINGS * hz[0] && r.uncertaintyDb()[i] < MOST_DOUBT_DB)
                        .toArray();
        if (kept.length < 2) {
            return new PointCurve(hz, r.magnitudeDb());
        }
        return new PointCurve(
                IntStream.of(kept).mapToDouble(i -> hz[i]).toArray(),
                IntStream.of(kept).mapToDouble(i -> r.magnitudeDb()[i]).toArray());
    }

    private BentModel bent(double[] levelDb, double quietDb) {
        List<CurveSample> mids = CurveSamples.mids(results, channel);
        if (mids.isEmpty()) {
            return Magnitude.STRAIGHT;
        }
        CurveFit fit = new CurveFit(mids, hz -> LogGrid.at(levelDb, hz));
        return new EmphasisFit(
                        fit,
                        CurveSamples.overFrequency(results, channel),
                        hz -> LogGrid.at(levelDb, hz),
                        quietDb)
                .best();
    }

    /** Even the quietest sweep may be compressed a little in the highs. */
    private static double[] uncompressed(double[] heard, BentModel bent, double levelDb) {
        double zero = bent.gainDb(1000, levelDb);
        return LogGrid.sampled(
                hz -> LogGrid.at(heard, hz) - bent.gainDb(Math.min(hz, 24_000), levelDb) + zero);
    }

    /** What amplifiers are known to take of the highs. */
    private double[] electronic() {
        Optional<LossFit> fit =
                results.losses().stream()
                        .filter(l -> l.channel().equals(channel) && l.frequencyHz().length > 1)
                        .findFirst();
        if (fit.isEmpty()) {
            return null;
        }
        double[] hz = fit.get().frequencyHz();
        double[] sum = new double[hz.length];
        fit.get().causes().stream()
                .filter(c -> c.shareDb() != null && c.shareDb().length == hz.length)
                .forEach(
                        c -> {
                            double share = electronicShare(c.cause());
                            for (int i = 0; i < sum.length; i++) {
                                sum[i] += share * c.shareDb()[i];
                            }
                        });
        return LogGrid.sampled(new PointCurve(hz, sum)::at);
    }

    private static double electronicShare(String cause) {
        return switch (cause) {
            case "upper-edge" -> 1;
            case "equalisation" -> 0.5;
            default -> 0;
        };
    }
}
