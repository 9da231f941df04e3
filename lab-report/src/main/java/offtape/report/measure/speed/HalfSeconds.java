package offtape.report.measure.speed;

import java.util.ArrayDeque;
import java.util.Deque;
import java.util.function.DoubleConsumer;
import offtape.core.standard.Iec60386;
import offtape.report.result.SpeedReadings;

/**
 * The weighted deviation and its reading in blocks of half a second: over time, and at its worst.
 */
final class HalfSeconds {

    private static final int MOST_READINGS = 600;
    private static final int TEN_SECONDS = 20;

    private final double blockSeconds;
    private final Deque<Double> squares = new ArrayDeque<>();
    private final Deque<Double> peaks = new ArrayDeque<>();
    private final Blocks weighted;
    private final Blocks readings;
    private final Extremes trace = new Extremes(1, MOST_READINGS);
    private final double[] lastSquares = new double[TEN_SECONDS];
    private final double[] lastPeaks = new double[TEN_SECONDS];
    private long blocks;
    private double worstSquare = -1;
    private double worstPeak;
    private long worstFrom;

    /** Reduces values to one a block. */
    private static final class Blocks {

        private final int length;
        private final DoubleConsumer sink;
        private double sum;
        private double highest;
        private int count;

        Blocks(int length, DoubleConsumer sink) {
            this.length = length;
            this.sink = sink;
        }

        void add(double[] x, boolean squares) {
            for (double v : x) {
                sum += v * v;
                highest = Math.max(highest, v);
                count++;
                if (count == length) {
                    sink.accept(squares ? sum / length : highest);
                    sum = 0;
                    highest = 0;
                    count = 0;
                }
            }
        }
    }

    HalfSeconds(double rateHz) {
        int length = (int) Math.round(rateHz / 2);
        blockSeconds = length / rateHz;
        weighted = new Blocks(length, squares::add);
        readings = new Blocks(length, peaks::add);
    }

    /** Takes the settled weighted deviation. */
    void weighted(double[] settled) {
        weighted.add(settled, true);
        pair();
    }

    /** Takes its settled reading. */
    void reading(double[] settled) {
        readings.add(settled, false);
        pair();
    }

    private void pair() {
        while (!squares.isEmpty() && !peaks.isEmpty()) {
            block(squares.remove(), peaks.remove());
        }
    }

    private void block(double square, double peak) {
        trace.add(peak);
        lastSquares[(int) (blocks % TEN_SECONDS)] = square;
        lastPeaks[(int) (blocks % TEN_SECONDS)] = peak;
        blocks++;
        if (blocks >= TEN_SECONDS && isWorst()) {
            worstSquare = mean();
            worstPeak = highest();
            worstFrom = blocks - TEN_SECONDS;
        }
    }

    private boolean isWorst() {
        double highest = highest();
        return highest > worstPeak || highest == worstPeak && mean() > worstSquare;
    }

    private double mean() {
        double sum = 0;
        for (double s : lastSquares) {
            sum += s / TEN_SECONDS;
        }
        return sum;
    }

    private double highest() {
        double highest = 0;
        for (double p : lastPeaks) {
            highest = Math.max(highest, p);
        }
        return highest;
    }

    /** The reading over time, null if there is less than one block. */
    SpeedReadings readings() {
        if (trace.stretches() == 0) {
            return null;
        }
        double[] seconds = trace.middles();
        for (int i = 0; i < seconds.length; i++) {
            seconds[i] = Iec60386.SETTLING_SECONDS + seconds[i] * blockSeconds;
        }
        return new SpeedReadings(seconds, trace.highest());
    }

    /** Whether there were ten seconds. */
    boolean hasWorst() {
        return blocks >= TEN_SECONDS;
    }

    /** Start of the worst ten seconds, from the first value of the deviation. */
    double worstFromSeconds() {
        return Iec60386.SETTLING_SECONDS + worstFrom * blockSeconds;
    }

    double worstPeak() {
        return worstPeak;
    }

    double worstRms() {
        return Math.sqrt(worstSquare);
    }
}
