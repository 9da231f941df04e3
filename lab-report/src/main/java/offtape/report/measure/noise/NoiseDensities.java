package offtape.report.measure.noise;

import java.util.Comparator;
import java.util.Optional;
import offtape.core.dsp.PowerDensity;
import offtape.core.programme.Cue;
import offtape.report.locate.ProgrammeReturn;

/**
 * The noise of recorded silence on each channel.
 *
 * @param samples the silence itself, one array a channel
 * @param densities its power density, one a channel
 */
public record NoiseDensities(double[][] samples, PowerDensity[] densities) {

    private static final int TRANSFORM = 1 << 14;

    /** Keeps clear of the parts before and after, whose ends may ring or lie a little off. */
    private static final double MARGIN_S = 0.15;

    private static final double SHORTEST_S = 0.5;

    /** So much of it tells all that is told of noise; more would only take memory. */
    static final double LONGEST_S = 60;

    /** Measures the longest silence in the recording, if there is one: a minute of it at most. */
    public static Optional<NoiseDensities> measure(ProgrammeReturn ret) {
        return span(ret).map(ret::read).map(x -> of(x, ret.recording().sampleRateHz()));
    }

    /** Where that lies in the recording, clear of the silence's ends. */
    public static Optional<ProgrammeReturn.Span> span(ProgrammeReturn ret) {
        return ret.cues(Cue.Silence.class).stream()
                .max(Comparator.comparingLong(Cue::frames))
                .map(s -> ret.span(s.startFrame(), s.frames(), MARGIN_S).beginning(LONGEST_S))
                .filter(span -> span.seconds() >= SHORTEST_S);
    }

    private static NoiseDensities of(double[][] x, int rate) {
        PowerDensity[] densities = new PowerDensity[x.length];
        for (int c = 0; c < x.length; c++) {
            densities[c] = PowerDensity.of(x[c], rate, TRANSFORM);
        }
        return new NoiseDensities(x, densities);
    }
}
