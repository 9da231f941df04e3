package offtape.report.measure;

import static offtape.report.measure.MadeResults.NO;
import static offtape.report.measure.MadeResults.about;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertSame;

import java.util.List;
import java.util.stream.Stream;
import offtape.core.unit.Quantity;
import offtape.report.result.HealthNote;
import offtape.report.result.InterfaceFigures;
import offtape.report.result.Results;
import org.junit.jupiter.api.Test;

/** A loopback has no tape: what only tape can have is not told of it. */
class InterfaceAloneTest {

    private static final InterfaceFigures FIGURES =
            new InterfaceFigures(NO, null, NO, NO, NO, List.of());

    private static final Quantity NO_TAPE =
            Quantity.unknown("No tape was in the way; the interface measured itself.");

    private static final Results HEARD =
            MadeResults.of(
                    MadeResults.timing(NO, NO),
                    List.of(MadeResults.response("left", -20, new double[] {1000}, 0)),
                    List.of(MadeResults.ladder("left", 1000, NO)),
                    List.of(MadeResults.noise("left", -90, -92, -80)),
                    MadeResults.pair(about(-70, "dB"), NO, about(2, "µs")));

    private static List<String> codesOf(String... heard) {
        List<HealthNote> notes =
                Stream.of(heard).map(code -> new HealthNote("warning", code, code)).toList();
        return InterfaceAlone.of(HEARD.withHealth(notes), FIGURES).health().stream()
                .map(HealthNote::code)
                .toList();
    }

    @Test
    void angleDropoutsAndLossesAreLeftOut() {
        Results told = InterfaceAlone.of(HEARD, FIGURES);
        assertEquals(NO_TAPE, told.channels().azimuth());
        assertEquals(NO_TAPE, told.channels().azimuthWander());
        assertEquals(List.of(), told.dropouts());
        assertEquals(0, told.dropoutSummary().searchedSeconds());
        assertEquals(NO_TAPE, told.dropoutSummary().perMinute());
        assertEquals(NO_TAPE, told.dropoutSummary().deepest());
        assertEquals(NO_TAPE, told.dropoutSummary().longest());
        assertEquals(List.of(), told.losses());
    }

    @Test
    void allElseStaysAndTheFiguresAreAdded() {
        Results told = InterfaceAlone.of(HEARD, FIGURES);
        assertSame(FIGURES, told.interfaceFigures());
        assertNull(told.interfaceShare());
        assertEquals(HEARD.session(), told.session());
        assertEquals(HEARD.timing(), told.timing());
        assertEquals(HEARD.speed(), told.speed());
        assertEquals(HEARD.response(), told.response());
        assertEquals(HEARD.distortion(), told.distortion());
        assertEquals(HEARD.noise(), told.noise());
        assertEquals(
                HEARD.channels().crosstalkLeftToRight(), told.channels().crosstalkLeftToRight());
        assertEquals(HEARD.channels().interchannelDelay(), told.channels().interchannelDelay());
        assertEquals(HEARD.health(), told.health());
        assertEquals(HEARD.verdict(), told.verdict());
    }

    /** Distortion unlike that of tape, and drift, are no faults where there is none. */
    @Test
    void remarksOnTapeAreLeftOut() {
        assertEquals(
                List.of("clipping", "xrun"),
                codesOf(
                        "clipping",
                        "distortion-not-of-tape",
                        "distortion-abrupt",
                        "drift",
                        "xrun"));
    }
}
