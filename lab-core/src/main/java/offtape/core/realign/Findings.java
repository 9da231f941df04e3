package offtape.core.realign;

import java.util.List;
import java.util.OptionalDouble;
import offtape.core.align.Alignment;
import offtape.core.audio.AudioSource;

/** Puts what a tracker found into words of numbers. */
final class Findings {

    /** How many standard uncertainties a difference may have and still be none. */
    private static final double COVERAGE = 3;

    /** Rounding and interpolation, found by trial on such paths. */
    private static final double LEAST_DOUBT_FRAMES = 5e-4;

    private static final double LEAST_DOUBT_OF_GAIN = 1e-5;

    private static final double LOW_HZ = 500;
    private static final double HIGH_HZ = 8000;

    private final Tracked tracked;
    private final double rate;

    private Findings(Tracked tracked, double rate) {
        this.tracked = tracked;
        this.rate = rate;
    }

    static FoundTrack of(
            Tracked tracked, AudioSource original, AudioSource returned, OptionalDouble other) {
        Findings f = new Findings(tracked, original.sampleRateHz());
        StraightLine line = tracked.line();
        Alignment exact = f.alignment();
        Alignment taken = WholePath.taken(exact, original, returned);
        boolean isSame = taken != exact;
        return new FoundTrack(
                taken,
                isSame ? LEAST_DOUBT_FRAMES : f.delayDoubt(),
                isSame ? 0 : 1e6 * (1 / line.step() - 1),
                1e6 * f.stepDoubt(),
                isSame ? f.steady(taken) : f.warp(),
                f.coherence(new Windows(original, returned, Tracker.SHORT_S)),
                tracked.slope().isWithin(),
                other);
    }

    private double delayDoubt() {
        return Math.max(
                LEAST_DOUBT_FRAMES, Math.hypot(tracked.line().doubt(), tracked.slope().doubt()));
    }

    private double stepDoubt() {
        double span = Math.max(1, tracked.line().middle());
        return Math.max(tracked.line().stepDoubt(), LEAST_DOUBT_FRAMES / span);
    }

    private Alignment alignment() {
        StraightLine line = tracked.line();
        boolean isSteady = Math.abs(line.step() - 1) < COVERAGE * stepDoubt();
        double step = isSteady ? 1 : line.step();
        double start = line.start() + (line.step() - step) * line.middle();
        // a delay that may be any part of a frame is not taken for a whole one
        double far = COVERAGE * delayDoubt();
        boolean isWhole = isSteady && far < 0.5 && Math.abs(start - Math.rint(start)) < far;
        List<Double> gains = tracked.path().stream().map(Findings::gain).toList();
        return new Alignment(isWhole ? Math.rint(start) : start, step, gains, 0, false);
    }

    /** Rms gain over the frequencies that came back clearly, with the sign of the polarity. */
    private static double gain(Transfer t) {
        double sum = 0;
        double size = 0;
        double sign = 0;
        for (int k = 0; k < t.re().length; k++) {
            double w = t.coherence()[k] / Math.max(1e-12, 1 - t.coherence()[k]);
            sum += w * t.power(k);
            size += w;
            sign += w * t.re()[k];
        }
        double gain = sum > 0 ? Math.sqrt(sum / size) : 1;
        double told = Math.abs(gain - 1) < COVERAGE * LEAST_DOUBT_OF_GAIN ? 1 : gain;
        return sign < 0 ? -told : told;
    }

    /** What samples that are the same leave of a warp: none. */
    private FoundTrack.Warp steady(Alignment taken) {
        Course course = Course.line(taken.startFrame(), 1);
        return new FoundTrack.Warp(0, 1e6 * LEAST_DOUBT_FRAMES / rate, false, List.of(), course);
    }

    private FoundTrack.Warp warp() {
        double[] frames = tracked.frames();
        double[] variances = tracked.curve().variances();
        double swing = 0;
        double doubt = 0;
        for (int k = 0; k < frames.length; k++) {
            StraightLine line = tracked.line();
            double off = tracked.course().at(frames[k]) - line.start() - line.step() * frames[k];
            swing += off * off / frames.length;
            doubt += variances[k] / frames.length;
        }
        double microseconds = 1e6 / rate;
        boolean isLine = tracked.curve().isLine();
        return new FoundTrack.Warp(
                isLine ? 0 : microseconds * Math.sqrt(swing),
                microseconds * Math.sqrt(doubt),
                !isLine,
                tracked.curve().lines().stream()
                        .map(l -> l.omega() * rate / (2 * Math.PI))
                        .toList(),
                tracked.course());
    }

    private double coherence(Windows windows) {
        double sum = 0;
        int count = 0;
        for (Transfer t : tracked.path()) {
            for (int k = windows.bin(LOW_HZ); k < windows.bin(HIGH_HZ); k++) {
                sum += t.coherence()[k];
                count++;
            }
        }
        return count > 0 ? sum / count : 0;
    }
}
