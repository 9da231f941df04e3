package offtape.report.measure.tape;

import java.util.Random;
import java.util.function.DoubleUnaryOperator;
import offtape.core.audio.MemoryAudio;

/** A tone of 400 Hz and peak 0.2 at 2000 samples a second, whose level and phase are formulas. */
final class Sounding {

    static final int RATE = 2000;
    static final double HZ = 400;
    static final double PEAK = 0.2;

    private final double seconds;
    private DoubleUnaryOperator levelDb = t -> 0;
    private DoubleUnaryOperator lateS = t -> 0;
    private DoubleUnaryOperator turns = t -> HZ * t;
    private double rightGain = 1;
    private double noise;
    private double rightNoise;

    Sounding(double seconds) {
        this.seconds = seconds;
    }

    /** Level over time, dB. */
    Sounding level(DoubleUnaryOperator db) {
        levelDb = db;
        return this;
    }

    /** Another frequency. */
    Sounding at(double hz) {
        turns = t -> hz * t;
        return this;
    }

    /** Turns made up to a time. */
    Sounding turning(DoubleUnaryOperator turnsOverTime) {
        turns = turnsOverTime;
        return this;
    }

    /** The right channel against the left one: gain, and how late over time, seconds. */
    Sounding right(double gain, DoubleUnaryOperator late) {
        rightGain = gain;
        lateS = late;
        return this;
    }

    /** White noise, root mean square, on each channel. */
    Sounding noise(double left, double right) {
        noise = left;
        rightNoise = right;
        return this;
    }

    /** Both channels. */
    MemoryAudio pair(long seed) {
        Random random = new Random(seed);
        double[][] x = new double[2][(int) (seconds * RATE)];
        for (int i = 0; i < x[0].length; i++) {
            double t = (double) i / RATE;
            double peak = PEAK * Math.pow(10, levelDb.applyAsDouble(t) / 20);
            x[0][i] = peak * sine(t) + noise * random.nextGaussian();
            x[1][i] =
                    rightGain * peak * sine(t - lateS.applyAsDouble(t))
                            + rightNoise * random.nextGaussian();
        }
        return new MemoryAudio("tape.wav", RATE, x);
    }

    MemoryAudio pair() {
        return pair(1);
    }

    private double sine(double t) {
        return Math.sin(2 * Math.PI * turns.applyAsDouble(t));
    }

    /** The left channel alone. */
    MemoryAudio mono() {
        return TapeBench.mono(pair());
    }
}
