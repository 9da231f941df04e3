package offtape.core.dsp;

import java.util.ArrayList;
import java.util.List;
import offtape.core.audio.AudioSource;

/**
 * Shifts a carrier to 0 Hz, keeps what lies around it and thins the samples. Works through the
 * recording in blocks, so that only the result takes memory.
 */
public final class Downconverter {

    private static final int BLOCK = 1 << 15;
    private static final double ATTENUATION_DB = 90;

    private final LowPass filter;
    private final int step;

    private Downconverter(LowPass filter, int step) {
        this.filter = filter;
        this.step = step;
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
        LowPass filter = LowPass.design(passHz, stopHz, ATTENUATION_DB, sampleRateHz);
        double rate = Math.max(leastRateHz, 1.25 * (passHz + stopHz));
        int step = Math.max(1, (int) Math.floor(sampleRateHz / rate));
        return new Downconverter(filter, step);
    }

    /** The low-pass filter in use. */
    public LowPass filter() {
        return filter;
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
        if (source.sampleRateHz() != filter.sampleRateHz()) {
            throw new IllegalArgumentException("made for another sample rate");
        }
        double rate = source.sampleRateHz();
        long firstFrame = (long) Math.ceil(fromSeconds * rate);
        int outputs = (int) Math.max(0, Math.ceil((toSeconds * rate - firstFrame) / step));
        double[][] re = new double[source.channels()][outputs];
        double[][] im = new double[source.channels()][outputs];
        int perBlock = Math.max(1, BLOCK / step);
        for (int k = 0; k < outputs; k += perBlock) {
            int count = Math.min(perBlock, outputs - k);
            block(source, firstFrame + (long) k * step, k, count, law, re, im);
        }
        List<Baseband> bands = new ArrayList<>();
        for (int c = 0; c < re.length; c++) {
            bands.add(new Baseband(re[c], im[c], rate / step, firstFrame / rate));
        }
        return bands;
    }

    private void block(
            AudioSource source,
            long frame,
            int k,
            int count,
            PhaseLaw law,
            double[][] re,
            double[][] im) {
        int length = (count - 1) * step + filter.taps().length;
        long start = frame - filter.half();
        double[][] x = source.read(start, length);
        double[] cos = new double[length];
        double[] sin = new double[length];
        double rate = source.sampleRateHz();
        law.fill(start / rate, 1 / rate, cos, sin);
        double[] mixed = new double[length];
        for (int c = 0; c < x.length; c++) {
            for (int i = 0; i < length; i++) {
                mixed[i] = x[c][i] * cos[i];
            }
            thin(mixed, k, count, 1, re[c]);
            for (int i = 0; i < length; i++) {
                mixed[i] = x[c][i] * sin[i];
            }
            thin(mixed, k, count, -1, im[c]);
        }
    }

    private void thin(double[] mixed, int k, int count, double sign, double[] out) {
        double[] taps = filter.taps();
        int half = taps.length / 2;
        for (int j = 0; j < count; j++) {
            int middle = j * step + half;
            double sum = taps[half] * mixed[middle];
            for (int i = 1; i <= half; i++) {
                sum += taps[half + i] * (mixed[middle - i] + mixed[middle + i]);
            }
            out[k + j] = sign * sum;
        }
    }
}
