package offtape.report.apply.correct;

import java.util.stream.IntStream;

/** Frequencies that are spaced evenly over the logarithm. */
final class Grid {

    /** As many an octave as the response has points. */
    private static final int PER_OCTAVE = 24;

    private Grid() {}

    /** From the first to the last, both included. */
    static double[] over(double fromHz, double toHz) {
        return over(fromHz, toHz, PER_OCTAVE);
    }

    /** The same with at least so many an octave. */
    static double[] over(double fromHz, double toHz, int perOctave) {
        double octaves = Math.log(toHz / fromHz) / Math.log(2);
        int steps = Math.max(1, (int) Math.ceil(perOctave * octaves));
        return IntStream.rangeClosed(0, steps)
                .mapToDouble(i -> fromHz * Math.pow(toHz / fromHz, (double) i / steps))
                .toArray();
    }
}
