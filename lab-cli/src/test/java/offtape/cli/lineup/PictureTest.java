package offtape.cli.lineup;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import offtape.core.text.Language;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** What a user sees. */
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
class PictureTest {

    private static final Wording ENGLISH = Wording.in(Language.ENGLISH);
    private static final Picture PICTURE = new Picture(ENGLISH);

    private static final double DOWN = Math.pow(10, -1.3 / 20);

    private final Map<View, Readings> settled = new EnumMap<>(View.class);

    private Readings readings(View view) {
        return settled.computeIfAbsent(
                view, v -> new Bench(v, false).by((l, r) -> new double[] {l, DOWN * r}).settle());
    }

    @ParameterizedTest
    @EnumSource(View.class)
    void itFitsAScreenOfEightyOrSixtyByTwentyFour(View view) {
        Readings r = readings(view);
        for (int width : List.of(80, 60)) {
            List<String> lines = PICTURE.of(r, width);
            assertTrue(lines.stream().allMatch(l -> l.length() <= width), () -> "" + lines);
            long filled = lines.stream().filter(l -> !l.isEmpty()).count();
            assertTrue(filled <= 24, () -> String.join("\n", lines));
        }
    }

    /** Long words take more lines, never wider ones, and what hurts is told in full. */
    @ParameterizedTest
    @EnumSource(View.class)
    void itSpeaksGerman(View view) {
        Picture german = new Picture(Wording.in(Language.GERMAN));
        List<String> lines = german.of(readings(view), 60);
        assertTrue(lines.stream().allMatch(l -> l.length() <= 60), () -> "" + lines);
        String all = String.join("\n", lines);
        assertFalse(all.matches("(?s).*\\b(the|of|and|is|with|from|no|not|than|which)\\b.*"), all);
        assertEquals(view != View.GAINS, all.contains("Netzspannung"), all);
    }

    @Test
    void figuresAndWordsStandTogether() {
        List<String> lines = PICTURE.of(readings(View.GAINS), 80);
        assertEquals("OFFTAPE LINE-UP   gains and balance", lines.get(0));
        assertTrue(lines.get(1).endsWith("1 kHz, 0.0 dB re reference (-18.0 dBFS), both"));
        String all = String.join("\n", lines);
        assertTrue(all.contains("Right less left  -1.30 dB"), all);
        assertTrue(
                all.contains("> Right comes back 1.3 dB low: raise the right record gain."), all);
        assertTrue(all.contains("100.00 ms, the computer's buffers included"), all);
        assertTrue(all.contains("q quit"), all);
    }

    @Test
    void theCautionComesFirst() {
        String all = String.join("\n", PICTURE.of(new Bench(View.GAINS, false).run(0.25), 80));
        assertTrue(all.contains("CAUTION  A steady tone is about to sound"), all);
        assertTrue(all.contains("nothing for a moment"), all);
    }

    @Test
    void screwsComeWithACaution() {
        String all = String.join(" ", PICTURE.of(readings(View.BIAS), 200)).replaceAll(" +", " ");
        assertTrue(all.contains("mains voltage"), all);
        assertTrue(all.contains("licensed technician"), all);
    }

    @Test
    void linesTellTheSame() {
        PlainLog log = new PlainLog(ENGLISH);
        Readings r = readings(View.GAINS);
        assertEquals(2, log.news(r).size());
        assertEquals(List.of(), log.news(r));
        assertEquals(1, log.advice(r).size());
        assertEquals(List.of(), log.advice(r));
        assertTrue(
                log.line(r)
                        .startsWith(
                                "left 0.00 dB re sent (-18.00 dBFS), right -1.30 dB re sent"
                                        + " (-19.30 dBFS), right less left -1.30 dB, K3 below"),
                log.line(r));
        assertTrue(log.line(readings(View.AZIMUTH)).startsWith("right late by 0.00 µs, mono sum"));
        assertEquals("no steady tone", log.line(readings(View.TAPE)));
        assertTrue(log.line(readings(View.BIAS)).endsWith("below maximum 0.00 dB and 0.00 dB"));
    }
}
