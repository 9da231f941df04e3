package offtape.report.render;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.networknt.schema.InputFormat;
import com.networknt.schema.JsonSchemaFactory;
import com.networknt.schema.SpecVersion;
import java.util.List;
import java.util.Set;
import offtape.reference.Schemas;
import offtape.report.result.HarmonicCurve;
import offtape.report.result.Response;
import offtape.report.result.Results;
import offtape.report.result.ResultsJson;
import org.junit.jupiter.api.Test;

/** What the sweeps tell beside the response, in report, tables and results. */
final class SweepFiguresTest {

    private static final Wording WORDS = Reader.ENGLISH;

    private static String plain(Markup markup) {
        return markup.toString().replace('\u00a0', ' ');
    }

    private static Results with(List<Response> responses) {
        return Scenario.with(
                Scenario.before().session(),
                null,
                null,
                responses,
                List.of(),
                List.of(),
                null,
                List.of());
    }

    /** Scenario: 58 Hz ± 2 % to 0.55 · 15.2 kHz; ± 3 dB is not left before the sweep's 20 Hz. */
    @Test
    void bandsTellTheirEndsOrThatTheSweepEndsFirst() {
        String table = plain(new BandsFigure(WORDS).table(Scenario.before()).open());
        assertTrue(table.contains("58.0 Hz ± 1.2 Hz"), table);
        assertTrue(table.contains("8.36 kHz ± 0.17 kHz"), table);
        assertTrue(table.contains("20 Hz or lower (end of the sweep)"), table);
        String caption = new BandsFigure(WORDS).caption(Scenario.before()).replace('\u00a0', ' ');
        assertTrue(caption.contains("from 58 Hz to 8.36 kHz on the left channel"), caption);
    }

    /** Three bands of two channels in six rows, the narrow ones below and left above right. */
    @Test
    void everyBarHasItsRow() {
        Results results = Scenario.before();
        Chart chart =
                new BandsFigure(WORDS)
                        .chart(results, Axis.audioFrequency(Reader.ENGLISH, 20, 20_000));
        assertEquals(
                List.of("R ±1", "L ±1", "R ±2", "L ±2", "R ±3", "L ±3"),
                chart.y().ticks().stream().map(Tick::label).toList());
        assertEquals(6, chart.series().size());
        assertFalse(BandsFigure.hasContent(with(List.of())));
    }

    @Test
    void peaksAreMarkedAndListedWithTheirWavelength() {
        Response left = Scenario.before().response().get(0);
        Chart.Mark mark = new ContourTable(WORDS).marks(left).findFirst().orElseThrow();
        assertEquals("L peak 71 Hz", mark.label().replace('\u00a0', ' '));
        assertEquals(1.45, mark.y());
        String table = plain(new ContourTable(WORDS).of(Scenario.before()).open());
        assertTrue(table.contains("+1.45 dB ± 0.06 dB"), table);
        assertTrue(table.contains("2.7 mm"), table);
        assertTrue(new ContourTable(WORDS).of(with(List.of())).rows().isEmpty());
    }

    /** 2 · (10 000 / 9600)² = 2.17 dB on the left. */
    @Test
    void theLossOfTheLouderSweepIsTold() {
        String figure =
                plain(
                        new LevelFigure(WORDS)
                                .of(
                                        Scenario.before(),
                                        Axis.audioFrequency(Reader.ENGLISH, 20, 20_000)));
        assertTrue(figure.contains("the left channel loses 2.17 dB from −20 dB to 0 dB"), figure);
        List<Response> quiet = Scenario.before().response().subList(0, 2);
        assertEquals(
                "",
                new LevelFigure(WORDS)
                        .of(with(quiet), Axis.audioFrequency(Reader.ENGLISH, 20, 20_000))
                        .toString());
    }

    @Test
    void harmonicsUnderTheirFloorAreNotDrawn() {
        String figure = plain(new HarmonicsFigure(WORDS).of(Scenario.before()));
        assertTrue(figure.contains("Left K3"), figure);
        assertTrue(figure.contains("&lt; 0.8"), "four times the floor of 0.2 %");
        HarmonicCurve lost =
                new HarmonicCurve(3, List.of(new HarmonicCurve.Point(1000, null, null, 0.5)));
        Response response = Scenario.before().response().get(2).withHarmonics(List.of(lost));
        String nothing = plain(new HarmonicsFigure(WORDS).of(with(List.of(response))));
        assertFalse(nothing.contains("<svg"), nothing);
        assertTrue(nothing.contains("No harmonic of the sweep at 0 dB stands above the noise."));
        assertEquals("", new HarmonicsFigure(WORDS).of(with(List.of())).toString());
    }

    @Test
    void tablesForSpreadsheetsHoldTheSameFigures() {
        var files = ReportWriter.csv(Scenario.before());
        assertTrue(
                files.get("response-bands.csv").contains("\r\nleft,-20,1,58,1.16,8360,167.2,\r\n"));
        assertTrue(
                files.get("response-bands.csv").contains("\r\nleft,-20,3,20,,15200,152,lower\r\n"));
        assertTrue(
                files.get("response-contour.csv")
                        .contains("\r\nleft,-20,peak,71,4,1.45,0.06,1.4,2.7\r\n"));
        assertTrue(files.get("response-level.csv").contains("\r\nleft,0,-20,20,0,0.06\r\n"));
        assertTrue(files.get("sweep-harmonics.csv").contains("\r\nleft,0,3,1000,1.05,0.0315,0.02"));
        assertTrue(files.get("sweep-harmonics.csv").contains("\r\nleft,0,2,62.5,,,0.2\r\n"));
    }

    /** The quietest sweep has nothing to be compared with, which its member's absence says. */
    @Test
    void resultsKeepTheSchema() {
        String json = ResultsJson.write(Scenario.before());
        assertEquals(
                Set.of(),
                JsonSchemaFactory.getInstance(SpecVersion.VersionFlag.V202012)
                        .getSchema(Schemas.results())
                        .validate(json, InputFormat.JSON));
        assertFalse(json.contains("\"levelDependence\" : null"));
        assertEquals(3, json.split("\"levelDependence\"", -1).length);
    }
}
