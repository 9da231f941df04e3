package offtape.report.measure.sweep;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import java.util.OptionalDouble;
import java.util.Random;
import offtape.report.result.ContourPoint;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ContourSearchTest {

    private static List<ContourPoint> measured(String members) {
        return SweepBench.of(members, 4, -20).response(0, 0).contour();
    }

    /**
     * (s² + sA/Q + 1)/(s² + s/(AQ) + 1) has its whole gain A² at its centre. At 1 kHz, with w =
     * 1000/f0 and D = (w² − 1)², |H|² = (D + w²A²/Q²)/(D + w²/(A²Q²)) is what the curve is put to 0
     * dB at. At 190.5 mm/s 70 Hz is 2.72 mm long.
     */
    @ParameterizedTest
    @CsvSource({"70, 1.8, 1.2", "55, 3, 1.5", "110, -2, 1.5", "150, 1, 2"})
    void aBumpIsFoundWithItsFrequencyAndHeight(double hz, double gainDb, double q) {
        List<ContourPoint> found = measured(machine(hz, gainDb, q, ""));
        assertEquals(1, found.size(), found.toString());
        ContourPoint point = found.get(0);
        double w2 = Math.pow(1000 / hz, 2);
        double a2 = Math.pow(10, gainDb / 20);
        double d = Math.pow(w2 - 1, 2);
        double zeroDb = 10 * Math.log10((d + w2 * a2 / (q * q)) / (d + w2 / (a2 * q * q)));
        assertEquals(gainDb > 0 ? "peak" : "dip", point.kind());
        assertEquals(hz, point.frequency().value(), point.frequency().uncertainty());
        assertEquals(hz, point.frequency().value(), 0.03 * hz);
        assertEquals(gainDb - zeroDb, point.magnitude().value(), 0.03);
        assertEquals(190.5 / hz, point.wavelengthMm(), 0.03 * 190.5 / hz);
    }

    private static String machine(double hz, double gainDb, double q, String more) {
        return String.format(
                java.util.Locale.ROOT,
                "\"heads\": {\"bumps\": [{\"frequencyHz\": %s, \"gainDb\": %s, \"q\": %s}%s]},"
                        + " \"hiss\": {\"levelDb\": -65}",
                hz,
                gainDb,
                q,
                more);
    }

    /** Two bumps far enough apart not to move each other by more than the allowance. */
    @Test
    void ripplesComeInTheirOrder() {
        String second = ", {\"frequencyHz\": 120, \"gainDb\": -1.5, \"q\": 3}";
        List<ContourPoint> found = measured(machine(40, 2, 3, second));
        assertEquals(List.of("peak", "dip"), found.stream().map(ContourPoint::kind).toList());
        assertEquals(40, found.get(0).frequency().value(), 2);
        assertEquals(120, found.get(1).frequency().value(), 4);
    }

    /** The worst that is smooth: two roll-offs, and hiss at the level of the sweep's own bass. */
    @ParameterizedTest
    @CsvSource({"-70, 1", "-50, 2", "-40, 3", "-35, 4"})
    void nothingIsFoundOnASmoothRollOff(double hissDb, int seed) {
        List<ContourPoint> found =
                measured(
                        String.format(
                                java.util.Locale.ROOT,
                                "\"seed\": %d, \"hiss\": {\"levelDb\": %s},"
                                        + " \"electronics\": {\"lowerEdgeHz\": 60, \"lowerOrder\": 2}",
                                seed,
                                hissDb));
        assertEquals(List.of(), found);
    }

    /** Noise of the stated size on a roll-off, 300 times: none may stand out. */
    @Test
    void noneIsInventedOnNoise() {
        Random random = new Random(4);
        int seen = 0;
        for (int run = 0; run < 300; run++) {
            ResponseCurve noisy =
                    BandMeasureTest.curve(
                            o ->
                                    -10 * Math.log10(1 + Math.pow(2, -2 * (o + 4)))
                                            + 0.15 * random.nextGaussian(),
                            0.3);
            seen += new ContourSearch(noisy, OptionalDouble.of(190.5)).find().size();
        }
        assertEquals(0, seen);
    }

    /** The same wave is twice as high at twice the speed, but not looked for above 1 mm. */
    @Test
    void theLimitGoesWithTheTapeSpeed() {
        ResponseCurve bump = BandMeasureTest.curve(o -> Math.exp(-20 * (o + 2) * (o + 2)), 0.02);
        assertEquals(1, new ContourSearch(bump, OptionalDouble.of(381)).find().size());
        assertEquals(0, new ContourSearch(bump, OptionalDouble.of(190.5)).find().size());
        List<ContourPoint> unknown = new ContourSearch(bump, OptionalDouble.empty()).find();
        assertEquals(1, unknown.size());
        assertEquals(null, unknown.get(0).wavelengthMm());
        assertEquals(250, unknown.get(0).frequency().value(), 0.1);
        assertEquals(1, unknown.get(0).prominenceDb(), 0.01);
    }
}
