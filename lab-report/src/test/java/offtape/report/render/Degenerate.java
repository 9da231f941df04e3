package offtape.report.render;

import java.util.List;
import java.util.stream.Stream;
import offtape.core.unit.Quantity;
import offtape.report.result.Channels;
import offtape.report.result.Distortion;
import offtape.report.result.HealthNote;
import offtape.report.result.HumLine;
import offtape.report.result.LadderStep;
import offtape.report.result.Noise;
import offtape.report.result.NoiseSpectrum;
import offtape.report.result.Response;
import offtape.report.result.Results;
import offtape.report.result.Session;
import offtape.report.result.Speed;
import offtape.report.result.SpeedComponent;
import offtape.report.result.SpeedSpectrum;
import offtape.report.result.SpeedTrace;
import offtape.report.result.StepNoise;
import offtape.report.result.Timing;
import offtape.report.result.Verdict;

/** Sessions in which things are missing, cut to one point, zero, or meant to do harm. */
final class Degenerate {

    static final String HOSTILE =
            "</title></script>\"'><img src=x onerror=alert(1)> ${x} &amp; {0}";

    private static final Quantity NO = Scenario.UNKNOWN;
    private static final double[] NONE = {};

    private Degenerate() {}

    static Stream<Results> all() {
        return Stream.of(
                Scenario.empty(null),
                Scenario.empty("  "),
                oneChannelDead(),
                everythingUnknown(),
                onePointCurves(NO),
                onePointCurves(Scenario.known(1200, "Hz", 0)),
                allZero(),
                hostile(),
                judged());
    }

    static Results hostile() {
        Results whole = Scenario.before();
        Session session =
                new Session(HOSTILE, HOSTILE, 190.5, HOSTILE, HOSTILE, HOSTILE, HOSTILE, HOSTILE);
        Speed speed = whole.speed();
        Speed named =
                new Speed(
                        Quantity.unknown(HOSTILE),
                        speed.drift(),
                        speed.weightedPeak(),
                        speed.weightedTwoSigma(),
                        speed.weightedRms(),
                        speed.unweightedPeak(),
                        speed.unweightedRms(),
                        speed.wowRms(),
                        speed.flutterRms(),
                        speed.weightedFloor(),
                        3150.0,
                        List.of(SpeedComponent.steady(2, 0.1, HOSTILE, 0, 0)),
                        speed.trace(),
                        speed.spectrum(),
                        speed.fromSeconds(),
                        speed.seconds(),
                        speed.bandHz(),
                        speed.americanRms(),
                        speed.floors(),
                        speed.readings(),
                        speed.worstTenSeconds(),
                        List.of(HOSTILE),
                        null,
                        null,
                        speed.transport(),
                        Quantity.unknown(HOSTILE),
                        null);
        return Scenario.with(
                session,
                whole.timing(),
                named,
                whole.response(),
                whole.distortion(),
                whole.noise(),
                whole.channels(),
                List.of(new HealthNote("warning", HOSTILE, HOSTILE)));
    }

    private static Results oneChannelDead() {
        Results whole = Scenario.before();
        return Scenario.with(
                whole.session(),
                whole.timing(),
                whole.speed(),
                whole.response().stream().filter(r -> r.channel().equals("right")).toList(),
                whole.distortion().stream().filter(d -> d.channel().equals("right")).toList(),
                whole.noise().stream().filter(n -> n.channel().equals("right")).toList(),
                null,
                List.of(new HealthNote("blocking", "dead", "The left channel is silent.")));
    }

    private static Results everythingUnknown() {
        LadderStep lost =
                new LadderStep(0, null, null, null, null, null, null, true, StepNoise.NOT_HEARD);
        return Scenario.with(
                Scenario.before().session(),
                new Timing(NO, NO, NO, null, NO),
                speed(null, null),
                List.of(
                        new Response(
                                "left", -20, NONE, NONE, NONE, NO, NO, NO, 0, 0, List.of(),
                                List.of(), null, List.of())),
                List.of(
                        new Distortion(
                                "left",
                                1000,
                                List.of(lost, lost),
                                NO,
                                NO,
                                NO,
                                NO,
                                NO,
                                NO,
                                NO,
                                null,
                                null),
                        new Distortion(
                                "right", 1000, List.of(), NO, NO, NO, NO, NO, NO, NO, null, null)),
                List.of(new Noise("left", NO, NO, NO, NO, List.of(), null, null, NO, NO, NO)),
                Channels.unknown("This recording cannot tell."),
                List.of());
    }

    private static Results onePointCurves(Quantity edge) {
        double[] one = {1000};
        double[] zero = {0};
        LadderStep step =
                new LadderStep(0, 0.0, 0.1, 0.5, 0.51, 0.0, 0.01, false, StepNoise.NOT_HEARD);
        return Scenario.with(
                Scenario.before().session(),
                null,
                speed(new SpeedTrace(zero, zero, zero), new SpeedSpectrum(one, one)),
                List.of(
                        new Response(
                                "left", -20, one, zero, zero, edge, edge, NO, 0, 0, List.of(),
                                List.of(), null, List.of())),
                List.of(
                        new Distortion(
                                "left",
                                1000,
                                List.of(step),
                                NO,
                                NO,
                                NO,
                                NO,
                                NO,
                                NO,
                                NO,
                                null,
                                null)),
                List.of(
                        new Noise(
                                "left",
                                NO,
                                NO,
                                NO,
                                NO,
                                List.of(new HumLine(0, -60, 0), new HumLine(50, -300, 0)),
                                new NoiseSpectrum(one, new double[] {-70}),
                                one,
                                NO,
                                NO,
                                NO)),
                null,
                List.of());
    }

    private static Results allZero() {
        double[] zero = {0, 0, 0};
        LadderStep step =
                new LadderStep(0, 0.0, 0.0, 0.0, 0.0, 0.0, 0.0, false, StepNoise.NOT_HEARD);
        return Scenario.with(
                Scenario.before().session(),
                null,
                speed(new SpeedTrace(zero, zero, zero), new SpeedSpectrum(zero, zero)),
                List.of(
                        new Response(
                                "right", 0, zero, zero, zero, NO, NO, NO, 0, 0, List.of(),
                                List.of(), null, List.of())),
                List.of(
                        new Distortion(
                                "right",
                                0,
                                List.of(step, step),
                                NO,
                                NO,
                                NO,
                                NO,
                                NO,
                                NO,
                                NO,
                                null,
                                null),
                        new Distortion(
                                "right",
                                10_000,
                                List.of(step, step),
                                NO,
                                NO,
                                NO,
                                NO,
                                NO,
                                NO,
                                NO,
                                null,
                                null)),
                List.of(
                        new Noise(
                                "right",
                                NO,
                                NO,
                                NO,
                                NO,
                                List.of(),
                                new NoiseSpectrum(zero, zero),
                                zero,
                                NO,
                                NO,
                                NO)),
                null,
                List.of());
    }

    private static Results judged() {
        Results whole = Scenario.before();
        return new Results(
                Results.FORMAT,
                Results.VERSION,
                whole.session(),
                whole.timing(),
                whole.speed(),
                whole.response(),
                whole.distortion(),
                whole.noise(),
                whole.channels(),
                List.of(),
                whole.health(),
                new Verdict(
                        "service",
                        null,
                        List.of("The right channel is dull."),
                        List.of(
                                new Verdict.Check(
                                        "balance",
                                        -0.84,
                                        "± 2 dB",
                                        "pass",
                                        "shop rule",
                                        null,
                                        null,
                                        null,
                                        null),
                                new Verdict.Check(
                                        "azimuth",
                                        null,
                                        "± 2 arc min",
                                        "unknown",
                                        null,
                                        null,
                                        null,
                                        null,
                                        null)),
                        List.of(
                                new Verdict.Fault(
                                        "azimuth",
                                        "Azimuth of the replay head",
                                        null,
                                        0.8,
                                        List.of("delay between the channels"),
                                        List.of(),
                                        "Set the azimuth of the replay head.",
                                        "Keep fingers off moving reels.")),
                        null,
                        List.of(),
                        List.of()),
                null,
                null,
                null,
                List.of());
    }

    private static Speed speed(SpeedTrace trace, SpeedSpectrum spectrum) {
        return new Speed(
                NO, NO, NO, NO, NO, NO, NO, NO, NO, NO, null, List.of(), trace, spectrum, null,
                null, null, NO, null, null, null, List.of());
    }
}
