package offtape.report.render;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.HashMap;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Contrast of the style sheet's colours by the formula of WCAG 2.2 (relative luminance and contrast
 * ratio, W3C Recommendation): success criterion 1.4.3 asks 4.5 : 1 for text, 1.4.11 asks 3 : 1 for
 * graphical objects.
 */
final class PaletteTest {

    private static final Pattern COLOUR = Pattern.compile("--([a-z]+): #([0-9a-f]{6});");

    private final Map<String, String> light = new HashMap<>();
    private final Map<String, String> dark = new HashMap<>();

    PaletteTest() {
        String css = Page.styleSheet();
        int darkStart = css.indexOf("prefers-color-scheme: dark");
        read(css.substring(0, darkStart), light);
        dark.putAll(light);
        read(css.substring(darkStart, css.indexOf("* {")), dark);
    }

    /** Black on white is 21 : 1 (WCAG 2.2, definition of contrast ratio). */
    @Test
    void theFormulaGivesTheKnownExtremes() {
        assertEquals(21, ratio("000000", "ffffff"), 1e-9);
        assertEquals(1, ratio("777777", "777777"), 1e-9);
    }

    @ParameterizedTest
    @CsvSource({
        "ink, sheet", "ink, paper", "soft, sheet", "soft, ground", "soft, band", "left, sheet",
        "left, ground", "left, band", "right, ground", "right, band", "ink, ground", "warn, sheet"
    })
    void textsStandOut(String text, String ground) {
        assertTrue(ratio(light.get(text), light.get(ground)) >= 4.5, "light");
        assertTrue(ratio(dark.get(text), dark.get(ground)) >= 4.5, "dark");
    }

    @ParameterizedTest
    @CsvSource({
        "left, ground", "right, ground", "left, band", "right, band", "trace, ground",
        "axis, ground", "ink, ground", "tape, sheet", "focus, sheet", "warn, sheet"
    })
    void linesStandOut(String line, String ground) {
        assertTrue(ratio(light.get(line), light.get(ground)) >= 3, "light");
        assertTrue(ratio(dark.get(line), dark.get(ground)) >= 3, "dark");
    }

    /** Paper is printed white: the light inks must do there too. */
    @ParameterizedTest
    @CsvSource({"ink", "soft", "left", "right", "warn"})
    void printStandsOut(String ink) {
        assertTrue(ratio(light.get(ink), "ffffff") >= 4.5, ink);
    }

    private static void read(String css, Map<String, String> colours) {
        Matcher matcher = COLOUR.matcher(css);
        while (matcher.find()) {
            colours.put(matcher.group(1), matcher.group(2));
        }
    }

    private static double ratio(String one, String other) {
        double a = luminance(one);
        double b = luminance(other);
        return (Math.max(a, b) + 0.05) / (Math.min(a, b) + 0.05);
    }

    private static double luminance(String hex) {
        return 0.2126 * channel(hex, 0) + 0.7152 * channel(hex, 2) + 0.0722 * channel(hex, 4);
    }

    private static double channel(String hex, int at) {
        double c = Integer.parseInt(hex.substring(at, at + 2), 16) / 255.0;
        return c <= 0.04045 ? c / 12.92 : Math.pow((c + 0.055) / 1.055, 2.4);
    }
}
