package offtape.report.measure.tape;

import java.util.ArrayList;
import java.util.List;

/** Common factors by which tones that are heard may differ from those of a list. */
final class SpeedGuess {

    /** Ranges of the factor: right speed, half, double. */
    static final double[] RIGHT = {0.9, 1.1};

    static final double[] HALF = {0.46, 0.54};
    static final double[] DOUBLE = {1.85, 2.15};

    /** Factors closer than this are one. */
    private static final double SAME = 0.003;

    private SpeedGuess() {}

    /** Every factor in a range that carries a tone of the list to one that is heard. */
    static List<Double> of(double[] heard, double[] list, double[] range) {
        List<Double> all = new ArrayList<>();
        for (double h : heard) {
            for (double l : list) {
                double factor = h / l;
                if (factor >= range[0]
                        && factor <= range[1]
                        && all.stream().noneMatch(a -> Math.abs(a / factor - 1) < SAME)) {
                    all.add(factor);
                }
            }
        }
        return all;
    }
}
