package offtape.core.dsp;

import java.util.ArrayList;
import java.util.List;
import offtape.core.audio.AudioSource;

/**
 * Shifts a carrier to 0 Hz, keeps what lies around it and thins the samples, in two steps: a short
 * filter to a moderate rate, then the sharp one there, which costs a fraction of the sharp one at
 * the full rate. Works through the recording in blocks, so that only the result takes memory.
 */
public final class Downconverter {

    private static final int BLOCK = 1 << 15;
    private static final double ATTENUATION_DB = 90;

    /** The moderate rate is this many times the edge of the stop band, or a little more. */
    private static final double ROOM = 6;

    private final int sampleRateHz;
    private final LowPass coarse;
    private final int coarseStep;
    private final LowPass sharp;
    private final int sharpStep;

    private Downconverter(
            int sampleRateHz, LowPass coarse, int coarseStep, LowPass sharp, int sharpStep) {
        this.sampleRateHz = sampleRateHz;
        this.coarse = coarse;
        this.coarseStep = coarseStep;
        this.sharp = sharp;
        this.sharpStep = sharpStep;
    }

    /**
     * A converter that keeps modulation up to {@code passHz} untouched and removes what lies more
     * than {@code stopHz} from the carrier by 90 dB.
     *
     * @param sampleRateHz rate of the recordings it will be given
     */
    public static Downconverter of(double passHz, double stopHz, int sampleRateHz) {
        return of(passHz, stopHz, sampleRateHz, 0);
    }

    /**
     * As above, with a result of no fewer than {@code leastRateHz} samples a second (or every
     * sample of the recording, if that is fewer).
     */
    public static Downconverter of(
            double passHz, double stopHz, int sampleRateHz, double leastRateHz) {
        double wanted = Math.max(leastRateHz, 1.25 * (passHz + stopHz));
        double moderate = Math.max(wanted, ROOM * stopHz);
        int coarseStep = Math.max(1, (int) Math.floor(sampleRateHz / moderate));
        double middleRate = (double) sampleRateHz / coarseStep;
        LowPass coarse =
                coarseStep == 1
                        ? LowPass.none(sampleRateHz)
                        : LowPass.design(passHz, middleRate - stopHz, ATTENUATION_DB, sampleRateHz);
        LowPass sharp = LowPass.design(passHz, stopHz, ATTENUATION_DB, middleRate);
        int sharpStep = Math.max(1, (int) Math.floor(middleRate / wanted));
        return new Downconverter(sampleRateHz, coarse, coarseStep, sharp, sharpStep);
    }

    /**
     * Width in hertz, both sides of the carrier together, of the ideal band that passes the same
     * power of white noise.
     */
    public double noiseBandwidthHz() {
        return sharp.noiseBandwidthHz();
    }

    /** Gain for what lies so many hertz from the carrier. */
    public double gain(double offsetHz) {
        return coarse.gain(offsetHz) * sharp.gain(offsetHz);
    }

    /** Samples a second of the results. */
    public double rateHz() {
        return (double) sampleRateHz / (coarseStep * sharpStep);
    }

    /**
     * Converts a stretch of every channel.
     *
     * @param source recording
     * @param fromSeconds start of the stretch; the filter also sees what lies before
     * @param toSeconds end of the stretch
     * @param law phase of the carrier over the time of the recording
     * @return one entry a channel, all with the same times; empty stretches give no samples
     * @throws IllegalArgumentException if the recording has another sample rate
     */
    public List<Baseband> convert(
            AudioSource source, double fromSeconds, double toSeconds, PhaseLaw law) {
        return convert(source, fromSeconds, toSeconds, law, 1).get(0);
    }

    /**
     * Converts what lies around the carrier and around its multiples, all by the same filter.
     *
     * @param orders how many: 1 for the carrier alone, 2 with what lies at twice its phase …
     * @return one entry an order, each with one entry a channel, all with the same times
     * @throws IllegalArgumentException as above
     */
    public List<List<Baseband>> convert(
            AudioSource source, double fromSeconds, double toSeconds, PhaseLaw law, int orders) {
        int count = (int) Math.min(Integer.MAX_VALUE, outputs(fromSeconds, toSeconds));
        return convert(source, fromSeconds, 0, count, law, orders);
    }

    /** How many samples a stretch gives. */
    public long outputs(double fromSeconds, double toSeconds) {
        double frames = toSeconds * sampleRateHz - firstFrame(fromSeconds);
        return (long) Math.max(0, Math.ceil(frames / (coarseStep * sharpStep)));
    }

    /**
     * Converts a part of a stretch, for stretches too long to be held at once.
     *
     * @param fromSeconds start of the whole stretch
     * @param first number of the part's first sample within the whole
     * @param count samples of the part
     */
    public List<Baseband> convert(
            AudioSource source, double fromSeconds, long first, int count, PhaseLaw law) {
        return convert(source, fromSeconds, first, count, law, 1).get(0);
    }

    private List<List<Baseband>> convert(
            AudioSource source,
            double fromSeconds,
            long first,
            int count,
            PhaseLaw law,
            int orders) {
        if (source.sampleRateHz() != sampleRateHz) {
            throw new IllegalArgumentException("made for another sample rate");
        }
        int step = coarseStep * sharpStep;
        long firstFrame = firstFrame(fromSeconds) + first * step;
        List<List<Baseband>> bands = new ArrayList<>();
        for (int order = 1; order <= orders; order++) {
            List<Baseband> channels = new ArrayList<>();
            for (int c = 0; c < source.channels(); c++) {
                channels.add(
                        new Baseband(
                                new double[count],
                                new double[count],
                                rateHz(),
                                (double) firstFrame / sampleRateHz));
            }
            bands.add(channels);
        }
        int perBlock = Math.max(1, BLOCK / step);
        for (int k = 0; k < count; k += perBlock) {
            int some = Math.min(perBlock, count - k);
            block(source, firstFrame + (long) k * step, k, some, law, bands);
        }
        return bands;
    }

    private long firstFrame(double fromSeconds) {
        return (long) Math.ceil(fromSeconds * sampleRateHz);
    }

    private void block(
            AudioSource source,
            long frame,
            int k,
            int count,
            PhaseLaw law,
            List<List<Baseband>> bands) {
        int middle = (count - 1) * sharpStep + sharp.taps().length;
        int length = (middle - 1) * coarseStep + coarse.taps().length;
        long start = frame - (long) sharp.half() * coarseStep - coarse.half();
        double[][] x = source.read(start, length);
        double[] cos = new double[length];
        double[] sin = new double[length];
        law.fill((double) start / sampleRateHz, 1.0 / sampleRateHz, cos, sin);
        double[] carrierCos = bands.size() > 1 ? cos.clone() : cos;
        double[] carrierSin = bands.size() > 1 ? sin.clone() : sin;
        for (int order = 0; order < bands.size(); order++) {
            if (order > 0) {
                turn(cos, sin, carrierCos, carrierSin);
            }
            for (int c = 0; c < x.length; c++) {
                Baseband band = bands.get(order).get(c);
                keep(x[c], cos, 1, middle, band.re(), k, count);
                keep(x[c], sin, -1, middle, band.im(), k, count);
            }
        }
    }

    /** Turns each pointer by another, which adds their phases. */
    private static void turn(double[] cos, double[] sin, double[] byCos, double[] bySin) {
        for (int i = 0; i < cos.length; i++) {
            double c = cos[i] * byCos[i] - sin[i] * bySin[i];
            sin[i] = sin[i] * byCos[i] + cos[i] * bySin[i];
            cos[i] = c;
        }
    }

    private void keep(
            double[] x, double[] carrier, int sign, int middle, double[] out, int k, int count) {
        double[] mixed = new double[x.length];
        for (int i = 0; i < x.length; i++) {
            mixed[i] = sign * x[i] * carrier[i];
        }
        double[] thinned = new double[middle];
        coarse.thin(mixed, coarseStep, thinned, 0, middle);
        sharp.thin(thinned, sharpStep, out, k, count);
    }
}
