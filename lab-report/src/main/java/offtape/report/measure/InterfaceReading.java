package offtape.report.measure;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import offtape.core.dsp.PowerDensity;
import offtape.core.unit.Decibels;
import offtape.core.unit.Quantity;
import offtape.report.locate.ProgrammeReturn;
import offtape.report.measure.noise.NoiseDensities;
import offtape.report.measure.sweep.FollowedSweep;
import offtape.report.measure.tone.ReferenceLevels;
import offtape.report.result.Channels;
import offtape.report.result.Distortion;
import offtape.report.result.HarmonicCurve;
import offtape.report.result.InterfaceFigures;
import offtape.report.result.LadderStep;
import offtape.report.result.Noise;
import offtape.report.result.Response;
import offtape.report.result.Results;

/** What the results of a loopback say of the interface, put together for later sessions. */
final class InterfaceReading {

    /** Below this noise is given line by line, so that those of the mains stay what they are. */
    private static final double FINE_TO_HZ = 1000;

    private static final double COARSE_STEP = Math.pow(2, 1.0 / 24);
    private static final double LEAST_DB = -300;

    private final Results results;
    private final ReferenceLevels reference;
    private final FollowedSweep quietest;
    private final NoiseDensities noise;

    /**
     * @param reference the reference tone, or null if it was not found
     * @param quietest the quietest sweep on both channels, or null
     * @param noise of the silence, or null
     */
    InterfaceReading(
            Results results,
            ReferenceLevels reference,
            FollowedSweep quietest,
            NoiseDensities noise) {
        this.results = results;
        this.reference = reference;
        this.quietest = quietest;
        this.noise = noise;
    }

    /**
     * The figures.
     *
     * @param delay mean delay of the loop
     */
    InterfaceFigures figures(Quantity delay) {
        Channels pair = results.channels();
        List<InterfaceFigures.Channel> channels = new ArrayList<>();
        for (int c = 0; c < results.noise().size(); c++) {
            if (reference != null && reference.heard(c)) {
                channels.add(channel(c, delay));
            }
        }
        Quantity clock = results.timing().recordingClockError();
        return new InterfaceFigures(
                delay,
                clock.isKnown() ? clock.value() : null,
                pair.interchannelDelay(),
                pair.crosstalkLeftToRight(),
                pair.crosstalkRightToLeft(),
                channels);
    }

    private InterfaceFigures.Channel channel(int c, Quantity delay) {
        String name = ProgrammeReturn.channelName(c);
        Noise own = results.noise().get(c);
        Optional<Response> quiet =
                results.response().stream()
                        .filter(r -> r.channel().equals(name) && r.frequencyHz().length > 1)
                        .min((a, b) -> Double.compare(a.levelDb(), b.levelDb()));
        List<HarmonicCurve> harmonics =
                results.response().stream()
                        .filter(r -> r.channel().equals(name) && !r.harmonics().isEmpty())
                        .findFirst()
                        .map(Response::harmonics)
                        .orElse(List.of());
        return new InterfaceFigures.Channel(
                name,
                Decibels.ofAmplitude(reference.peaks()[c]),
                ofChannel(c, delay),
                quietest == null ? null : quiet.map(r -> curve(c, r)).orElse(null),
                own.unweighted(),
                own.aWeighted(),
                own.itu468(),
                noise == null ? null : density(noise.densities()[c], reference.power(c)),
                own.hum(),
                results.distortion().stream()
                        .filter(d -> d.channel().equals(name) && !d.steps().isEmpty())
                        .map(InterfaceReading::ladder)
                        .toList(),
                harmonics);
    }

    /** The mean delay and half of what lies between the channels. */
    private Quantity ofChannel(int c, Quantity delay) {
        Quantity between = results.channels().interchannelDelay();
        if (!delay.isKnown() || !between.isKnown()) {
            return delay;
        }
        double half = between.value() / 2000;
        return Quantity.known(
                delay.value() + (c == 0 ? -half : half),
                delay.unit(),
                Math.hypot(delay.uncertainty(), between.uncertainty() / 2000));
    }

    private InterfaceFigures.Curve curve(int channel, Response response) {
        double[] phase = new double[response.frequencyHz().length];
        for (int i = 0; i < phase.length; i++) {
            int band = quietest.index(response.frequencyHz()[i]);
            double here = quietest.phase(channel, Math.max(0, Math.min(quietest.size() - 1, band)));
            double before = i == 0 ? 0 : phase[i - 1];
            double radians = Double.isNaN(here) ? before : here;
            phase[i] = radians - 2 * Math.PI * Math.rint((radians - before) / (2 * Math.PI));
        }
        for (int i = 0; i < phase.length; i++) {
            phase[i] = Math.toDegrees(phase[i]);
        }
        return new InterfaceFigures.Curve(
                response.frequencyHz(), response.magnitudeDb(), phase, response.uncertaintyDb());
    }

    private static InterfaceFigures.Density density(PowerDensity density, double zero) {
        double top = (density.bins() - 0.5) * density.binHz();
        List<Double> edges = new ArrayList<>();
        for (double edge = density.binHz() / 2;
                edge < top;
                edge +=
                        Math.max(
                                density.binHz(),
                                edge < FINE_TO_HZ ? 0 : edge * (COARSE_STEP - 1))) {
            edges.add(edge);
        }
        double[] levels = new double[edges.size() - 1];
        for (int i = 0; i < levels.length; i++) {
            double mean = density.mean(edges.get(i), edges.get(i + 1));
            levels[i] = Math.max(LEAST_DB, Decibels.ofPower(Math.max(mean, 1e-40) / zero));
        }
        return new InterfaceFigures.Density(
                edges.stream().mapToDouble(Double::doubleValue).toArray(), levels);
    }

    private static InterfaceFigures.Ladder ladder(Distortion d) {
        return new InterfaceFigures.Ladder(
                d.frequencyHz(), d.steps().stream().map(InterfaceReading::step).toList());
    }

    private static InterfaceFigures.Step step(LadderStep s) {
        return new InterfaceFigures.Step(
                s.recordLevelDb(),
                s.k2Percent() == null ? s.noise().k2BelowPercent() : s.k2Percent(),
                s.k3Percent() == null ? s.noise().k3BelowPercent() : s.k3Percent());
    }
}
