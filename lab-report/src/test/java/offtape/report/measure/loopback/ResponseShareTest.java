package offtape.report.measure.loopback;

import static offtape.report.measure.loopback.Loops.NO;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;

import java.util.List;
import offtape.report.result.InterfaceFigures;
import offtape.report.result.InterfaceShare;
import offtape.report.result.LoopbackSession;
import offtape.report.result.LoopbackUse;
import offtape.report.result.Response;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ResponseShareTest {

    /** An interface whose left channel has these levels at 20, 40, 1000, 16 000 and 20 000 Hz. */
    private static KnownInterface known(double... db) {
        double[] hz = {20, 40, 1000, 16_000, 20_000};
        InterfaceFigures.Curve curve =
                new InterfaceFigures.Curve(hz, db, new double[5], new double[5]);
        InterfaceFigures figures =
                new InterfaceFigures(
                        NO, null, NO, NO, NO, List.of(Loops.channel(NO, curve, null, List.of())));
        return KnownInterface.of(
                new LoopbackSession("x", 48_000, "", new LoopbackUse("", ""), figures));
    }

    private static Response response(String channel, double levelDb, double... hz) {
        double[] none = new double[hz.length];
        return new Response(
                channel, levelDb, hz, none, none, NO, NO, NO, 40, 16_000, List.of(), List.of(),
                null, List.of());
    }

    private static final double[] ALL = {20, 40, 1000, 16_000, 20_000};

    /** What counts is the largest departure from 40 Hz to 16 kHz, either way. */
    @ParameterizedTest
    @CsvSource({
        "-9, -1, 0, 0.5, 9, -1",
        "-9, 0.5, 0, -1, 9, -1",
        "-9, 0.5, 0, 1, -9, 1",
        "0, 2, 0, -1, 0, 2",
        "0, 0, 0, 0, 0, 0"
    })
    void theFarthestWithinTheBandIsTold(
            double a, double b, double c, double d, double e, double most) {
        List<InterfaceShare.Entry> entries =
                ResponseShare.entries(known(a, b, c, d, e), List.of(response("left", -20, ALL)));
        assertEquals(1, entries.size());
        InterfaceShare.Entry entry = entries.get(0);
        assertEquals(most, entry.own(), 1e-9);
        assertEquals("Response, 40 Hz to 16 kHz, farthest from 0 dB", entry.figure());
        assertEquals("left", entry.channel());
        assertEquals("dB", entry.unit());
        assertEquals("taken out", entry.treatment());
        assertNull(entry.heard());
        assertNull(entry.sharePercent());
    }

    /** More than 3 dB to be taken out limits what is told. */
    @ParameterizedTest
    @CsvSource({"-2.9, false", "-3.1, true", "2.9, false", "3.1, true"})
    void aLargeCorrectionLimits(double db, boolean limits) {
        assertEquals(
                limits,
                ResponseShare.entries(known(0, db, 0, 0, 0), List.of(response("left", -20, ALL)))
                        .get(0)
                        .limits());
    }

    /** From a dead channel nothing is taken out, not even 0 dB. */
    @Test
    void aChannelWithoutAResponseHasNoShare() {
        assertEquals(
                List.of(),
                ResponseShare.entries(known(0, 9, 0, 0, 0), List.of(response("left", -20))));
    }

    /**
     * Only frequencies that the session tells, of the quietest sweep, on a channel that is known.
     */
    @Test
    void theQuietestSweepIsAsked() {
        KnownInterface known = known(0, -1, 0, 2, 0);
        List<InterfaceShare.Entry> entries =
                ResponseShare.entries(
                        known,
                        List.of(
                                response("left", 0, ALL),
                                response("left", -20, 40, 1000),
                                response("right", -20, ALL)));
        assertEquals(1, entries.size());
        assertEquals(-1, entries.get(0).own(), 1e-9);
        assertEquals(List.of(), ResponseShare.entries(known, List.of()));
    }
}
