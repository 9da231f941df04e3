package offtape.report.benchmark;

import java.util.Arrays;
import java.util.stream.Stream;
import offtape.core.dsp.RealFft;
import offtape.core.dsp.Spectrum;
import offtape.core.programme.Cue;
import offtape.core.programme.CueSheet;
import offtape.core.programme.ProgrammeSignal;
import offtape.report.locate.ProgrammeReturn;
import offtape.report.measure.tone.ReferenceLevels;

/**
 * The transforms that no way of measuring a return gets around, each done once by the project's own
 * {@link RealFft}, zeros filling up to a power of two, on one thread:
 *
 * <ul>
 *   <li>location: the first 20 s and the 5 s about the end, both channels together, correlated with
 *       the two markers (three transforms each);
 *   <li>each sweep: forward and back to an impulse response on every channel, and the sweep's own
 *       transform;
 *   <li>the long tone: forward, and a narrow band of it back to a course of time, on every channel;
 *   <li>every other tone and step of a ladder: forward on every channel;
 *   <li>the silence: forward in pieces that do not overlap, on every channel.
 * </ul>
 *
 * <p>It finds nothing: products, searches, windows, fits, uncertainties are all left out. What a
 * measurement takes beyond this is the price of its figures.
 */
final class Unavoidable {

    private static final double START_S = 20;
    private static final double END_S = 5;
    private static final double SWEEP_TAIL_S = 0.5;
    private static final int DENSITY = 1 << 14;
    private static final int COURSE = 1 << 16;
    private static final String SPEED = "speed";

    private final ProgrammeReturn ret;
    private final CueSheet sheet;
    private final double[][] programme;

    /** Of a return in which the programme is known to lie. */
    Unavoidable(ProgrammeReturn ret) {
        this.ret = ret;
        this.sheet = ret.sheet();
        this.programme = ret.programme().audio().read(0, Math.toIntExact(sheet.frames()));
    }

    /** Does them all; the sum of a bin of each, so that none is left out for being unused. */
    double transform(double[][] x) {
        double sum = location(x);
        for (Cue.Sweep sweep : ret.cues(Cue.Sweep.class)) {
            sum += sweep(x, sweep);
        }
        for (Cue.Silence silence : ret.cues(Cue.Silence.class)) {
            sum += silence(x, silence);
        }
        Stream<Cue.Tone> steps =
                ret.cues(Cue.Ladder.class).stream().flatMap(ReferenceLevels::steps);
        for (Cue.Tone tone : Stream.concat(ret.cues(Cue.Tone.class).stream(), steps).toList()) {
            sum += tone.id().equals(SPEED) ? longTone(x, tone) : tone(x, tone);
        }
        return sum;
    }

    private double location(double[][] x) {
        double sum = 0;
        for (Cue.Marker marker : ret.cues(Cue.Marker.class)) {
            boolean first = marker.id().equals(ProgrammeSignal.START_MARKER);
            int length = frames(first ? START_S : END_S);
            int from = first ? 0 : Math.max(0, start(marker) - length / 2);
            double[] both = part(x[0], from, length);
            double[] right = part(x[1], from, length);
            Arrays.setAll(both, i -> both[i] + right[i]);
            sum += correlated(both, own(marker))[0];
        }
        return sum;
    }

    private double sweep(double[][] x, Cue.Sweep sweep) {
        double[] own = own(sweep);
        RealFft fft = fft(own.length + frames(SWEEP_TAIL_S));
        Spectrum reference = fft.forward(own);
        double sum = 0;
        for (double[] channel : x) {
            double[] heard = part(channel, start(sweep), own.length + frames(SWEEP_TAIL_S));
            sum += fft.inverse(fft.forward(heard).timesConjugate(reference))[0];
        }
        return sum;
    }

    private double silence(double[][] x, Cue.Silence silence) {
        RealFft fft = RealFft.ofSize(DENSITY);
        double sum = 0;
        for (double[] channel : x) {
            int end = Math.min(channel.length, start(silence) + (int) silence.frames());
            for (int at = start(silence); at + DENSITY <= end; at += DENSITY) {
                sum += fft.forward(channel, at, DENSITY).power(1);
            }
        }
        return sum;
    }

    private double longTone(double[][] x, Cue.Tone tone) {
        RealFft back = RealFft.ofSize(COURSE);
        double sum = 0;
        for (double[] channel : x) {
            Spectrum all = spectrum(channel, tone);
            int middle = (int) (tone.frequencyHz() / all.binHz(sheet.sampleRateHz()));
            double[] re = new double[COURSE / 2 + 1];
            double[] im = new double[COURSE / 2 + 1];
            Arrays.setAll(re, k -> all.re(middle + k - COURSE / 4));
            Arrays.setAll(im, k -> all.im(middle + k - COURSE / 4));
            sum += back.inverse(Spectrum.of(COURSE, re, im))[0];
        }
        return sum;
    }

    private double tone(double[][] x, Cue.Tone tone) {
        return Arrays.stream(x).mapToDouble(channel -> spectrum(channel, tone).power(1)).sum();
    }

    private Spectrum spectrum(double[] channel, Cue cue) {
        int length = (int) cue.frames();
        return fft(length).forward(part(channel, start(cue), length));
    }

    private static double[] correlated(double[] heard, double[] wanted) {
        RealFft fft = fft(heard.length);
        return fft.inverse(fft.forward(heard).timesConjugate(fft.forward(wanted)));
    }

    private double[] own(Cue cue) {
        return part(programme[0], (int) cue.startFrame(), (int) cue.frames());
    }

    private int start(Cue cue) {
        double seconds = ret.map().recordingSeconds(sheet.seconds(cue.startFrame()));
        return frames(seconds);
    }

    private int frames(double seconds) {
        return (int) Math.round(seconds * sheet.sampleRateHz());
    }

    private static RealFft fft(int length) {
        return RealFft.ofSize(RealFft.nextPowerOfTwo(length));
    }

    private static double[] part(double[] x, int from, int length) {
        return Arrays.copyOfRange(x, from, Math.min(x.length, from + length));
    }
}
