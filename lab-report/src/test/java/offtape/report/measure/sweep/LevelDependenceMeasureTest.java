package offtape.report.measure.sweep;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import offtape.report.result.LevelDependence;
import offtape.report.result.Response;
import org.junit.jupiter.api.Test;

class LevelDependenceMeasureTest {

    private static final double TAU_S = 50e-6;

    /** A tape that saturates, swept at three levels; made when it is first asked for. */
    private static final class Saturating {

        static final List<Response> RESPONSES =
                SweepBench.of(
                                "\"saturation\": {\"kind\": \"cubic\","
                                        + " \"levelAtK3ThreePercentDb\": 10,"
                                        + " \"emphasisMicroseconds\": 50},"
                                        + " \"hiss\": {\"levelDb\": -65}",
                                6,
                                -20,
                                0,
                                -8)
                        .responses();
    }

    /**
     * x − a·x³ leaves 1 − ¾aA² of a sine of peak A; aA² at the level of 3 % is 0.110092. The
     * emphasis is y = (x − p·x₋₁)/(1 − p) with p = exp(−1/(fs·τ)), so its gain squared is (1 − 2p
     * cos w + p²)/(1 − p)².
     */
    private static double keptDb(double hz, double levelDb) {
        double p = Math.exp(-1 / (SweepBench.RATE * TAU_S));
        double w = 2 * Math.PI * hz / SweepBench.RATE;
        double gain2 = (1 - 2 * p * Math.cos(w) + p * p) / Math.pow(1 - p, 2);
        double aa = 0.110092 * Math.pow(10, (levelDb - 10) / 10) * gain2;
        return 20 * Math.log10(1 - 0.75 * aa);
    }

    /** Loss re 1 kHz and re the quiet sweep. */
    private static double lossDb(double hz, double levelDb) {
        double loud = keptDb(hz, levelDb) - keptDb(1000, levelDb);
        double quiet = keptDb(hz, -20) - keptDb(1000, -20);
        return quiet - loud;
    }

    private static LevelDependence dependence(int channel, double levelDb) {
        String name = channel == 0 ? "left" : "right";
        return Saturating.RESPONSES.stream()
                .filter(r -> r.channel().equals(name) && r.levelDb() == levelDb)
                .findFirst()
                .orElseThrow()
                .levelDependence();
    }

    @Test
    void theLossIsThatOfTheCurve() {
        for (int channel = 0; channel < 2; channel++) {
            for (double level : new double[] {0, -8}) {
                LevelDependence found = dependence(channel, level);
                assertEquals(-20, found.quietLevelDb());
                assertEquals(lossDb(10_000, level), found.lossAt10kHz().value(), 0.03);
                for (int i = 0; i < found.frequencyHz().length; i++) {
                    double hz = found.frequencyHz()[i];
                    if (hz > 40 && hz < 16_000) {
                        assertEquals(-lossDb(hz, level), found.differenceDb()[i], 0.03, hz + " Hz");
                    }
                }
            }
        }
    }

    /** Solved by bisection on the closed form; the frequency within what 0.03 dB make of it. */
    @Test
    void oneDecibelIsLostFromWhereTheCurveSays() {
        double low = 1000;
        double high = 20_000;
        for (int i = 0; i < 60; i++) {
            double middle = (low + high) / 2;
            if (lossDb(middle, 0) < 1) {
                low = middle;
            } else {
                high = middle;
            }
        }
        assertTrue(low > 5000 && low < 16_000, "a case worth testing: " + low);
        double found = dependence(0, 0).oneDbLossFrom().value();
        assertEquals(low, found, 0.03 * low);
        assertEquals(low, found, dependence(0, 0).oneDbLossFrom().uncertainty());
    }

    @Test
    void whatIsNotLostIsSaid() {
        assertFalse(dependence(0, -8).oneDbLossFrom().isKnown());
        assertTrue(dependence(0, -8).oneDbLossFrom().reason().contains("less than 1 dB"));
    }

    @Test
    void theQuietestIsNotComparedWithItself() {
        assertNull(dependence(0, -20));
        assertNull(dependence(1, -20));
        assertEquals(6, Saturating.RESPONSES.size());
    }

    /** Curves that end at 8 kHz say nothing of 10 kHz; those that share nothing, nothing. */
    @Test
    void curvesThatEndEarlyAreUnknownThere() {
        Response whole = Saturating.RESPONSES.get(0);
        Response low = cut(whole, 8000);
        assertFalse(LevelDependenceMeasure.between(low, whole).lossAt10kHz().isKnown());
        LevelDependence nothing = LevelDependenceMeasure.between(cut(whole, 0), whole);
        assertEquals(0, nothing.frequencyHz().length);
        assertFalse(nothing.oneDbLossFrom().isKnown());
    }

    private static Response cut(Response r, double toHz) {
        int n = 0;
        while (n < r.frequencyHz().length && r.frequencyHz()[n] <= toHz) {
            n++;
        }
        return new Response(
                r.channel(),
                r.levelDb(),
                java.util.Arrays.copyOf(r.frequencyHz(), n),
                java.util.Arrays.copyOf(r.magnitudeDb(), n),
                java.util.Arrays.copyOf(r.uncertaintyDb(), n),
                r.lowerEdge(),
                r.upperEdge(),
                r.ripple(),
                r.rippleFromHz(),
                r.rippleToHz(),
                r.bands(),
                r.contour(),
                null,
                List.of());
    }
}
