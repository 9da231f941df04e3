package offtape.report.measure.speed;

import java.util.List;
import java.util.Random;
import java.util.function.DoubleUnaryOperator;
import java.util.stream.DoubleStream;
import java.util.stream.IntStream;
import offtape.core.audio.MemoryAudio;
import offtape.core.standard.Iec60386;
import offtape.report.result.Speed;

/** Tones of known deviation, and what is read from them. */
final class Tones {

    static final int RATE = 48_000;
    static final double PEAK = 0.1;

    private Tones() {}

    /**
     * A tone of frequency f whose speed deviates by m + d·sin 2πht percent: phase 2πf·((1 + m)·t −
     * d/(2πh)·cos 2πht).
     */
    static DoubleUnaryOperator wavering(double toneHz, double mean, double percent, double hz) {
        return t -> {
            double wow = percent / 100 / (2 * Math.PI * hz) * Math.cos(2 * Math.PI * hz * t);
            return PEAK * Math.sin(2 * Math.PI * toneHz * ((1 + mean / 100) * t - wow));
        };
    }

    static DoubleUnaryOperator steady(double toneHz) {
        return t -> PEAK * Math.sin(2 * Math.PI * toneHz * t);
    }

    /** White noise of a standard deviation; not for use by several threads. */
    static DoubleUnaryOperator noise(double sigma, long seed) {
        Random random = new Random(seed);
        return t -> sigma * random.nextGaussian();
    }

    /** Standard deviation of noise so many dB under the tone, in the band up to half the rate. */
    static double sigma(double signalToNoiseDb) {
        return PEAK / Math.sqrt(2) * Math.pow(10, -signalToNoiseDb / 20);
    }

    static DoubleUnaryOperator sum(DoubleUnaryOperator a, DoubleUnaryOperator b) {
        return t -> a.applyAsDouble(t) + b.applyAsDouble(t);
    }

    static double[] samples(double seconds, DoubleUnaryOperator sound) {
        return samples(RATE, seconds, sound);
    }

    private static double[] samples(int rate, double seconds, DoubleUnaryOperator sound) {
        return IntStream.range(0, (int) (seconds * rate))
                .mapToDouble(i -> sound.applyAsDouble((double) i / rate))
                .toArray();
    }

    static MemoryAudio audio(double seconds, DoubleUnaryOperator... channels) {
        return audio(RATE, seconds, channels);
    }

    static MemoryAudio audio(int rate, double seconds, DoubleUnaryOperator... channels) {
        double[][] x = new double[channels.length][];
        for (int c = 0; c < x.length; c++) {
            x[c] = samples(rate, seconds, channels[c]);
        }
        return new MemoryAudio("tone", rate, x);
    }

    /** The stretch of a tone without its first and last fifth of a second. */
    static ToneStream stream(MemoryAudio audio, double toneHz) {
        double seconds = (double) audio.frames() / RATE;
        return ToneStream.of(audio, 0.2, seconds - 0.2, toneHz, toneHz);
    }

    /** The whole deviation, percent. */
    static double[] deviation(ToneStream stream) {
        DoubleStream.Builder all = DoubleStream.builder();
        stream.read(x -> DoubleStream.of(x).forEach(all::add));
        return all.build().toArray();
    }

    /** What a meter reads of a deviation, without a search for lines. */
    static SpeedReader read(double[] percent, double rateHz) {
        SpeedReader reader = new SpeedReader(Iec60386.atRate(rateHz), percent.length);
        reader.next(percent);
        reader.end();
        return reader;
    }

    static Speed speed(MemoryAudio audio, double toneHz) {
        return SpeedMeasure.of(stream(audio, toneHz), List.of());
    }

    static double rms(double[] x) {
        return Math.sqrt(DoubleStream.of(x).map(v -> v * v).sum() / x.length);
    }
}
