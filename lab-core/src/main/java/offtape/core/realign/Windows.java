package offtape.core.realign;

import java.util.ArrayList;
import java.util.List;
import java.util.function.BiConsumer;
import java.util.function.Consumer;
import java.util.function.Function;
import java.util.stream.IntStream;
import offtape.core.audio.AudioSource;
import offtape.core.dsp.RealFft;
import offtape.core.dsp.Spectrum;
import offtape.core.fault.Background;

/**
 * Overlapping windows of original and return side by side, the return read along a course. Sound is
 * read in stretches, so that length costs no memory.
 */
final class Windows {

    private static final double LOW_HZ = 30;
    private static final double HIGH_HZ = 16_000;
    private static final double HIGHEST_SHARE = 0.42;

    /** Windows that are read at once. */
    private static final int BLOCK = 24;

    private final AudioSource original;
    private final AudioSource returned;
    private final RealFft fft;
    private final double[] shape;
    private final int lowBin;
    private final int bins;

    /**
     * Windows.
     *
     * @param seconds length of each, about
     */
    Windows(AudioSource original, AudioSource returned, double seconds) {
        this.original = original;
        this.returned = returned;
        int rate = original.sampleRateHz();
        int length = Integer.highestOneBit((int) Math.round(1.4 * seconds * rate));
        this.fft = RealFft.ofSize(Math.max(256, length));
        this.shape = new double[fft.size()];
        for (int i = 0; i < shape.length; i++) {
            double s = Math.sin(Math.PI * (i + 0.5) / shape.length);
            shape[i] = s * s;
        }
        this.lowBin = Math.max(1, (int) Math.round(LOW_HZ * fft.size() / rate));
        double high = Math.min(HIGH_HZ, HIGHEST_SHARE * rate);
        this.bins = (int) (high * fft.size() / rate) - lowBin + 1;
    }

    /** Frames of a window. */
    int length() {
        return fft.size();
    }

    /** Frames from one window to the next. */
    int hop() {
        return fft.size() / 2;
    }

    int channels() {
        return returned.channels();
    }

    int sampleRateHz() {
        return original.sampleRateHz();
    }

    /** Number of bins of a spectrum that are looked at. */
    int bins() {
        return bins;
    }

    /** Angular frequency of a bin, radians a frame. */
    double omega(int bin) {
        return 2 * Math.PI * (lowBin + bin) / fft.size();
    }

    /** Frequency of a bin, hertz. */
    double hertz(int bin) {
        return (double) (lowBin + bin) * original.sampleRateHz() / fft.size();
    }

    /** Number of the bin at or above a frequency. */
    int bin(double hertz) {
        int k = (int) Math.ceil(hertz * fft.size() / original.sampleRateHz()) - lowBin;
        return Math.max(0, Math.min(bins, k));
    }

    /**
     * One window on all channels.
     *
     * @param number which
     * @param frame about when in the original its sound is that tells time
     * @param original spectra, a channel each
     * @param returned spectra, a channel each
     */
    record Pair(int number, double frame, List<Bins> original, List<Bins> returned) {}

    /** The bins of a spectrum that are looked at. */
    record Bins(double[] re, double[] im) {

        double power(int k) {
            return re[k] * re[k] + im[k] * im[k];
        }
    }

    /** A window and what was seen in it. */
    private record Seen<T>(Pair pair, T sight) {}

    /** Shows the windows of a stretch one after another. */
    void each(Stretch stretch, Course course, Consumer<Pair> taker) {
        each(stretch, course, pair -> null, (pair, nothing) -> taker.accept(pair));
    }

    /**
     * Shows the windows of a stretch one after another, each with what is seen in it alone.
     *
     * @param look called for several windows at once
     * @param taker called for one after another, in order
     */
    <T> void each(
            Stretch stretch, Course course, Function<Pair, T> look, BiConsumer<Pair, T> taker) {
        CourseSound straight = new CourseSound(returned, course, original.frames());
        int end = (int) ((stretch.to() + hop() - 1) / hop());
        // a window on a border belongs to one stretch, or a moment would come twice
        int begin = (int) ((stretch.from() + hop() - 1) / hop());
        for (int from = begin; from < end; from += BLOCK) {
            int to = Math.min(end, from + BLOCK);
            long first = (long) (from - 1) * hop();
            int length = (to - from + 1) * hop();
            double[][] x = original.read(first, length);
            double[][] y = straight.read(first, length);
            int base = from;
            List<Integer> within =
                    IntStream.range(from, to).filter(n -> isWithin(course, n)).boxed().toList();
            Background.each(within, n -> seen(pair(n, x, y, (n - base) * hop()), look))
                    .forEach(seen -> taker.accept(seen.pair(), seen.sight()));
        }
    }

    private static <T> Seen<T> seen(Pair pair, Function<Pair, T> look) {
        return new Seen<>(pair, look.apply(pair));
    }

    /** Whether the return was recorded through the whole of a window; what is cut tells nothing. */
    private boolean isWithin(Course course, int number) {
        double first = course.at((number - 1.0) * hop());
        double last = course.at((number + 1.0) * hop());
        return first >= 0 && last <= returned.frames();
    }

    private Pair pair(int number, double[][] x, double[][] y, int offset) {
        double middle = (double) number * hop() + centroid(x, offset) - hop();
        List<Bins> one = new ArrayList<>();
        List<Bins> other = new ArrayList<>();
        for (double[] channel : y) {
            other.add(spectrum(channel, offset));
        }
        for (double[] channel : x) {
            one.add(spectrum(channel, offset));
        }
        while (one.size() < other.size()) {
            one.add(one.get(0));
        }
        return new Pair(number, middle, one, other);
    }

    private Bins spectrum(double[] x, int offset) {
        double[] part = new double[shape.length];
        for (int i = 0; i < part.length; i++) {
            part[i] = shape[i] * x[offset + i];
        }
        Spectrum s = fft.forward(part);
        double[] re = new double[bins];
        double[] im = new double[bins];
        for (int k = 0; k < bins; k++) {
            re[k] = s.re(lowBin + k);
            im[k] = s.im(lowBin + k);
        }
        return new Bins(re, im);
    }

    /** Where in a window it happens that tells time: the mean place of the power of the slope. */
    private double centroid(double[][] x, int offset) {
        double sum = 1e-30;
        double moment = sum * hop();
        for (double[] channel : x) {
            for (int i = 1; i < shape.length; i++) {
                double slope = shape[i] * (channel[offset + i] - channel[offset + i - 1]);
                sum += slope * slope;
                moment += i * slope * slope;
            }
        }
        return moment / sum;
    }
}
