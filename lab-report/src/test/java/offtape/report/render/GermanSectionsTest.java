package offtape.report.render;

import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Set;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import offtape.report.judge.Bounds;
import offtape.report.result.Dropout;
import offtape.report.result.Results;
import offtape.report.result.Session;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** The parts of a report that tell of the signal, to a reader of German. */
final class GermanSectionsTest {

    private static final Wording WORDS = Reader.GERMAN;

    /** What a reader meets: texts between tags, and those of drawings and scrolling tables. */
    private static final Pattern TEXT =
            Pattern.compile(">([^<]+)<|(?:aria-label|data-name)=\"([^\"]*)\"");

    /** Words without which English hardly makes a sentence, and others that German lacks. */
    private static final Pattern ENGLISH =
            Pattern.compile(
                    "(?i)\\b(the|of|and|is|with|from|no|not|than|which|left|right|channel|level"
                            + "|noise|limit|yes|unknown|below|frequency)\\b");

    /** {@code 1.5 dB} where German writes 1,5 dB; the name of a standard is none. */
    private static final Pattern DECIMAL_POINT = Pattern.compile("[0-9]\\.[0-9]");

    /** The reason of what is unknown comes from results, where it is kept in English. */
    private static final Pattern REASON = Pattern.compile("(?<=unbekannt: ).*");

    /** What the causes of loss say comes from results too. */
    private static final Set<String> KEPT = kept(Scenario.before());

    private static Set<String> kept(Results results) {
        return results.losses().stream()
                .flatMap(
                        fit ->
                                Stream.of(
                                                fit.words().stream(),
                                                fit.alternatives().stream()
                                                        .map(a -> WORDS.sentence(a.text())),
                                                fit.causes().stream()
                                                        .filter(c -> !c.quantity().isKnown())
                                                        .map(c -> c.quantity().reason()))
                                        .flatMap(said -> said))
                .map(said -> said.replace('\u00a0', ' '))
                .collect(Collectors.toSet());
    }

    private static LimitLines limits() {
        return new LimitLines(
                WORDS,
                List.of(
                        new Bounds(Bounds.RESPONSE, 40.0, 14_000.0, -2.0, 2.0, true),
                        new Bounds(Bounds.CROSSTALK, null, null, null, -40.0, false)));
    }

    /** A machine of which all is known; drawn once for all that is asked of it. */
    private static final Section RESPONSE =
            new ResponseSection(WORDS).of(Scenario.before(), limits());

    private static final Section DISTORTION =
            new DistortionSection(WORDS).of(Scenario.before(), limits());

    private static final Section DROPOUTS = new DropoutsSection(WORDS).of(Scenario.before());

    static Stream<Section> sections() {
        return Stream.of(
                RESPONSE,
                DISTORTION,
                DROPOUTS,
                new LossSection(WORDS).of(Scenario.before()),
                new NoiseSection(WORDS).of(Scenario.before()),
                new ChannelsSection(WORDS).of(Scenario.before(), limits()),
                new DistortionSection(WORDS).of(loopback(), limits()),
                new NoiseSection(WORDS).of(loopback()),
                new ChannelsSection(WORDS).of(loopback(), limits()),
                new ResponseSection(WORDS).of(with(List.of()), limits()),
                new DistortionSection(WORDS).of(with(List.of()), limits()),
                new NoiseSection(WORDS).of(with(List.of())),
                new DropoutsSection(WORDS).of(with(List.of())));
    }

    private static Results loopback() {
        Results whole = Scenario.before();
        return Scenario.with(
                new Session(null, null, null, "loopback", null, null, null, null),
                whole.timing(),
                null,
                List.of(),
                whole.distortion().subList(0, 1),
                whole.noise().subList(1, 2),
                null,
                List.of());
    }

    private static Results with(List<Dropout> dropouts) {
        return new Results(
                Results.FORMAT,
                Results.VERSION,
                Scenario.before().session(),
                null,
                null,
                List.of(),
                List.of(),
                List.of(),
                null,
                dropouts,
                List.of(),
                Scenario.before().verdict(),
                null,
                null,
                null,
                List.of());
    }

    private static List<String> texts(Section section) {
        return TEXT.matcher(section.markup().toString().replace('\u00a0', ' '))
                .results()
                .map(found -> found.group(1) == null ? found.group(2) : found.group(1))
                .filter(said -> KEPT.stream().noneMatch(said::contains))
                .map(said -> REASON.matcher(said).replaceFirst(""))
                .toList();
    }

    private static String text(Section section) {
        return String.join("\n", texts(section));
    }

    @ParameterizedTest
    @MethodSource("sections")
    void noEnglishIsLeft(Section section) {
        for (String said : texts(section)) {
            assertFalse(ENGLISH.matcher(said).find(), said);
            assertFalse(DECIMAL_POINT.matcher(said).find(), said);
        }
    }

    /** Scenario: 3 % at 6.1 dB and 4.4 dB; 58 Hz to 0.55 · 15.2 kHz; a peak at 71 Hz. */
    @Test
    void figuresStandInGermanSentences() {
        String distortion = text(DISTORTION);
        assertTrue(
                distortion.contains("K3 erreicht 3 % links bei +6,1 dB und rechts bei +4,4 dB."),
                distortion);
        String response = text(RESPONSE);
        assertTrue(response.contains("links von 58 Hz bis 8,36 kHz und rechts von"), response);
        assertTrue(response.contains("L Erhebung 71 Hz"), response);
        assertTrue(response.contains("Linien mit Zähnen sind Grenzwerte"), response);
    }

    /** Scenario: three, of which the deepest is 5.2 dB for 23.4 ms at 41.32 s on the right. */
    @Test
    void dropoutsAreCounted() {
        String several = text(DROPOUTS);
        assertTrue(
                several.contains(
                        "3 Aussetzer; der tiefste, 5,2 dB für 23 ms, liegt auf dem Kanal rechts bei"
                                + " 41,32 s."),
                several);
        Results one = with(List.of(new Dropout("left", 12.5, 30, 6.25, true)));
        String single = text(new DropoutsSection(WORDS).of(one));
        assertTrue(
                single.contains(
                        "Ein Aussetzer von 6,3 dB und 30 ms liegt auf dem Kanal links bei 12,50 s."),
                single);
    }
}
