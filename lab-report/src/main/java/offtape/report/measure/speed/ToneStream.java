package offtape.report.measure.speed;

import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.function.Consumer;
import java.util.stream.IntStream;
import offtape.core.audio.AudioSource;
import offtape.core.dsp.Baseband;
import offtape.core.dsp.Differentiator;
import offtape.core.dsp.Downconverter;
import offtape.core.dsp.PhaseLaw;
import offtape.core.fault.Background;

/**
 * The speed deviation that a steady tone shows, piece by piece, so that hours take no more memory
 * than seconds. It comes from the phase of the tone: changes of its level do not enter. Both
 * channels are taken together, each by how clear its tone is; where a channel's tone is gone or
 * struck by a click the other one tells, and where none tells a straight line bridges the gap.
 */
final class ToneStream {

    /**
     * What is known of the whole after it was read.
     *
     * @param noiseDensity one-sided density of the phase noise that the noise of the recording
     *     adds, rad²/Hz, all channels together
     * @param gaps how often no channel told the speed
     * @param bridgedSeconds for how long altogether
     */
    record Summary(double noiseDensity, int gaps, double bridgedSeconds) {}

    private static final double RATE_HZ = 1000;
    private static final double PIECE_S = 2;

    /** So many pieces are converted side by side and held. */
    private static final int AT_ONCE = 8;

    /** Share of the channels' weight that must tell, else the gap is bridged. */
    private static final double ENOUGH = 0.2;

    /** Weight that is enough in any case: the weighted floor is then some 0.0006 % at 3150 Hz. */
    private static final double CLEAR = 1e8;

    /** A tone that dips to so many times the noise around it (24 dB) still tells its phase. */
    private static final double OVER_NOISE = 16;

    private static final double LEAST_LEVEL = 0.02;
    private static final double MOST_LEVEL = 0.25;

    private final AudioSource recording;
    private final ToneBand band;
    private final Downconverter converter;
    private final double from;
    private final double nominalHz;
    private final double expectedHz;
    private final long samples;
    private final ChannelWeights weights;

    /** The pieces by which the channels were weighed, which are read again. */
    private final Map<Integer, List<Baseband>> kept = new TreeMap<>();

    private ToneStream(
            AudioSource recording, double from, double to, double nominalHz, double expectedHz) {
        this.recording = recording;
        this.band = ToneBand.of(expectedHz);
        this.converter =
                Downconverter.of(band.passHz(), band.stopHz(), recording.sampleRateHz(), RATE_HZ);
        this.from = from;
        this.nominalHz = nominalHz;
        this.expectedHz = expectedHz;
        this.samples = converter.outputs(from, to) - 2L * Differentiator.HALF;
        this.weights = new ChannelWeights(recording.channels(), band);
    }

    /**
     * Makes ready to read a stretch.
     *
     * @param expectedHz frequency the tone will be near, within 2 %
     * @return null if the stretch is shorter than a second or holds no tone
     */
    static ToneStream of(
            AudioSource recording, double from, double to, double nominalHz, double expectedHz) {
        ToneStream stream = new ToneStream(recording, from, to, nominalHz, expectedHz);
        if (stream.samples < stream.rateHz()) {
            return null;
        }
        stream.kept.putAll(stream.convert(ChannelWeights.spots(stream.pieces())));
        stream.weights.settle(stream.kept.values());
        return stream.weights.areAllZero() ? null : stream;
    }

    /** Values a second, 1000 or a little more. */
    double rateHz() {
        return converter.rateHz();
    }

    /** How many values there will be. */
    long samples() {
        return samples;
    }

    /** Time of the first value in the recording. */
    double firstSeconds() {
        return from + Differentiator.HALF / rateHz();
    }

    double nominalHz() {
        return nominalHz;
    }

    /** Frequency that the tone is near. */
    double expectedHz() {
        return expectedHz;
    }

    /** The recording that holds it. */
    AudioSource recording() {
        return recording;
    }

    /** How much a channel counts; 0 for one without the tone. */
    double weight(int channel) {
        return weights.of(channel);
    }

    /** Fastest change of speed that passes whole. */
    double bandHz() {
        return band.passHz();
    }

    /** What is left of a change of speed of that frequency. */
    double gain(double frequencyHz) {
        return converter.gain(frequencyHz);
    }

    /**
     * Reads the whole stretch.
     *
     * @param sink takes the deviation from nominal, percent, in order
     */
    Summary read(Consumer<double[]> sink) {
        Bridge bridge = new Bridge();
        double[] levels = new double[recording.channels()];
        for (int i = 0; i < pieces(); i += AT_ONCE) {
            List<Integer> some =
                    IntStream.range(i, Math.min(pieces(), i + AT_ONCE)).boxed().toList();
            for (List<Baseband> piece : convert(some).values()) {
                sink.accept(bridge.next(percent(piece, levels)));
            }
        }
        sink.accept(bridge.rest());
        return new Summary(
                weights.noiseDensity(), bridge.gaps(), bridge.bridgedSamples() / rateHz());
    }

    private int pieces() {
        return (int) Math.max(1, Math.round(samples / (PIECE_S * rateHz())));
    }

    /** Pieces by their numbers, in order. */
    private SortedMap<Integer, List<Baseband>> convert(List<Integer> numbers) {
        List<List<Baseband>> pieces =
                Background.each(numbers, i -> kept.containsKey(i) ? kept.get(i) : piece(i));
        SortedMap<Integer, List<Baseband>> converted = new TreeMap<>();
        for (int k = 0; k < numbers.size(); k++) {
            converted.put(numbers.get(k), pieces.get(k));
        }
        return converted;
    }

    /** A piece with what the differentiator needs on either side. */
    private List<Baseband> piece(int i) {
        long first = i * samples / pieces();
        long last = (i + 1L) * samples / pieces();
        int count = (int) (last - first) + 2 * Differentiator.HALF;
        return converter.convert(recording, from, first, count, PhaseLaw.steady(expectedHz));
    }

    /**
     * The deviation of a piece; not a number where no channel tells it.
     *
     * @param levels level of each channel in the piece before; receives those of this one
     */
    private double[] percent(List<Baseband> bases, double[] levels) {
        double[] sum = new double[bases.get(0).size() - 2 * Differentiator.HALF];
        double[] told = new double[sum.length];
        for (int c = 0; c < bases.size(); c++) {
            if (weights.of(c) > 0) {
                ChannelPiece piece = ChannelPiece.of(bases.get(c), levels[c], gone(c));
                levels[c] = piece.level();
                boolean isTone = weights.note(c, bases.get(c), piece.isAllClear());
                for (int k = 0; k < sum.length; k++) {
                    double weight = isTone && piece.isClear(k) ? weights.of(c) : 0;
                    sum[k] += weight * piece.slope(k);
                    told[k] += weight;
                }
            }
        }
        double enough = Math.min(CLEAR, ENOUGH * weights.sum());
        Arrays.setAll(sum, k -> told[k] < enough ? Double.NaN : percent(sum[k] / told[k]));
        return sum;
    }

    /** Share of a channel's level at which noise begins to turn its phase; no less than −34 dB. */
    private double gone(int channel) {
        double noise = Math.sqrt(0.5 * converter.noiseBandwidthHz() / weights.of(channel));
        return Math.max(LEAST_LEVEL, Math.min(MOST_LEVEL, OVER_NOISE * noise));
    }

    private double percent(double radiansPerSecond) {
        double hz = expectedHz + radiansPerSecond / (2 * Math.PI);
        return 100 * (hz / nominalHz - 1);
    }
}
