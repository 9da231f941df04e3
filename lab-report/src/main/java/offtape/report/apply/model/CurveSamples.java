package offtape.report.apply.model;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import offtape.report.apply.model.CurveSample.Kind;
import offtape.report.result.Distortion;
import offtape.report.result.HarmonicCurve;
import offtape.report.result.LadderStep;
import offtape.report.result.LevelDependence;
import offtape.report.result.Response;
import offtape.report.result.Results;

/** All that a session tells of the curve of one channel. */
final class CurveSamples {

    private static final double MOST_LADDER_HZ = 2000;
    private static final double OWN_SHARE = 0.004;
    private static final double OWN_SWEEP_SHARE = 0.02;
    private static final double OWN_RATIO = 2e-5;
    private static final double OWN_DB = 0.01;
    private static final double OWN_HIGH_DB = 0.03;
    private static final double NEPERS_A_DB = Math.log(10) / 20;
    private static final double SWEEP_FROM_HZ = 200;

    private CurveSamples() {}

    /** Steps of the ladders in the mids, which tell the curve itself. */
    static List<CurveSample> mids(Results results, String channel) {
        return ladders(results, channel)
                .filter(d -> d.frequencyHz() < MOST_LADDER_HZ)
                .flatMap(d -> d.steps().stream().flatMap(s -> step(d.frequencyHz(), s)))
                .toList();
    }

    /** What tells how the curve depends on frequency: ladders in the highs and the loud sweep. */
    static List<CurveSample> overFrequency(Results results, String channel) {
        List<CurveSample> all = new ArrayList<>();
        ladders(results, channel)
                .filter(d -> d.frequencyHz() >= MOST_LADDER_HZ)
                .forEach(
                        d ->
                                d.steps()
                                        .forEach(
                                                s ->
                                                        gain(d.frequencyHz(), s, OWN_HIGH_DB)
                                                                .forEach(all::add)));
        results.response().stream()
                .filter(r -> r.channel().equals(channel))
                .forEach(
                        r -> {
                            r.harmonics().forEach(h -> all.addAll(harmonic(r.levelDb(), h)));
                            all.addAll(dependence(r));
                        });
        return all;
    }

    private static Stream<Distortion> ladders(Results results, String channel) {
        return results.distortion().stream().filter(d -> d.channel().equals(channel));
    }

    private static Stream<CurveSample> step(double hz, LadderStep s) {
        if (s.noise().leftOut()) {
            return Stream.empty();
        }
        return Stream.concat(gain(hz, s, OWN_DB), harmonics(hz, s));
    }

    private static Stream<CurveSample> gain(double hz, LadderStep s, double ownDb) {
        if (s.compressionDb() == null || s.noise().leftOut()) {
            return Stream.empty();
        }
        double noise =
                s.noise().replayUncertaintyDb() == null ? 0 : s.noise().replayUncertaintyDb() / 2;
        double db = Math.hypot(ownDb, Math.hypot(noise, OWN_SWEEP_SHARE * s.compressionDb()));
        double gain = Math.pow(10, -s.compressionDb() / 20);
        return Stream.of(
                new CurveSample(hz, s.recordLevelDb(), Kind.GAIN, gain, NEPERS_A_DB * db * gain));
    }

    private static Stream<CurveSample> harmonics(double hz, LadderStep s) {
        List<CurveSample> told = new ArrayList<>();
        double noise = s.k3FloorPercent() == null ? 0 : s.k3FloorPercent() / 100;
        if (s.k3Percent() != null) {
            told.add(
                    ratio(
                            hz,
                            s.recordLevelDb(),
                            Kind.THIRD,
                            s.k3Percent() / 100,
                            noise,
                            OWN_SHARE));
        }
        if (s.k2Percent() != null) {
            told.add(
                    ratio(
                            hz,
                            s.recordLevelDb(),
                            Kind.SECOND,
                            s.k2Percent() / 100,
                            noise,
                            OWN_SHARE));
        }
        return told.stream();
    }

    private static CurveSample ratio(
            double hz, double levelDb, Kind kind, double value, double noise, double share) {
        double own = Math.hypot(share * value, OWN_RATIO);
        return new CurveSample(hz, levelDb, kind, value, Math.hypot(own, noise));
    }

    private static List<CurveSample> harmonic(double levelDb, HarmonicCurve curve) {
        Kind kind = curve.order() == 2 ? Kind.SECOND : Kind.THIRD;
        return curve.points().stream()
                .filter(p -> p.standsOut() && p.frequencyHz() > SWEEP_FROM_HZ)
                .map(
                        p ->
                                ratio(
                                        p.frequencyHz(),
                                        levelDb,
                                        kind,
                                        p.percent() / 100,
                                        p.uncertaintyPercent() / 200,
                                        OWN_SWEEP_SHARE))
                .toList();
    }

    private static List<CurveSample> dependence(Response response) {
        LevelDependence d = response.levelDependence();
        if (d == null) {
            return List.of();
        }
        return IntStream.range(0, d.frequencyHz().length)
                .filter(i -> i % 4 == 0 && d.frequencyHz()[i] > SWEEP_FROM_HZ)
                .mapToObj(
                        i ->
                                new CurveSample(
                                        d.frequencyHz()[i],
                                        response.levelDb(),
                                        Kind.DEPENDENCE,
                                        d.differenceDb()[i],
                                        Math.hypot(OWN_DB, d.uncertaintyDb()[i] / 2)))
                .toList();
    }
}
