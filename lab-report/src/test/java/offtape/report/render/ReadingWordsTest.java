package offtape.report.render;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

final class ReadingWordsTest {

    /** A no-break space ties the unit to its number. */
    @ParameterizedTest
    @CsvSource({
        "'Frequency, Hz', '#_Hz'",
        "'Time, s', '#_s'",
        "'Record level, dB re reference', 'record level #_dB re reference'",
        "'K3, %', 'K3 #_%'",
        "'Wow and flutter, weighted peak, %', 'wow and flutter, weighted peak #_%'",
        "Number of turns, number of turns #"
    })
    void aPlaceIsToldWithItsQuantityAndUnit(String title, String words) {
        assertEquals(
                words.replace('_', '\u00a0') + "\nlevel #\u00a0dB",
                ReadingWords.of(Reader.ENGLISH, chart("a title", Axis.linear(title, 0, 1))));
    }

    @ParameterizedTest
    @CsvSource({"Level, '#_dB'", "Something else, level #_dB"})
    void whatTheTitleSaysIsNotSaidAgain(String title, String words) {
        assertEquals(
                "#\u00a0s\n" + words.replace('_', '\u00a0'),
                ReadingWords.of(Reader.ENGLISH, chart(title, Axis.linear("Time, s", 0, 1))));
    }

    @ParameterizedTest
    @CsvSource({"3, '#_s'"})
    void whatOnlyRanksIsNotTold(int rows, String words) {
        Chart bars =
                Chart.of(
                        "test",
                        "a title",
                        "",
                        Axis.linear("Time, s", 0, 1),
                        Axis.rows("Within, dB", rows, List.of()),
                        List.of());
        assertEquals(words.replace('_', '\u00a0') + "\n", ReadingWords.of(Reader.ENGLISH, bars));
    }

    private static Chart chart(String title, Axis x) {
        return Chart.of("test", title, "", x, Axis.linear("Level, dB", 0, 1), List.of());
    }
}
