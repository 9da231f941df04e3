package offtape.report.measure.tape;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.ArrayList;
import java.util.List;
import offtape.core.tape.ListedTone;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Tones laid beside a list. */
class ListFitTest {

    /** Frequencies, or frequency/level. */
    private static List<ListedTone> list(String words) {
        List<ListedTone> all = new ArrayList<>();
        for (String word : words.split(" ")) {
            String[] w = word.split("/");
            Double db = w.length > 1 ? Double.valueOf(w[1]) : null;
            all.add(Heard.listed(Double.parseDouble(w[0]), db, null));
        }
        return all;
    }

    private static List<HeardTone> heard(String words) {
        List<HeardTone> all = new ArrayList<>();
        for (ListedTone l : list(words)) {
            double db = l.levelDb() == null ? -20 : l.levelDb();
            all.add(Heard.tone(3 * all.size(), l.frequencyHz(), db));
        }
        return all;
    }

    private static String entries(ListFit fit) {
        List<String> all = new ArrayList<>();
        for (int e : fit.entry()) {
            all.add(e < 0 ? "-" : "" + e);
        }
        return String.join(" ", all);
    }

    /** Both in their order, as many pairs as possible. */
    @ParameterizedTest
    @CsvSource({
        "1000 8000 63, 1000 8000 63, 0 1 2",
        // one is missing, one too many
        "1000 8000 63, 1000 63, 0 2",
        "1000 63, 1000 777 63, 0 - 1",
        // the order is kept: 8 kHz can be no pair as well
        "1000 8000 63 400, 1000 63 400 8000, 0 2 3 -",
        // 1.5 % in the logarithm from the mean of all, which is that of the first pair tried
        "1000 8000, 1000 8110, 0 1",
        "1000 8000, 1000 8130, 0 -",
        "1000 1000 1000, 1000 1000, 0 1",
        "63, 1000, -"
    })
    void pairsKeepTheirOrder(String listed, String heard, String entries) {
        ListFit fit = ListFit.of(heard(heard), list(listed));
        assertEquals(entries, entries(fit));
        assertEquals(entries.replaceAll("[ -]", "").length(), fit.matched());
    }

    /** The factor is the geometric mean over the pairs, at half and double speed as well. */
    @ParameterizedTest
    @CsvSource({"1.03, 1.05", "0.97, 0.95", "0.5, 0.505", "2.02, 2"})
    void theFactorIsThatOfAllPairs(double one, double other) {
        List<HeardTone> heard =
                List.of(Heard.tone(0, 1000 * one, -20), Heard.tone(3, 700 * one, -20));
        ListFit exact = ListFit.of(heard, list("1000 700"));
        assertEquals(one, exact.factor(), 1e-12);
        double near = one * 1.005;
        ListFit two =
                ListFit.of(
                        List.of(Heard.tone(0, 1000 * one, -20), Heard.tone(3, 700 * near, -20)),
                        list("1000 700"));
        assertArrayEquals(new int[] {0, 1}, two.entry());
        assertEquals(Math.sqrt(one * near), two.factor(), 1e-12);
    }

    /** Where as many fit at the right speed as at half of it, it is the right one. */
    @Test
    void theRightSpeedGoesBefore() {
        ListFit fit = ListFit.of(heard("1000"), list("2000 1000 500"));
        assertEquals("1", entries(fit));
        assertEquals(1, fit.factor(), 1e-12);
        ListFit half = ListFit.of(heard("1000 500"), list("2000 1000"));
        assertEquals("0 1", entries(half));
        assertEquals(0.5, half.factor(), 1e-12);
    }

    /**
     * The same frequency is listed at three levels and heard at two: by the median of all pairs 0
     * dB comes back as −10 dB, so −30 dB are the −20 dB of the list.
     */
    @ParameterizedTest
    @CsvSource({
        "1000/0 1000/-20 1000/-10 8000/-20, 1000/-10 1000/-30 8000/-30, 0 1 3",
        "1000/0 1000/-20 1000/-10 8000/-20, 1000/-10 1000/-20 8000/-30, 0 2 3",
        "1000/0 1000/-20 1000/-10 8000/-20, 1000/-30 1000/-20 8000/-30, 1 2 3",
        // a level that is far off is worth less, but a pair all the same
        "1000/0 8000/-60 63/-20, 1000/-10 8000/10 63/-30, 0 1 2"
    })
    void levelsTellWhichOfTheSameIsMeant(String listed, String heard, String entries) {
        assertEquals(entries, entries(ListFit.of(heard(heard), list(listed))));
    }

    /**
     * No level is stated: the first entry that is left is taken, and a level unknown is no level.
     */
    @Test
    void tonesWithoutALevelCount() {
        List<HeardTone> silent = List.of(Heard.tone(0, 2, 1000, Double.NaN));
        assertEquals("0", entries(ListFit.of(silent, list("1000/-20"))));
        assertEquals("0 1", entries(ListFit.of(heard("1000 1000"), list("1000 1000 63"))));
    }
}
