package offtape.report.measure.sweep;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.OptionalDouble;
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

    private static Response made(
            String channel, double levelDb, double[] hz, double[] db, double uncertaintyDb) {
        double[] u = new double[hz.length];
        java.util.Arrays.fill(u, uncertaintyDb);
        return ResponseMeasure.response(
                channel, levelDb, new ResponseCurve(hz, db, u), OptionalDouble.empty());
    }

    private static LevelDependence between(double[] hz, double[] lossDb) {
        double[] loud = java.util.Arrays.stream(lossDb).map(d -> 1 - d).toArray();
        double[] quiet = new double[hz.length];
        java.util.Arrays.fill(quiet, 1);
        return LevelDependenceMeasure.between(
                made("left", -20, hz, quiet, 0.04), made("left", 0, hz, loud, 0.03));
    }

    /** 10 kHz lies in the middle of 8 and 12.5 kHz: of losses of 1 and 3 dB it has 2 dB. */
    @Test
    void theLossAtTenKilohertzIsReadBetweenPoints() {
        LevelDependence found =
                between(new double[] {1000, 8000, 12_500, 16_000}, new double[] {0, 1, 3, 9});
        assertEquals(2, found.lossAt10kHz().value(), 1e-12);
        assertEquals("dB", found.lossAt10kHz().unit());
        assertEquals(0.05, found.lossAt10kHz().uncertainty(), 1e-12);
        assertEquals(-20, found.quietLevelDb());
        assertEquals(8000, found.oneDbLossFrom().value(), 1e-6);
        for (double u : found.uncertaintyDb()) {
            assertEquals(0.05, u, 1e-12);
        }
    }

    /** A quarter of the way from 8 to 12.5 kHz; the larger of both uncertainties. */
    @Test
    void theLessSureOfBothPointsCounts() {
        double[] hz = {1000, 9457.416, 11_822};
        double[] zero = new double[3];
        double part = Math.log(10_000 / hz[1]) / Math.log(hz[2] / hz[1]);
        assertEquals(0.25, part, 1e-4);
        for (int worse = 1; worse <= 2; worse++) {
            double[] u = {0.1, 0.1, 0.1};
            u[worse] = 0.4;
            Response loud =
                    ResponseMeasure.response(
                            "left",
                            0,
                            new ResponseCurve(hz, new double[] {0, -1, -2}, u),
                            OptionalDouble.empty());
            LevelDependence found =
                    LevelDependenceMeasure.between(made("left", -20, hz, zero, 0), loud);
            assertEquals(1.25, found.lossAt10kHz().value(), 1e-4);
            assertEquals(0.4, found.lossAt10kHz().uncertainty(), 1e-12);
        }
    }

    /** A point at 10 kHz itself tells it, whether the last one or the first of more. */
    @Test
    void aPointAtTenKilohertzTellsIt() {
        double[] upTo = {1000, 5000, 10_000};
        assertEquals(2, between(upTo, new double[] {0, 1, 2}).lossAt10kHz().value(), 1e-12);
        double[] from = {10_000, 12_000};
        assertEquals(1, between(from, new double[] {1, 5}).lossAt10kHz().value(), 1e-12);
        double[] below = {1000, 5000, 9999};
        LevelDependence none = between(below, new double[] {0, 1, 2});
        assertEquals("The sweeps are not both heard at 10 kHz.", none.lossAt10kHz().reason());
        double[] above = {10_001, 12_000};
        assertFalse(between(above, new double[] {1, 5}).lossAt10kHz().isKnown());
    }

    /** The same frequency is one within a thousandth. */
    @Test
    void onlyFrequenciesOfBothAreCompared() {
        Response quiet =
                made("left", -20, new double[] {500, 1000, 3000}, new double[] {1, 2, 4}, 0);
        Response loud =
                made(
                        "left",
                        0,
                        new double[] {400, 500.4, 999.6, 1100, 3003.1, 4000},
                        new double[] {9, 0, 0, 9, 9, 9},
                        0);
        LevelDependence found = LevelDependenceMeasure.between(quiet, loud);
        assertArrayEquals(new double[] {500.4, 999.6}, found.frequencyHz());
        assertArrayEquals(new double[] {-1, -2}, found.differenceDb());
    }

    /** Each channel against its own quietest; two of the same level are not compared. */
    @Test
    void theQuietestOfTheSameChannelIsComparedWith() {
        double[] hz = {500, 1000};
        double[] db = new double[2];
        List<Response> found =
                LevelDependenceMeasure.added(
                        List.of(
                                made("left", 0, hz, db, 0),
                                made("right", -10, hz, db, 0),
                                made("left", -20, hz, db, 0),
                                made("left", -20, hz, db, 0),
                                made("right", 0, hz, db, 0)));
        assertEquals(-20, found.get(0).levelDependence().quietLevelDb());
        assertNull(found.get(1).levelDependence());
        assertNull(found.get(2).levelDependence());
        assertNull(found.get(3).levelDependence());
        assertEquals(-10, found.get(4).levelDependence().quietLevelDb());
    }
}
