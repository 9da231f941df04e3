package offtape.report.render;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import offtape.core.text.Language;
import offtape.report.compare.Comparison;
import offtape.report.compare.History;
import offtape.report.headline.Subject;
import offtape.report.judge.Bounds;
import offtape.report.judge.LimitSet;
import offtape.report.result.Results;

/**
 * Turns results into what people read: a page that is complete in itself, and CSV tables. Same
 * results, same text, on any machine. Results need not be complete; what they lack is said.
 */
public final class ReportWriter {

    private ReportWriter() {}

    /** The report of one session as an HTML page, without limits in its charts. */
    public static String html(Results results) {
        return html(results, null);
    }

    /**
     * The report of one session as an HTML page.
     *
     * @param set what its figures were held against, which its charts show, or null
     */
    public static String html(Results results, LimitSet set) {
        return html(results, set, Language.ENGLISH);
    }

    /**
     * The report of one session as an HTML page in a language of the reader's.
     *
     * @param set what its figures were held against, which its charts show, or null
     */
    public static String html(Results results, LimitSet set, Language language) {
        Wording words = Wording.in(language);
        LimitLines limits = new LimitLines(words, Bounds.of(set, results));
        Markup opening =
                new Markup()
                        .add(Opening.of(words, results))
                        .add(Opening.warnings(words, results))
                        .add(HeadlineTable.of(words, results))
                        .line()
                        .element("p", words.say("session.legend"), "class", "legend")
                        .line();
        List<Section> sections = new ArrayList<>();
        if (VerdictSection.hasContent(results)) {
            sections.add(VerdictSection.of(words, results));
        }
        sections.add(new ResponseSection(words).of(results, limits));
        if (LossSection.hasContent(results)) {
            sections.add(new LossSection(words).of(results));
        }
        boolean machine = Subject.of(results) == Subject.MACHINE;
        if (machine) {
            sections.add(new SpeedSection(words).of(results, limits));
        }
        sections.add(new DistortionSection(words).of(results, limits));
        sections.add(new NoiseSection(words).of(results));
        sections.add(new ChannelsSection(words).of(results, limits));
        if (machine) {
            sections.add(new DropoutsSection(words).of(results));
        }
        if (InterfaceSection.hasContent(results)) {
            sections.add(InterfaceSection.of(words, results));
        }
        sections.add(NotesSection.of(words, results));
        sections.add(MethodSection.of(words, results));
        sections.add(GlossarySection.of(words));
        String title = words.say("session.title", words.machine(results.session()));
        return Page.of(words, title, opening, sections, List.of(results.session()));
    }

    /**
     * Two sessions side by side as an HTML page, for example before and after a service.
     *
     * @param comparison of these two
     */
    public static String html(
            Comparison comparison, Results before, Results after, Language language) {
        return PairPage.of(Wording.in(language), comparison, before, after);
    }

    /** The same in English. */
    public static String html(Comparison comparison, Results before, Results after) {
        return html(comparison, before, after, Language.ENGLISH);
    }

    /** One machine over many sessions as an HTML page, in English. */
    public static String html(History history) {
        return html(history, Language.ENGLISH);
    }

    /** One machine over many sessions as an HTML page. */
    public static String html(History history, Language language) {
        return HistoryPage.of(Wording.in(language), history);
    }

    /**
     * The measured curves as tables: file names and the text of each file (RFC 4180, UTF-8, units
     * in the heads). {@code response.csv}, {@code response-bands.csv}, {@code
     * response-contour.csv}, {@code response-level.csv}, {@code sweep-harmonics.csv}, {@code
     * ladder.csv}, {@code noise.csv}, {@code speed.csv}, {@code speed-readings.csv}, {@code
     * speed-spectrum.csv}, {@code speed-components.csv}, {@code speed-passes.csv}, {@code
     * transport-speed.csv}, {@code transport-spectrum.csv}, {@code transport-components.csv},
     * {@code crosstalk.csv}, {@code interchannel-delay.csv} and {@code dropouts.csv} are always
     * there, with heads only if nothing was measured.
     */
    public static Map<String, String> csv(Results results) {
        Map<String, String> texts = new TreeMap<>();
        CsvFiles.of(results).forEach((name, table) -> texts.put(name, table.toString()));
        return Collections.unmodifiableMap(texts);
    }

    /**
     * The same tables as one workbook of sheets (ECMA-376), whose numbers are numbers in a
     * spreadsheet of any language.
     */
    public static byte[] workbook(Results results) {
        return TablesWorkbook.of(CsvFiles.of(results));
    }
}
