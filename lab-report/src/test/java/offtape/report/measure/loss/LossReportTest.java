package offtape.report.measure.loss;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.List;
import offtape.core.unit.Quantity;
import offtape.report.result.ContourPoint;
import offtape.report.result.LossCause;
import offtape.report.result.LossFit;
import offtape.report.result.Response;
import offtape.report.result.Session;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * What is told of sets whose fits are put together from numbers, at 19.05 cm/s. The best has a χ²
 * of 10, up to 16 counts: √6 = 2.4495 deviations to either side.
 */
class LossReportTest {

    private static final LossTerm SPACE = LossTerm.of(Cause.SPACING, 190.5);
    private static final LossTerm LAYER = LossTerm.of(Cause.THICKNESS, 190.5);
    private static final LossTerm GAP = LossTerm.of(Cause.GAP, 190.5);
    private static final LossTerm AZIMUTH = LossTerm.of(Cause.AZIMUTH, 190.5);
    private static final LossTerm APERTURE = LossTerm.apertures(1, 190.5);
    private static final LossTerm EDGE = LossTerm.rollOff(2, 0);
    private static final Shelf BRIGHT = new Shelf(50, 70);
    private static final List<Shelf> SHELVES = Shelf.of(190.5);

    private static final double[] HZ = {500, 1100, 2000, 4000, 8000, 16_000};

    /** 1 µm of space at 10 kHz re 1 kHz: 54.575 dB · 9000 / 190 500. */
    private static final double MICRON_DB = 2.57833;

    private static SetFit fit(double misfit, Shelf shelf, double theta, LossTerm... terms) {
        double[] all = new double[terms.length];
        double[][] c = new double[terms.length][terms.length];
        for (int i = 0; i < all.length; i++) {
            all[i] = theta;
            c[i][i] = 0.01;
        }
        return new SetFit(new CauseSet(List.of(terms), shelf), all, c, 0.5, misfit);
    }

    private static SetFit fit(double misfit, double theta, LossTerm... terms) {
        return fit(misfit, null, theta, terms);
    }

    private static SetFit nothing(double misfit) {
        return fit(misfit, 0);
    }

    private static LossCurve curve(double noiseDb) {
        double[] noise = new double[HZ.length];
        Arrays.fill(noise, noiseDb);
        return new LossCurve(HZ, new double[HZ.length], noise);
    }

    private static LossFit told(
            double noiseDb, double unexplainedDb, Witness witness, String mode, SetFit... fits) {
        LossCurve curve = curve(noiseDb);
        SetFitter fitter = new SetFitter(curve, Covariance.of(curve, 0), SHELVES, witness);
        Weighing weighing = new Weighing(curve, List.of(fits), 10, unexplainedDb, fitter, witness);
        Session session = new Session(null, null, 190.5, mode, "", null, "", "");
        return new LossReport(weighing, response(List.of()), session).fit();
    }

    private static Response response(List<ContourPoint> contour) {
        Quantity no = Quantity.unknown("Not asked for.");
        double[] none = {};
        return new Response(
                "right", -20, none, none, none, no, no, no, 0, 0, List.of(), contour, null,
                List.of());
    }

    private static LossFit told(SetFit... fits) {
        return told(0.02, 0, null, "reference-tape", fits);
    }

    private static LossCause cause(LossFit fit, String name) {
        return fit.causes().stream().filter(c -> c.cause().equals(name)).findFirst().orElseThrow();
    }

    private static void assertSaid(LossFit fit, String sentence) {
        assertTrue(fit.words().contains(sentence), sentence + " is not in " + fit.words());
    }

    @Test
    void aCauseThatIsNeededIsTold() {
        LossFit fit = told(fit(10, 1, SPACE), nothing(30));
        LossCause spacing = cause(fit, "spacing");
        assertEquals(1, spacing.quantity().value(), 1e-9);
        assertEquals(0.1 * Math.sqrt(6), spacing.quantity().uncertainty(), 1e-9);
        assertEquals("µm", spacing.quantity().unit());
        assertNull(spacing.lessThan());
        assertNull(spacing.moreThan());
        assertNull(spacing.limitUnit());
        double[] share = new double[HZ.length];
        Arrays.setAll(share, i -> -MICRON_DB * (HZ[i] - 1000) / 9000);
        assertArrayEquals(share, spacing.shareDb(), 1e-4);
        assertSaid(
                fit,
                "A space of 1.0 ± 0.2 µm between tape and head, as dirt makes it, takes 2.6 dB at"
                        + " 10 kHz.");
        assertEquals(1, fit.causes().size());
    }

    /** 0.5 dB of offset less 54.575 dB a wave; what is left of a level curve of 0 dB. */
    @Test
    void theFitIsToldWithWhatItLeaves() {
        LossFit fit = told(0.02, 0.125, null, null, fit(10, 1, SPACE), nothing(30));
        assertEquals("right", fit.channel());
        assertArrayEquals(HZ, fit.frequencyHz());
        double squares = 0;
        for (int i = 0; i < HZ.length; i++) {
            double db = 0.5 - MICRON_DB * HZ[i] / 9000;
            assertEquals(db, fit.fittedDb()[i], 1e-4);
            squares += db * db;
        }
        double rms = Math.sqrt(squares / 6);
        assertEquals(rms, fit.residual().value(), 1e-4);
        assertEquals("dB", fit.residual().unit());
        assertEquals(2 * rms / Math.sqrt(12), fit.residual().uncertainty(), 1e-4);
        assertEquals(0.125, fit.unexplainedDb());
        assertEquals(1, fit.alternatives().size());
        assertEquals(List.of("spacing"), fit.alternatives().get(0).causes());
        assertEquals(0, fit.alternatives().get(0).excess());
        assertEquals(rms, fit.alternatives().get(0).residualDb(), 1e-4);
        assertEquals("spacing 1.0 µm", fit.alternatives().get(0).text());
        assertEquals(List.of(), fit.correlations());
    }

    @Test
    void aCauseThatCanBeSparedIsBounded() {
        LossFit fit = told(fit(10, 1, SPACE), nothing(12));
        LossCause spacing = cause(fit, "spacing");
        assertFalse(spacing.quantity().isKnown());
        assertEquals(1 + 0.1 * Math.sqrt(6), spacing.lessThan(), 1e-9);
        assertNull(spacing.moreThan());
        assertEquals("µm", spacing.limitUnit());
        assertEquals(
                "The curve can be explained without it; if it takes part, it is less than 1.2 µm.",
                spacing.quantity().reason());
        assertEquals(0, spacing.shareDb().length);
        assertSaid(fit, "No cause of loss stands out of the uncertainty of the curve.");
        assertEquals(List.of(), fit.alternatives().get(0).causes());
        assertEquals(2, fit.alternatives().get(0).excess());
        assertEquals("", fit.alternatives().get(0).text());
    }

    /** θ of second order is (10 kHz / edge)⁴. */
    @Test
    void anEdgeIsToldInHertz() {
        LossFit fit = told(fit(10, 1, EDGE), nothing(30));
        double low = 10_000 * Math.pow(1 + 0.1 * Math.sqrt(6), -0.25);
        double high = 10_000 * Math.pow(1 - 0.1 * Math.sqrt(6), -0.25);
        LossCause edge = cause(fit, "upper-edge");
        assertEquals((low + high) / 2, edge.quantity().value(), 1e-6);
        assertEquals((high - low) / 2, edge.quantity().uncertainty(), 1e-6);
        assertEquals("Hz", edge.quantity().unit());
        assertSaid(fit, "An amplifier that ends at 10.1 kHz ± 630 Hz takes 3.0 dB at 10 kHz.");
        assertEquals("upper edge of an amplifier 10.0 kHz", fit.alternatives().get(0).text());
    }

    /** It may lie up to 2.5 times higher, 39.06 in θ: (θ + 0.245) / (θ − 0.245). */
    @ParameterizedTest
    @CsvSource({"0.2579, true", "0.5, true", "0.2577, false", "0.2500, false"})
    void anEdgeThatMayLieMuchHigherIsBounded(double theta, boolean told) {
        LossFit fit = told(fit(10, theta, EDGE), nothing(30));
        LossCause edge = cause(fit, "upper-edge");
        assertEquals(told, edge.quantity().isKnown());
        if (!told) {
            double least = 10_000 * Math.pow(theta + 0.1 * Math.sqrt(6), -0.25);
            assertEquals(least, edge.moreThan(), 1e-6);
            assertNull(edge.lessThan());
            assertEquals("Hz", edge.limitUnit());
            assertEquals(
                    "The curve can be explained without it; if it takes part, it lies above 11.9"
                            + " kHz.",
                    edge.quantity().reason());
        }
    }

    /** Width times angle, or the angle where a µm of 1 mm is 3.44 arc minutes. */
    @Test
    void azimuthIsAnAngleWhereTheTracksAreKnown() {
        SetFit only = fit(10, 2, AZIMUTH);
        LossFit angle = told(0.02, 0, new Witness(2, 0.5, 3.4377), "off-tape", only);
        Quantity minutes = cause(angle, "azimuth").quantity();
        assertEquals(2 * 3.4377, minutes.value(), 1e-6);
        assertEquals(0.1 * Math.sqrt(6) * 3.4377, minutes.uncertainty(), 1e-6);
        assertEquals("arc min", minutes.unit());
        assertSaid(angle, "A head that stands 6.9 ± 0.8 arc min askew takes 0.2 dB at 10 kHz.");
        assertEquals("azimuth 6.9 arc min", angle.alternatives().get(0).text());
        LossFit length = told(0.02, 0, new Witness(2, 0.5, 0), "off-tape", only);
        assertEquals(2, cause(length, "azimuth").quantity().value(), 1e-9);
        assertSaid(
                length,
                "A head that stands askew (track width times tan α is 2.0 ± 0.2 µm) takes 0.2 dB"
                        + " at 10 kHz.");
        assertEquals("azimuth 2.0 µm", length.alternatives().get(0).text());
        LossFit least = told(0.02, 0, new Witness(2, 0.5, 3.4377), "off-tape", only, nothing(11));
        assertEquals((2 + 0.1 * Math.sqrt(6)) * 3.4377, cause(least, "azimuth").lessThan(), 1e-6);
        assertEquals("arc min", cause(least, "azimuth").limitUnit());
        assertTrue(
                cause(least, "azimuth").quantity().reason().endsWith("is less than 7.7 arc min."));
    }

    /** 50 µs on the tape, 70 µs in replay: 2.363 dB at 10 kHz. */
    @Test
    void aWrongEqualisationThatNoSetDoesWithoutIsTold() {
        LossFit fit = told(fit(10, BRIGHT, 0), nothing(30));
        LossCause wrong = cause(fit, "equalisation");
        LossCurve curve = curve(0.02);
        double deviation =
                new SetFitter(curve, Covariance.of(curve, 0), SHELVES, null)
                        .shelfDeviation(fit(10, BRIGHT, 0));
        assertEquals(2.3630, wrong.quantity().value(), 2e-4);
        assertEquals("dB", wrong.quantity().unit());
        assertEquals(2 * deviation * 2.3630, wrong.quantity().uncertainty(), 1e-4);
        assertEquals("50 µs on the tape and 70 µs in replay", wrong.detail());
        assertNull(wrong.lessThan());
        assertNull(wrong.limitUnit());
        double[] share = Arrays.stream(HZ).map(BRIGHT::db).toArray();
        assertArrayEquals(share, wrong.shareDb(), 1e-9);
        String words = String.join(" ", fit.words());
        assertTrue(
                words.contains(
                        "The equalisation is wrong: 50 µs on the tape and 70 µs in replay give"
                                + " 2.36 ± "),
                words);
        assertEquals(
                "equalisation (50 µs on the tape and 70 µs in replay)",
                fit.alternatives().get(0).text());
    }

    /** Whoever may be right without it, or with other constants, makes it unsure. */
    @Test
    void otherwiseItIsOneOfSeveral() {
        SetFit bright = fit(10, BRIGHT, 0);
        Shelf other = new Shelf(17.5, 50);
        for (LossFit fit :
                List.of(
                        told(bright, fit(12, 1, SPACE)),
                        told(bright, fit(12, new Shelf(50, 100), 0)),
                        // 3 dB of noise leave the shelf of 2 dB open
                        told(3, 0, null, null, bright))) {
            LossCause wrong = cause(fit, "equalisation");
            assertEquals(
                    "The curve may show a wrong equalisation, but other causes or other time"
                            + " constants explain it as well.",
                    wrong.quantity().reason());
            assertEquals("50 µs on the tape and 70 µs in replay", wrong.detail());
        }
        assertEquals("17.5 µs on the tape and 50 µs in replay", LossWords.constants(other));
        assertTrue(
                told(fit(10, 1, SPACE)).causes().stream()
                        .noneMatch(c -> c.cause().equals("equalisation")));
    }

    @Test
    void lossesAreThoseOfReplayOrOfBoth() {
        String both = "These are the losses of recording and replay together";
        String replay = "These are the losses of replay, if the tape holds";
        SetFit one = fit(10, 1, SPACE);
        assertTrue(told(0.02, 0, null, "off-tape", one).words().get(0).startsWith(both));
        assertTrue(told(0.02, 0, null, "two-pass", one).words().get(0).startsWith(both));
        assertTrue(told(0.02, 0, null, "reference-tape", one).words().get(0).startsWith(replay));
        assertTrue(told(0.02, 0, null, null, one).words().get(0).startsWith(replay));
    }

    /**
     * One channel alone, and an unevenness over 0.15 dB, are said; what always holds, at the end.
     */
    @Test
    void whatMakesTheCausesDoubtfulIsSaid() {
        SetFit one = fit(10, 1, SPACE);
        String alone = "One channel alone cannot tell a wide gap";
        String uneven = "The curve is uneven by 0.2 dB beyond";
        String madeUp = "What the machine's own equalisation makes up for does not show";
        List<String> doubtful = told(0.02, 0.16, null, null, one).words();
        assertEquals(5, doubtful.size());
        assertTrue(doubtful.get(2).startsWith(alone));
        assertTrue(doubtful.get(3).startsWith(uneven));
        assertTrue(doubtful.get(4).startsWith(madeUp));
        List<String> sure = told(0.02, 0.15, new Witness(2, 0.5, 0), null, one).words();
        assertEquals(3, sure.size());
        assertTrue(sure.get(2).startsWith(madeUp));
    }

    /** The lowest contour that is known is named. */
    @Test
    void contoursAreMentioned() {
        Quantity no = Quantity.unknown("Not clear.");
        List<ContourPoint> contour =
                List.of(
                        new ContourPoint("dip", no, no, 1, null),
                        new ContourPoint("peak", Quantity.known(63, "Hz", 2), no, 1, null),
                        new ContourPoint("dip", Quantity.known(94, "Hz", 2), no, 1, null));
        LossCurve curve = curve(0.02);
        SetFitter fitter = new SetFitter(curve, Covariance.of(curve, 0), List.of(), null);
        Weighing weighing = new Weighing(curve, List.of(fit(10, 1, SPACE)), 10, 0, fitter, null);
        Session session = new Session(null, null, 190.5, null, "", null, "", "");
        List<String> words = new LossReport(weighing, response(contour), session).fit().words();
        assertTrue(words.get(words.size() - 1).contains("first at 63 Hz"), words.toString());
        assertEquals(words.size() - 1, told(fit(10, 1, SPACE)).words().size());
    }

    /** A space of 1 µm takes 0.2865 dB a kilohertz: more than 0.3 dB of 4 kHz, not yet of 2 kHz. */
    @Test
    void causesThatLookAlikeAreNamed() {
        SetFit space = fit(10, 1, SPACE);
        SetFit layer = fit(11, 2, LAYER);
        LossFit fit = told(space, layer);
        assertSaid(
                fit,
                "The curve can be explained in more than one way: spacing 1.0 µm; or thickness 2.0"
                        + " µm.");
        assertSaid(
                fit,
                "A space between tape and head (dirt, worn or slack tape guidance) and a thickly"
                        + " magnetised layer look alike above 4.0 kHz on this recording.");
        assertEquals(1, fit.words().stream().filter(w -> w.contains("look alike")).count());
        assertEquals(
                List.of(List.of("spacing"), List.of("thickness")),
                fit.alternatives().stream().map(a -> a.causes()).toList());
        assertEquals(1, fit.alternatives().get(1).excess());
        // the second set tells its own figures, not the first one's
        assertEquals(0, cause(fit, "thickness").shareDb().length);
        assertEquals(HZ.length, cause(fit, "spacing").shareDb().length);
    }

    /** Of four ways three are told; what sets share is not told as alike. */
    @Test
    void noMoreThanThreeWaysAreTold() {
        LossFit fit =
                told(
                        fit(10, 1, SPACE, EDGE),
                        fit(11, 3, SPACE, APERTURE),
                        fit(12, 2, LAYER, EDGE),
                        fit(13, 2, LAYER, APERTURE));
        String ways =
                fit.words().stream().filter(w -> w.contains("more than one way")).findFirst().get();
        assertEquals(3, ways.split("; or ").length);
        assertEquals(4, fit.alternatives().size());
        // the amplifier against the aperture, layer against space, and the larger of two where both
        // differ
        List<String> alike = fit.words().stream().filter(w -> w.contains("look alike")).toList();
        assertTrue(
                alike.stream()
                        .anyMatch(
                                w ->
                                        w.startsWith("A wide gap or a head that stands askew and")
                                                && w.contains("roll-off of an amplifier")),
                alike.toString());
        assertTrue(alike.stream().noneMatch(w -> w.startsWith("The roll-off")), alike.toString());
        assertEquals(alike.stream().distinct().toList(), alike);
    }

    /** A loss that nowhere reaches 0.3 dB is said to begin at the end: 0.05 µm of space. */
    @Test
    void aSmallLossBeginsAtTheEndOfTheCurve() {
        LossFit fit = told(fit(10, 0.05, SPACE), fit(11, 0.05, LAYER));
        assertTrue(
                fit.words().stream().anyMatch(w -> w.contains("look alike above 16.0 kHz")),
                fit.words().toString());
        LossFit high = told(fit(10, 0.12, SPACE), fit(11, 0.05, LAYER));
        // 0.12 µm: 0.24 dB at 8 kHz, 0.52 dB at 16 kHz
        assertTrue(high.words().stream().anyMatch(w -> w.contains("look alike above 16.0 kHz")));
        LossFit lower = told(fit(10, 0.16, SPACE), fit(11, 0.05, LAYER));
        // 0.16 µm: 0.32 dB at 8 kHz
        assertTrue(lower.words().stream().anyMatch(w -> w.contains("look alike above 8.0 kHz")));
    }

    /** Each two causes once, in the order in which sets have them. */
    @Test
    void correlationsAreToldOfEachTwoCauses() {
        LossFit fit =
                told(
                        fit(10, 1, SPACE, GAP, EDGE),
                        fit(11, 2, SPACE, GAP, EDGE),
                        fit(12, BRIGHT, 2, LAYER));
        List<String> pairs =
                fit.correlations().stream().map(c -> c.one() + "+" + c.other()).toList();
        assertEquals(
                List.of(
                        "spacing+gap",
                        "spacing+upper-edge",
                        "spacing+thickness",
                        "gap+upper-edge",
                        "gap+thickness",
                        "upper-edge+thickness"),
                pairs);
        LossCurve curve = curve(0.02);
        SetFitter fitter = new SetFitter(curve, Covariance.of(curve, 0), List.of(), null);
        assertEquals(
                fitter.correlation(SPACE, 1, LAYER, 2), fit.correlations().get(2).coefficient());
        assertTrue(fit.correlations().stream().allMatch(c -> Math.abs(c.coefficient()) <= 1));
        // of azimuth that is 0 no slope is known
        LossFit none = told(0.02, 0, new Witness(2, 0.5, 0), null, fit(10, 0, AZIMUTH, GAP));
        assertEquals(List.of(), none.correlations());
    }

    /** Decimals follow what is known: to 2 none, to 0.2 one, to 0.02 two, else three. */
    @ParameterizedTest
    @CsvSource({
        "9, 9.0",
        "10, 10",
        "1, 1.0",
        "0.99, 0.99",
        "0.1, 0.10",
        "0.09, 0.090",
        "0.01, 0.010",
    })
    void figuresHaveTheDecimalsThatTheyDeserve(double value, String text) {
        String reason = LossWords.limit(Cause.SPACING, Quantity.known(value, "µm", 0));
        assertTrue(reason.endsWith(" is less than " + text + " µm."), reason);
    }

    /** Hertz below 1 kHz and kilohertz from there on. */
    @ParameterizedTest
    @CsvSource({"999, 999 Hz", "1000, 1.0 kHz", "12345, 12.3 kHz"})
    void frequenciesAreToldInKilohertz(double hz, String text) {
        String reason = LossWords.limit(Cause.UPPER_EDGE, Quantity.known(hz, "Hz", 0));
        assertTrue(reason.endsWith(" it lies above " + text + "."), reason);
    }
}
