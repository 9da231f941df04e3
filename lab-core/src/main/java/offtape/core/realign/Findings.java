package offtape.core.realign;

import java.util.List;
import java.util.Optional;
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

    /**
     * How much later or earlier bass alone may come by way of a tape than what lies above it, one
     * standard deviation in seconds: high-passes of 20 to 40 Hz at 100 Hz (2π·f₀/ω² of first
     * order).
     */
    private static final double BASS_DOUBT_S = 3e-4;

    private final Tracked tracked;
    private final double rate;
    private final double step;
    private final Optional<PlainPath> plain;

    private Findings(Tracked tracked, AudioSource original, AudioSource returned) {
        this.tracked = tracked;
        this.rate = original.sampleRateHz();
        boolean isLine = tracked.curve().isLine();
        double told = toldStep();
        // short music tells the speed as poorly as the delay, so that of no difference is tried too
        Optional<PlainPath> steady =
                PlainPath.beside(along(1), original, returned, isLine && told == 1);
        this.step = steady.isPresent() ? 1 : told;
        this.plain =
                steady.isPresent() || told == 1
                        ? steady
                        : PlainPath.beside(along(told), original, returned, isLine);
    }

    static FoundTrack of(
            Tracked tracked, AudioSource original, AudioSource returned, OptionalDouble other) {
        Findings f = new Findings(tracked, original, returned);
        StraightLine line = tracked.line();
        Alignment exact = f.alignment();
        Alignment taken = WholePath.taken(exact, original, returned);
        boolean isSame = taken != exact;
        return new FoundTrack(
                taken,
                isSame ? LEAST_DOUBT_FRAMES : f.delayDoubt(),
                isSame || f.isSteadyAndPlain() ? 0 : 1e6 * (1 / line.step() - 1),
                1e6 * f.stepDoubt(),
                isSame || f.plain.isPresent() ? f.steady(taken) : f.warp(),
                f.coherence(new Windows(original, returned, Tracker.SHORT_S)),
                tracked.slope().isWithin() || f.plain.isPresent(),
                other);
    }

    private boolean isSteadyAndPlain() {
        return plain.isPresent() && step == 1;
    }

    private double delayDoubt() {
        double own =
                plain.isPresent()
                        ? plain.get().doubtFrames()
                        : Math.hypot(tracked.line().doubt(), tracked.slope().doubt());
        boolean isBass = plain.isEmpty() && !tracked.slope().isWithin();
        return Math.max(LEAST_DOUBT_FRAMES, Math.hypot(own, isBass ? BASS_DOUBT_S * rate : 0));
    }

    private double stepDoubt() {
        double span = Math.max(1, tracked.line().middle());
        return Math.max(tracked.line().stepDoubt(), LEAST_DOUBT_FRAMES / span);
    }

    private double toldStep() {
        double step = tracked.line().step();
        return Math.abs(step - 1) < COVERAGE * stepDoubt() ? 1 : step;
    }

    /** As the course lies in its middle, at a speed, with gains of 1. */
    private Alignment along(double step) {
        StraightLine line = tracked.line();
        double start = line.start() + (line.step() - step) * line.middle();
        List<Double> ones = tracked.path().stream().map(t -> 1.0).toList();
        return new Alignment(start, step, ones, 0, false);
    }

    private Alignment alignment() {
        boolean isSteady = step == 1;
        double start = along(step).startFrame() + plain.map(p -> p.lateFrames() * step).orElse(0.0);
        // a delay that may be any part of a frame is not taken for a whole one
        double far = COVERAGE * delayDoubt();
        boolean isWhole = isSteady && far < 0.5 && Math.abs(start - Math.rint(start)) < far;
        List<Double> gains =
                plain.map(p -> p.gains().stream().map(Findings::told).toList())
                        .orElseGet(() -> tracked.path().stream().map(Findings::gain).toList());
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
        return told(sign < 0 ? -gain : gain);
    }

    private static double told(double gain) {
        boolean isNone = Math.abs(Math.abs(gain) - 1) < COVERAGE * LEAST_DOUBT_OF_GAIN;
        return isNone ? Math.signum(gain) : gain;
    }

    /** What a path that only delays leaves of a warp: none. */
    private FoundTrack.Warp steady(Alignment taken) {
        Course course = Course.line(taken.startFrame(), taken.step());
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
