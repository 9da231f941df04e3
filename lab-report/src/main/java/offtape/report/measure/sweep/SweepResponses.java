package offtape.report.measure.sweep;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.IntStream;
import offtape.core.dsp.PowerDensity;
import offtape.core.fault.Background;
import offtape.core.programme.Cue;
import offtape.report.locate.ProgrammeReturn;
import offtape.report.measure.loopback.DistortionWithout;
import offtape.report.measure.loopback.KnownInterface;
import offtape.report.result.HarmonicCurve;
import offtape.report.result.Response;

/** The responses of a session from its followed sweeps, and what they tell together. */
public final class SweepResponses {

    private SweepResponses() {}

    /**
     * One response a sweep and channel on which it is heard.
     *
     * @param harmonics those of the loudest sweep, or null if there are none
     * @param noise density of the noise, one a channel, or null if unknown
     * @param leakage what each channel hears of the other, which is taken out
     * @param unsteadiness root mean square of slow changes of speed, a share
     */
    public static List<Response> of(
            ProgrammeReturn ret,
            List<FollowedSweep> sweeps,
            FollowedHarmonics harmonics,
            PowerDensity[] noise,
            Leakage leakage,
            double unsteadiness) {
        OptionalDouble speed = tapeSpeedMmPerS(ret);
        List<Heard> heard =
                sweeps.stream()
                        .flatMap(
                                s ->
                                        IntStream.range(0, ret.channels())
                                                .mapToObj(c -> new Heard(s, c)))
                        .toList();
        List<Optional<Response>> responses =
                Background.each(
                        heard,
                        h -> {
                            Cue.Sweep cue = h.sweep().cue();
                            double ratio = ret.speedRatio(cue.startFrame(), cue.frames());
                            PowerDensity own = noise == null ? null : noise[h.channel()];
                            Response response =
                                    new ResponseMeasure(
                                                    h.sweep(),
                                                    h.channel(),
                                                    own,
                                                    ratio,
                                                    leakage,
                                                    unsteadiness)
                                            .measure(
                                                    ProgrammeReturn.channelName(h.channel()),
                                                    speed);
                            return Optional.ofNullable(response)
                                    .map(r -> h.withHarmonics(r, harmonics, own, ratio));
                        });
        return LevelDependenceMeasure.added(responses.stream().flatMap(Optional::stream).toList());
    }

    /** A sweep on one channel. */
    private record Heard(FollowedSweep sweep, int channel) {

        Response withHarmonics(
                Response response, FollowedHarmonics harmonics, PowerDensity noise, double ratio) {
            return harmonics != null && harmonics.isOf(sweep.cue())
                    ? response.withHarmonics(
                            new SweepDistortionMeasure(harmonics, channel, noise, ratio).measure())
                    : response;
        }
    }

    /**
     * The same responses as they would be without an interface on the way: edges, bands and all
     * else read anew from the curves over its own.
     *
     * @param heard responses with the interface in them
     */
    public static List<Response> without(
            KnownInterface known, ProgrammeReturn ret, List<Response> heard) {
        List<Response> result = new ArrayList<>();
        for (Response r : heard) {
            ResponseCurve rest =
                    known.response(r.channel())
                            .map(
                                    k ->
                                            ResponseCurve.of(r)
                                                    .over(
                                                            k,
                                                            ret.speedRatio(
                                                                    0, ret.sheet().frames())))
                            .orElse(ResponseCurve.of(r));
            boolean told = rest.size() > 0;
            result.add(
                    told
                            ? ResponseMeasure.response(
                                            r.channel(), r.levelDb(), rest, tapeSpeedMmPerS(ret))
                                    .withHarmonics(harmonics(known, r))
                            : r);
        }
        return LevelDependenceMeasure.added(result);
    }

    private static List<HarmonicCurve> harmonics(KnownInterface known, Response heard) {
        return known.channel(heard.channel())
                .map(own -> new DistortionWithout(own).of(heard.harmonics()))
                .orElse(heard.harmonics());
    }

    private static OptionalDouble tapeSpeedMmPerS(ProgrammeReturn ret) {
        Double speed = ret.sheet().tapeSpeedMmPerS();
        return speed == null ? OptionalDouble.empty() : OptionalDouble.of(speed);
    }
}
