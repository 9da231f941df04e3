package offtape.report.measure;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.SplittableRandom;
import java.util.function.DoubleUnaryOperator;
import java.util.stream.IntStream;
import offtape.core.machine.SteadyTone;
import offtape.core.unit.Decibels;
import offtape.core.unit.Quantity;
import offtape.report.result.Response;

/**
 * The figures of the response against the truth: what a steady tone of the sweep's level does, re
 * the one at 1 kHz. A point is drawn in each band, since those of a curve err together.
 */
final class ResponseCases {

    /** Where the response has fallen deeper no point is tried. */
    private static final double DEEPEST_DB = -12;

    private static final double EDGE_DB = -3;

    private final String machine;
    private final Response found;
    private final SteadyTone tone;
    private final SplittableRandom random;
    private final List<CoverageCase> cases = new ArrayList<>();

    private ResponseCases(MeasuredMachine measured, Response found) {
        this.machine = measured.machine().name();
        this.found = found;
        this.tone = measured.tone(found.channel());
        this.random =
                new SplittableRandom(measured.machine().spec().seed() + found.channel().length());
    }

    static List<CoverageCase> of(MeasuredMachine measured) {
        return measured.results().response().stream()
                .flatMap(r -> new ResponseCases(measured, r).cases().stream())
                .toList();
    }

    private List<CoverageCase> cases() {
        point("response, 40 to 250 Hz", 40, 250);
        point("response, 250 Hz to 4 kHz", 250, 4000);
        point("response, 4 to 16 kHz", 4000, 16_000);
        add("lower edge", found.lowerEdge(), edge(-1));
        add("upper edge", found.upperEdge(), edge(1));
        double[] inBand =
                Arrays.stream(found.frequencyHz())
                        .filter(f -> f >= found.rippleFromHz() * 0.999)
                        .filter(f -> f <= found.rippleToHz() * 1.001)
                        .map(this::truthDb)
                        .sorted()
                        .toArray();
        add("ripple", found.ripple(), (inBand[inBand.length - 1] - inBand[0]) / 2);
        return cases;
    }

    private void add(String figure, Quantity quantity, double truth) {
        if (quantity.isKnown()) {
            cases.add(CoverageCase.of(machine, figure, quantity, truth));
        }
    }

    private void point(String figure, double fromHz, double toHz) {
        double[] hz = found.frequencyHz();
        int[] inBand =
                IntStream.range(0, hz.length)
                        .filter(i -> hz[i] >= fromHz && hz[i] <= toHz)
                        .filter(i -> Math.abs(hz[i] / 1000 - 1) > 0.01)
                        .filter(i -> truthDb(hz[i]) > DEEPEST_DB)
                        .toArray();
        int i = inBand[random.nextInt(inBand.length)];
        Quantity point = Quantity.known(found.magnitudeDb()[i], "dB", found.uncertaintyDb()[i]);
        add(figure, point, truthDb(hz[i]));
    }

    private double truthDb(double hz) {
        double level = found.levelDb();
        return Decibels.ofAmplitude(tone.peak(1, hz, level) / tone.peak(1, 1000, level));
    }

    /** The first crossing on the way outward from 1 kHz, by halving. */
    private double edge(int direction) {
        DoubleUnaryOperator above = f -> truthDb(f) - EDGE_DB;
        double inner = 1000;
        double outer = inner;
        while (above.applyAsDouble(outer) > 0) {
            inner = outer;
            outer *= Math.pow(2, direction / 24.0);
        }
        for (int i = 0; i < 40; i++) {
            double middle = Math.sqrt(inner * outer);
            if (above.applyAsDouble(middle) > 0) {
                inner = middle;
            } else {
                outer = middle;
            }
        }
        return inner;
    }
}
