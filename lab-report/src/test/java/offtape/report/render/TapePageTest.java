package offtape.report.render;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import offtape.core.unit.Quantity;
import offtape.report.result.TapeReading;
import offtape.report.result.TapeReference;
import offtape.report.result.TapeResponse;
import offtape.report.result.TapeSeries;
import offtape.report.result.TapeTone;
import offtape.report.result.ToneLevel;
import org.junit.jupiter.api.Test;

/** The report on a calibration tape, of two tones that nobody measured. */
class TapePageTest {

    private static TapeTone tone(int number, double hz) {
        Quantity level = Quantity.known(-18.25, "dB", 0.05);
        Quantity difference = Quantity.known(-0.5, "dB", 0.02);
        Quantity delay = Quantity.known(2.5, "µs", 0.25);
        Quantity none = Quantity.unknown("…");
        return new TapeTone(
                number,
                5.0 * number,
                5.0 * number + 4,
                Quantity.known(hz * 1.001, "Hz", 0.001),
                hz,
                Quantity.known(0.1, "%", 0.001),
                null,
                null,
                List.of(
                        new ToneLevel("left", level, difference),
                        new ToneLevel("right", level, difference)),
                difference,
                0.5,
                delay,
                none,
                none,
                0);
    }

    private static TapeResponse response(String channel) {
        return new TapeResponse(
                channel,
                new int[] {1, 2},
                new double[] {1000, 10_000},
                new double[] {0, -1.5},
                new double[] {0.05, 0.05},
                new double[] {0, 0.25});
    }

    private static TapeReading reading() {
        TapeReference zero = new TapeReference(1, 1000, "…");
        return new TapeReading(
                TapeReading.FORMAT,
                TapeReading.VERSION,
                "tape.wav",
                null,
                48_000,
                2,
                190.5,
                new TapeSeries("list", "…", 2, 1.001, false, List.of()),
                zero,
                zero,
                Quantity.known(0.1, "%", 0.01),
                "…",
                Quantity.known(-0.5, "dB", 0.02),
                Quantity.known(2.5, "µs", 0.25),
                Quantity.unknown("…"),
                "normal",
                "none,70",
                "3180,50",
                List.of(tone(1, 1000), tone(2, 10_000)),
                List.of(response("left"), response("right")),
                null,
                null,
                List.of());
    }

    @Test
    void tellsWhatWasReadAndHow() {
        String page = TapePage.of(Reader.ENGLISH, reading());
        assertTrue(
                page.contains(
                        "Read from tape.wav, 19.05\u00a0cm/s; tape recorded to 70 µs; machine set to"
                                + " 3180 and 50 µs."),
                page);
        assertTrue(
                page.contains(
                        "2 steady tones were found; 2 of them belong to …. Levels are against"
                                + " tone 1 (1000\u00a0Hz). …"),
                page);
    }

    @Test
    void inGermanNothingIsLeftInEnglish() {
        String page = TapePage.of(Reader.GERMAN, reading());
        assertEquals(List.of(), EnglishLeft.in(page));
        assertTrue(
                page.contains(
                        "Gelesen aus tape.wav, 19,05\u00a0cm/s; Band aufgenommen mit 70 µs; Maschine"
                                + " eingestellt auf 3180 und 50 µs."),
                page);
        // one tone of the left channel, as it was read
        assertTrue(page.contains("<td class=\"number\">−18,25</td>"), page);
    }
}
