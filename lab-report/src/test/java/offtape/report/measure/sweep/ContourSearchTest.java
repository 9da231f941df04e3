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

    /** Nothing but a peak of straight sides, two thirds of an octave wide in all. */
    private static ResponseCurve peak(int place, double heightDb, double uncertaintyDb) {
        double octaves = place / 24.0;
        return BandMeasureTest.curve(
                o -> heightDb * Math.max(0, 1 - 3 * Math.abs(o - octaves)), uncertaintyDb);
    }

    private static List<ContourPoint> found(ResponseCurve curve) {
        return new ContourSearch(curve, OptionalDouble.empty()).find();
    }

    private static List<String> kinds(List<ContourPoint> found) {
        return found.stream().map(ContourPoint::kind).toList();
    }

    /**
     * Places of twenty-fourths of an octave below 1 kHz: −80 is 99.2 Hz, −79 102.1 Hz, −56 198.4,
     * −55 204.2, −42 297.3, −41 306.0, −32 396.9, −31 408.4 Hz. A wave of 1 mm has as many hertz as
     * the tape makes mm/s, but the limit is 100 Hz at least and 400 Hz at most, and 300 Hz if the
     * speed is not known.
     */
    @ParameterizedTest
    @CsvSource({
        "47.6, -80, true",
        "47.6, -79, false",
        "200, -56, true",
        "200, -55, false",
        "762, -32, true",
        "762, -31, false",
        ", -42, true",
        ", -41, false"
    })
    void wavesAreLookedForDownToTheirLength(Double speedMmPerS, int place, boolean told) {
        OptionalDouble speed =
                speedMmPerS == null ? OptionalDouble.empty() : OptionalDouble.of(speedMmPerS);
        List<ContourPoint> found = new ContourSearch(peak(place, 1, 0.01), speed).find();
        assertEquals(told ? List.of("peak") : List.of(), kinds(found));
        if (told) {
            Double wave = found.get(0).wavelengthMm();
            double hz = 1000 * Math.pow(2, place / 24.0);
            if (speedMmPerS == null) {
                assertEquals(null, wave);
            } else {
                assertEquals(speedMmPerS / hz, wave, 1e-9);
            }
        }
    }

    /**
     * The curve starts at 15.6 Hz, so 23.4 Hz (−130) is too near to it and 24.1 Hz (−129) is not.
     */
    @ParameterizedTest
    @CsvSource({"-130, 0", "-129, 1"})
    void nearTheStartTheSweepRings(int place, int count) {
        assertEquals(count, found(peak(place, 1, 0.01)).size());
    }

    /** 0.3 dB, or six times the standard uncertainty, which is three times that of k = 2. */
    @ParameterizedTest
    @CsvSource({
        "0.29, 0.01, 0",
        "0.31, 0.01, 1",
        "-0.29, 0.01, 0",
        "-0.31, 0.01, 1",
        "0.44, 0.15, 0",
        "0.46, 0.15, 1"
    })
    void smallRipplesAreNone(double heightDb, double uncertaintyDb, int count) {
        List<ContourPoint> found = found(peak(-80, heightDb, uncertaintyDb));
        assertEquals(count, found.size());
        if (count > 0) {
            assertEquals(heightDb > 0 ? "peak" : "dip", found.get(0).kind());
            assertEquals(heightDb, found.get(0).magnitude().value(), 1e-9);
            assertEquals(Math.abs(heightDb), found.get(0).prominenceDb(), 1e-9);
            assertEquals(uncertaintyDb, found.get(0).magnitude().uncertainty());
        }
    }

    /**
     * 1 − 20·x² dB over x octaves from 0.3 of a step beside −80: the vertex of the three points
     * about it is that of the parabola.
     */
    @ParameterizedTest
    @CsvSource({"0.3, 1", "-0.45, 1", "0, 1", "0.3, -1"})
    void theVertexLiesBetweenThePoints(double beside, int sign) {
        double at = (-80 + beside) / 24;
        ResponseCurve curve =
                BandMeasureTest.curve(o -> sign * Math.max(0, 1 - 20 * (o - at) * (o - at)), 0.01);
        List<ContourPoint> found = found(curve);
        assertEquals(1, found.size());
        assertEquals(1000 * Math.pow(2, at), found.get(0).frequency().value(), 1e-6);
        assertEquals(sign, found.get(0).magnitude().value(), 1e-9);
        assertEquals("Hz", found.get(0).frequency().unit());
        assertEquals("dB", found.get(0).magnitude().unit());
    }

    /** Two equal points: the turn lies halfway between, and is told once. */
    @Test
    void aFlatTopIsOneTurn() {
        double[] db = new double[241];
        db[63] = 0.5;
        db[64] = 1;
        db[65] = 1;
        db[66] = 0.5;
        List<ContourPoint> found = found(withDb(db));
        assertEquals(List.of("peak"), kinds(found));
        assertEquals(1000 * Math.pow(2, -79.5 / 24), found.get(0).frequency().value(), 1e-6);
        assertEquals(1, found.get(0).prominenceDb(), 1e-12);
    }

    private static ResponseCurve withDb(double[] db) {
        return new ResponseCurve(BandMeasureTest.curve(o -> 0, 0.01).hz(), db, new double[241]);
    }

    /**
     * Of a peak of 1 dB and one of 2 dB with 0.5 dB between them the lower one stands out by the
     * half decibel that must be given up to get to the higher one, and so does the dip.
     */
    @ParameterizedTest
    @CsvSource({"false", "true"})
    void aTurnStandsOutToTheNextGreaterOne(boolean mirrored) {
        double[] db = new double[241];
        double[] values = {0.4, 1, 0.5, 2, 0.7};
        for (int i = 0; i < values.length; i++) {
            db[60 + i] = values[mirrored ? values.length - 1 - i : i];
        }
        List<ContourPoint> found = found(withDb(db));
        assertEquals(List.of("peak", "dip", "peak"), kinds(found));
        assertEquals(mirrored ? 2 : 0.5, found.get(0).prominenceDb(), 1e-12);
        assertEquals(0.5, found.get(1).prominenceDb(), 1e-12);
        assertEquals(mirrored ? 0.5 : 2, found.get(2).prominenceDb(), 1e-12);
    }

    /**
     * The surroundings reach from the first point to 1 kHz, ends included: a peak of 1 dB on a
     * curve that else stays at 0.8 dB stands out if it comes down at both ends, not if it does so
     * beyond 1 kHz.
     */
    @ParameterizedTest
    @CsvSource({"0, 144, 1", "0, 145, 0", "1, 143, 1", "0, 240, 0"})
    void surroundingsEndAtOneKilohertz(int low, int high, int count) {
        double[] db = new double[241];
        java.util.Arrays.fill(db, 0.8);
        db[64] = 1;
        db[low] = 0;
        db[high] = 0;
        assertEquals(count, kinds(found(withDb(db))).stream().filter("peak"::equals).count());
    }

    /**
     * A peak of 1 − 20·x² dB has fallen by 0.0347 dB a step off and by 0.139 dB two steps off.
     * Where the curve is sure to 0.03 dB it may lie as far as the first, to 0.04 dB as far as the
     * second; upwards a step is more hertz.
     */
    @ParameterizedTest
    @CsvSource({"0.03, 1", "0.04, 2", "0.138, 2", "0.14, 3"})
    void aTurnMayLieWhereTheCurveStaysWithinItsUncertainty(double uncertaintyDb, int steps) {
        double at = -80 / 24.0;
        ResponseCurve curve =
                BandMeasureTest.curve(
                        o -> Math.max(0, 1 - 20 * (o - at) * (o - at)), uncertaintyDb);
        double hz = 1000 * Math.pow(2, at);
        assertEquals(
                hz * (Math.pow(2, steps / 24.0) - 1),
                found(curve).get(0).frequency().uncertainty(),
                1e-6);
    }

    /** A shoulder to the low side: the longer way counts, which is that one here. */
    @Test
    void theLongerWayCounts() {
        double[] db = new double[241];
        java.util.Arrays.fill(db, 50, 65, 0.98);
        db[64] = 1;
        double[] u = new double[241];
        java.util.Arrays.fill(u, 0.05);
        double[] hz = BandMeasureTest.curve(o -> 0, 0).hz();
        List<ContourPoint> found = found(new ResponseCurve(hz, db, u));
        assertEquals(hz[64] - hz[49], found.get(0).frequency().uncertainty(), 1e-9);
    }
}
