package offtape.report.render;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import offtape.report.judge.Judge;
import offtape.report.judge.LimitSet;
import offtape.report.result.Response;
import offtape.report.result.Results;
import offtape.report.result.Verdict;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** A session held against limits, from the set to the page. */
class JudgedTest {

    @TempDir private Path folder;

    private Results judged(Results results, String limits) throws IOException {
        return Judge.judged(results, set(limits));
    }

    private LimitSet set(String limits) throws IOException {
        String text =
                "{\"format\": \"offtape-limits\", \"version\": 1, \"name\": \"house rule\","
                        + " \"source\": \"invented\", \"limits\": ["
                        + limits
                        + "]}";
        Path file = Files.writeString(folder.resolve("limits.json"), text);
        return LimitSet.of(file.toString());
    }

    private static Verdict.Check first(Results results) {
        return results.verdict().checks().get(0);
    }

    /** The limit is put at the measured figure plus so many of its uncertainties. */
    @ParameterizedTest
    @CsvSource({"1.1, pass", "0.5, marginal", "-0.5, marginal", "-1.1, fail"})
    void aFigureIsHeldAgainstItsLimit(double uncertainties, String outcome) throws IOException {
        Results before = Scenario.before();
        var flutter = before.speed().weightedPeak();
        double limit = flutter.value() + uncertainties * flutter.uncertainty();
        Results judged =
                judged(before, "{\"quantity\": \"wow-and-flutter\", \"most\": " + limit + "}");
        assertEquals(outcome, first(judged).outcome());
        assertEquals(flutter.value(), first(judged).value());
        assertEquals(outcome.equals("fail"), Judge.isFailed(judged));
        assertTrue(ReportWriter.html(judged).contains("house rule"));
    }

    /** The response is that of the quietest sweep; its widest swing within the band is by hand. */
    @Test
    void aResponseIsHeldAgainstAWidthAndLevels() throws IOException {
        Results before = Scenario.before();
        Response left =
                before.response().stream()
                        .filter(r -> r.channel().equals("left"))
                        .min((a, b) -> Double.compare(a.levelDb(), b.levelDb()))
                        .orElseThrow();
        double low = Double.MAX_VALUE;
        double high = -Double.MAX_VALUE;
        for (int i = 0; i < left.frequencyHz().length; i++) {
            if (left.frequencyHz()[i] >= 100 && left.frequencyHz()[i] <= 8000) {
                low = Math.min(low, left.magnitudeDb()[i]);
                high = Math.max(high, left.magnitudeDb()[i]);
            }
        }
        String band = "{\"quantity\": \"response\", \"fromHz\": 100, \"toHz\": 8000, ";
        Results wide = judged(before, band + "\"widthDb\": " + (high - low + 3) + "}");
        assertEquals("pass", first(wide).outcome());
        assertEquals(high - low, first(wide).value(), 1e-9);
        Results levels =
                judged(
                        before,
                        band + "\"lowDb\": " + (low + 3) + ", \"highDb\": " + (high + 3) + "}");
        assertEquals("fail", first(levels).outcome());
        assertEquals(low, first(levels).value(), 1e-9);
        Results beyond =
                judged(
                        before,
                        "{\"quantity\": \"response\", \"fromHz\": 100, \"toHz\": 90000,"
                                + " \"widthDb\": 3}");
        assertEquals("unknown", first(beyond).outcome());
    }

    @Test
    void limitsOfAnotherTapeSpeedDoNotCountAndUnknownFiguresSayWhy() throws IOException {
        String flutter = "{\"quantity\": \"wow-and-flutter\", \"most\": 0.1, ";
        Results before = Scenario.before();
        Results judged =
                judged(
                        before,
                        flutter
                                + "\"tapeSpeedMmPerS\": 190.5}, "
                                + flutter
                                + "\"tapeSpeedMmPerS\": 381}");
        assertEquals(1, judged.verdict().checks().size());
        Results empty =
                judged(Scenario.empty(null), "{\"quantity\": \"crosstalk\", \"most\": -30}");
        assertEquals("unknown", first(empty).outcome());
        assertTrue(first(empty).reason().length() > 10);
        assertEquals(2, empty.verdict().checks().size());
    }

    /** The charts of a report show each limit that has a place in one. */
    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "{'quantity': 'response', 'fromHz': 100, 'toHz': 5000, 'lowDb': -3, 'highDb': 3}"
                        + "| response-chart | 2",
                "{'quantity': 'wow-and-flutter', 'most': 0.2} | speed-readings | 1",
                "{'quantity': 'level-at-3-percent', 'least': 3} | k3-chart | 1",
                "{'quantity': 'crosstalk', 'most': -30} | crosstalk-chart | 1",
                "{'quantity': 'interchannel-delay', 'least': -14, 'most': 14} | delay-trace | 1",
                "{'quantity': 'balance', 'least': -1, 'most': 1} | none | 0"
            })
    void limitsAreDrawn(String limit, String chart, int lines) throws Exception {
        LimitSet set = set(limit.replace('\'', '"'));
        String page = ReportWriter.html(Scenario.before(), set);
        for (String svg : Svg.drawings(page)) {
            boolean isIt = svg.contains("aria-labelledby=\"" + chart + "-title\"");
            int found = svg.split("class=\"limit\"", -1).length - 1;
            assertEquals(isIt ? lines : 0, found, svg.substring(0, 200));
        }
    }
}
