package offtape.report.measure.loss;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.function.DoubleUnaryOperator;
import offtape.core.standard.TrackSpacing;
import offtape.core.unit.Quantity;
import offtape.report.result.Channels;
import offtape.report.result.LossCause;
import offtape.report.result.LossFit;
import offtape.report.result.Response;
import offtape.report.result.Session;
import org.junit.jupiter.api.Test;

class LossMeasureTest {

    private static final double MM_PER_S = 190.5;

    @Test
    void withoutASpeedOrATapeNothingIsTold() {
        LossFit none = fit(hz -> 0, null, "reference-tape", null);
        assertTrue(none.words().get(0).contains("--tape-speed"));
        assertFalse(none.residual().isKnown());
        assertTrue(fit(hz -> 0, MM_PER_S, "loopback", null).words().get(0).contains("No tape"));
    }

    @Test
    void aFlatCurveHasNoCause() {
        LossFit fit = fit(hz -> 0, MM_PER_S, "reference-tape", null);
        assertTrue(fit.causes().stream().noneMatch(c -> c.quantity().isKnown()), fit.toString());
        assertEquals(List.of(), fit.alternatives().get(0).causes());
        assertTrue(fit.words().stream().anyMatch(w -> w.startsWith("No cause of loss stands out")));
    }

    /** 1 µm at 19.05 cm/s: 54.6 dB · 1/190.5 for each kHz, 2.6 dB at 10 kHz re 1 kHz. */
    @Test
    void aSpaceAndAThinLayerLookAlike() {
        LossFit fit = fit(hz -> -54.575e-3 * hz / MM_PER_S, MM_PER_S, "two-pass", null);
        assertTrue(fit.words().get(0).contains("recording and replay together"));
        assertTrue(
                fit.words().stream()
                        .anyMatch(w -> w.contains("look alike above") && w.contains("layer")),
                fit.words().toString());
        LossCause spacing = cause(fit, "spacing");
        assertTrue(spacing.quantity().isKnown() || spacing.lessThan() >= 1, spacing.toString());
    }

    /** A gap of 1.5 µm at 4.76 cm/s is told from azimuth by the delay between the channels only. */
    @Test
    void theDelayTellsAGapFromAzimuth() {
        DoubleUnaryOperator gap = hz -> sinc(1.11 * 1.5 * hz / 47_625);
        LossFit without = fit(gap, 47.625, "reference-tape", null);
        LossCause either = cause(without, "gap-or-azimuth");
        assertTrue(either.quantity().isKnown(), without.words() + " " + without.alternatives());
        assertEquals(1.11 * 1.5, either.quantity().value(), either.quantity().uncertainty());
        LossFit with = fit(gap, 47.625, "reference-tape", 0.0);
        Quantity told = cause(with, "gap").quantity();
        assertTrue(told.isKnown(), with.words() + " " + with.alternatives());
        assertEquals(1.5, told.value(), told.uncertainty());
        assertEquals("arc min", cause(with, "azimuth").limitUnit());
    }

    /** A 50 µs tape replayed with 70 µs: 10·lg((1 + (ω·70 µs)²)/(1 + (ω·50 µs)²)) re 1 kHz. */
    @Test
    void aWrongEqualisationIsNamed() {
        LossFit fit = fit(hz -> shelf(hz) - shelf(1000), MM_PER_S, "reference-tape", null);
        LossCause found = cause(fit, "equalisation");
        double high = shelf(10_000) - shelf(1000);
        assertEquals(high, found.quantity().value(), found.quantity().uncertainty());
        assertEquals("50 µs on the tape and 70 µs in replay", found.detail());
    }

    /** Unevenness of ±0.3 dB, which no cause makes, is said and widens the figures. */
    @Test
    void unevennessIsSaid() {
        LossFit fit =
                fit(
                        hz -> -0.02e-3 * hz + 0.3 * Math.sin(9 * Math.log(hz)),
                        MM_PER_S,
                        "reference-tape",
                        null);
        assertTrue(fit.unexplainedDb() > 0.1, "unexplained " + fit.unexplainedDb());
        assertTrue(fit.words().stream().anyMatch(w -> w.contains("uneven")));
    }

    private static Response sweep(String channel, double levelDb, double topHz) {
        Response r = new MadeCurve(3, 0.01).response(channel, hz -> 0, topHz);
        return new Response(
                channel,
                levelDb,
                r.frequencyHz(),
                r.magnitudeDb(),
                r.uncertaintyDb(),
                r.lowerEdge(),
                r.upperEdge(),
                r.ripple(),
                0,
                0,
                List.of(),
                List.of(),
                null,
                List.of());
    }

    private static List<LossFit> measured(double rateHz, Response... responses) {
        Quantity no = Quantity.unknown("The recording has one channel only.");
        Channels pair = new Channels(no, no, no, no, no, no, no, no, no, no, no, List.of(), null);
        Session session =
                new Session(null, null, MM_PER_S, "reference-tape", "", null, "", "", null);
        return new LossMeasure(session, pair, rateHz).measure(List.of(responses));
    }

    private static List<String> heard(List<LossFit> fits) {
        return fits.stream()
                .map(f -> f.channel() + (f.residual().isKnown() ? "" : ": " + f.words().get(0)))
                .toList();
    }

    /** The quietest sweep tells it, and here only the loud one of the right channel reaches far. */
    @Test
    void theQuietestSweepOfEachChannelIsAsked() {
        String little =
                ": The quiet sweep was not heard clearly enough up to 4 kHz to tell causes of"
                        + " loss.";
        assertEquals(
                List.of("left", "right" + little),
                heard(
                        measured(
                                48_000,
                                sweep("right", 0, 16_000),
                                sweep("right", -20, 3900),
                                sweep("left", -20, 16_000),
                                sweep("left", 0, 3900))));
        assertEquals(List.of("right" + little), heard(measured(48_000, sweep("right", 0, 3900))));
        assertEquals(List.of(), measured(48_000));
    }

    /** A recorder takes nothing away up to 0.45 of its rate: 4117 Hz of 9149 Hz. */
    @Test
    void theRecordersOwnFilterIsLeftOut() {
        Response full = sweep("left", 0, 16_000);
        assertFalse(measured(9140, full).get(0).residual().isKnown());
        LossFit fit = measured(9160, full).get(0);
        // 49 twenty-fourths of an octave over 1 kHz
        assertEquals(4117.2, fit.frequencyHz()[fit.frequencyHz().length - 1], 0.1);
    }

    private static double sinc(double waves) {
        double x = Math.PI * waves;
        return 20 * Math.log10(Math.sin(x) / x);
    }

    private static double shelf(double hz) {
        double w = 2e-6 * Math.PI * hz;
        return 10 * Math.log10((1 + 4900 * w * w) / (1 + 2500 * w * w));
    }

    private static LossCause cause(LossFit fit, String name) {
        return fit.causes().stream().filter(c -> c.cause().equals(name)).findFirst().orElseThrow();
    }

    private static LossFit fit(DoubleUnaryOperator db, Double speed, String mode, Double delayUs) {
        Quantity no = Quantity.unknown("The recording has one channel only.");
        Quantity delay = delayUs == null ? no : Quantity.known(delayUs, "µs", 0.05);
        Channels pair =
                new Channels(no, no, no, delay, no, no, no, no, no, no, no, List.of(), null);
        TrackSpacing tracks = TrackSpacing.named("quarter-track");
        Session session = new Session(null, null, speed, mode, "", null, "", "", tracks);
        return new LossMeasure(session, pair, 48_000)
                .measure(List.of(new MadeCurve(3, 0.01).response("left", db, 20_000)))
                .get(0);
    }
}
