package offtape.report.render;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.networknt.schema.InputFormat;
import com.networknt.schema.JsonSchema;
import com.networknt.schema.JsonSchemaFactory;
import com.networknt.schema.SpecVersion;
import java.io.StringReader;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import java.util.regex.Pattern;
import javax.xml.parsers.DocumentBuilderFactory;
import offtape.core.audio.AudioFile;
import offtape.core.audio.AudioFiles;
import offtape.core.audio.MemoryAudio;
import offtape.core.output.OutputFolder;
import offtape.core.text.Language;
import offtape.reference.Schemas;
import offtape.report.apply.correct.Correction;
import offtape.report.apply.correct.CorrectionWish;
import offtape.report.apply.correct.Corrector;
import offtape.report.result.Results;
import offtape.report.result.ResultsJson;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.xml.sax.InputSource;

/** What is written of a correction: figures, page, settings, tables, filters. */
class CorrectionPageTest {

    private static final JsonSchema SCHEMA =
            JsonSchemaFactory.getInstance(SpecVersion.VersionFlag.V202012)
                    .getSchema(Schemas.correction());

    private static Correction correction;

    @TempDir private Path folder;

    @BeforeAll
    static void correct() {
        Results results = Pairs.worn("Deck <A>");
        Results timed =
                new Results(
                        results.format(),
                        results.version(),
                        results.session().withRecording(48_000, "", -18.0),
                        results.timing(),
                        results.speed(),
                        results.response(),
                        results.distortion(),
                        results.noise(),
                        results.channels(),
                        results.dropouts(),
                        results.health(),
                        results.verdict(),
                        results.dropoutSummary());
        Corrector corrector =
                new Corrector(
                        timed,
                        "session",
                        new CorrectionWish(null, List.of(), 12, 12, 2, false, List.of()));
        double[] music = new double[9600];
        java.util.Arrays.setAll(music, i -> 0.5 * Math.sin(0.8 * i));
        correction =
                corrector
                        .correction(List.of(Scenario.after()))
                        .withMusic(corrector.music(new MemoryAudio("song.wav", 48_000, music)));
    }

    @Test
    void figuresKeepTheirSchema() {
        String json = ResultsJson.write(correction);
        assertEquals(Set.of(), SCHEMA.validate(json, InputFormat.JSON));
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            quoteCharacter = '`',
            value = {
                "\"version\" : 1|\"version\" : 2",
                "\"channel\" : \"left\"|\"channel\" : \"middle\"",
                "\"kind\" : \"peak\"|\"kind\" : \"notch\"",
                "\"beforeTape\"|\"before\"",
                "\"highsBelow\"|\"below\"",
            })
    void otherFiguresDoNot(String right, String wrong) {
        String good = ResultsJson.write(correction);
        String bad = good.replace(right, wrong);
        assertFalse(bad.equals(good), "nothing was changed");
        assertFalse(SCHEMA.validate(bad, InputFormat.JSON).isEmpty());
    }

    @Test
    void thePageIsWellFormedAndLoadsNothing() throws Exception {
        String page = new CorrectionPage(Reader.ENGLISH).of(correction);
        String xml = page.substring(page.indexOf("<html"));
        DocumentBuilderFactory.newInstance()
                .newDocumentBuilder()
                .parse(new InputSource(new StringReader(xml)));
        assertTrue(page.contains("Before recording on Deck &lt;A&gt;"));
        assertFalse(page.contains("NaN") || page.contains("http://") && page.contains("src="));
        for (String id : List.of("response", "filter", "noise", "headroom", "level")) {
            assertTrue(page.contains("<section id=\"" + id + "\""), id);
        }
        assertTrue(page.contains("song.wav peaks at"));
    }

    @Test
    void settingsSayBothWays() {
        String text = SettingsText.of(Reader.ENGLISH, correction);
        assertTrue(text.contains("1. Before the tape"), text);
        assertTrue(text.contains("load after-tape-48000.wav"), text);
        assertTrue(text.contains("% third harmonic"), text);
        assertFalse(text.contains("NaN"), text);
    }

    @Test
    void inGermanNothingIsLeftInEnglish() {
        Wording german = Reader.GERMAN;
        // a user's name for a tape is nobody's to translate
        String tape = correction.session().tape();
        String page = new CorrectionPage(german).of(correction).replace(tape, "Band 1");
        assertEquals(List.of(), EnglishLeft.in(page));
        assertTrue(page.contains("Vor der Aufnahme auf Deck &lt;A&gt;"));
        String settings = SettingsText.of(german, correction).replace(tape, "Band 1");
        assertEquals(List.of(), EnglishLeft.inText(settings));
        assertTrue(settings.contains("after-tape-48000.wav als Impulsantwort laden"), settings);
        assertFalse(Pattern.compile("[0-9]\\.[0-9]").matcher(settings).find(), settings);
    }

    @Test
    void allFilesAreWrittenAndTheFiltersAreSound() throws Exception {
        Path out = folder.resolve("out");
        String[] names = CorrectionFiles.names(correction);
        try (OutputFolder target = OutputFolder.open(out, false, names)) {
            CorrectionFiles.write(correction, target, Language.ENGLISH);
            target.commit();
        }
        for (String name : names) {
            assertTrue(Files.size(out.resolve(name)) > 40, name);
        }
        try (AudioFile filter = AudioFiles.open(out.resolve("pre-emphasis-48000.wav"))) {
            assertEquals(48_000, filter.sampleRateHz());
            assertEquals(2, filter.channels());
            double[] taps = filter.read(0, (int) filter.frames())[0];
            assertEquals(correction.filters().get(0).response()[0][3], taps[3], 0);
        }
    }
}
