package offtape.report.measure.tape;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import offtape.core.standard.TimeConstants;
import offtape.core.tape.ListedTone;
import offtape.reference.Source;
import offtape.report.result.TapeResponse;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Which tones are taken for the response, and the response itself. */
class ResponseTonesTest {

    /** Tones as "frequency/level/seconds", the last two −20 dB and 2 s unless said. */
    private static List<NamedTone> tones(String words) {
        List<NamedTone> all = new ArrayList<>();
        for (String word : words.split(" ")) {
            String[] w = word.split("/");
            double hz = Double.parseDouble(w[0]);
            double db = w.length > 1 ? Double.parseDouble(w[1]) : -20;
            double seconds = w.length > 2 ? Double.parseDouble(w[2]) : 2;
            all.add(
                    new NamedTone(
                            all.size() + 1,
                            Heard.tone(10 * all.size(), seconds, hz, db, db),
                            hz,
                            null));
        }
        return all;
    }

    private static ResponseTones of(List<NamedTone> tones) {
        return ResponseTones.of(tones, ReferenceTone.of(tones));
    }

    private static String numbers(ResponseTones response) {
        return String.join(" ", response.tones().stream().map(t -> "" + t.number()).toList());
    }

    /**
     * The longest run without a frequency coming twice, by rising frequency. At its ends tones are
     * left out that last more than 1.6 times as long as usual, or stand more than 6 dB over their
     * neighbours within two octaves, and what lies beyond them; three are left at least.
     */
    @ParameterizedTest
    @CsvSource({
        // what lies on the tape: by order, numbers by rising frequency
        "1000 100 10000 4000, 2 1 4 3",
        // the second 1 kHz begins another run
        "1000 63 1000 125 8000 4000, 2 4 3 6 5",
        // 1 % apart is the same, 2 % is not
        "1000 63 1009 125 8000 4000, 2 4 3 6 5",
        "1000 63 1020 125 8000 4000, 2 4 1 3 6 5",
        // a long tone for level at the beginning, one for azimuth at the end
        "1000/-20/3.3 63 125 500 8000, 2 3 4 5",
        "1000/-20/3.1 63 125 500 8000, 2 3 4 1 5",
        "63 125 500 1000 8000/-20/3.3, 1 2 3 4",
        // the loud one too, if it is more than 6 dB
        "1000/-13.9 63 500 2000 250, 2 5 3 4",
        "1000/-14.1 63 500 2000 250, 2 5 3 1 4",
        // with what lies beyond it
        "63 1000/-5 500 2000 250, 5 3 4",
        "63 500 2000 250 1000/-5 8000, 1 4 2 3",
        // loud against a far neighbour only: two octaves
        "1000/-5 125 63 8000 12000, 3 2 1 4 5",
        "1000/-5 63 31.5 3900 16000, 3 2 4 5",
        // three are left
        "1000/-5 500 2000, 2 1 3",
        "1000/-5 500 2000 800, 2 4 3",
        "500 2000 1000/-5 800, 1 4 3 2",
        "500 2000 800 1000/-5, 1 3 2"
    })
    void theSeriesIsFoundByItsOrder(String tape, String numbers) {
        assertEquals(numbers, numbers(of(tones(tape))), tape);
    }

    /** Two tones that follow each other, and a third that comes twice. */
    @ParameterizedTest
    @CsvSource({"1000 8000", "1000 8000 1000 8000 1000"})
    void fewerThanThreeAreNoResponse(String tape) {
        ResponseTones none = of(tones(tape));
        assertEquals(List.of(), none.tones());
        assertNull(none.zero());
        assertEquals(
                "Fewer than three tones follow each other without one coming twice, so no response"
                        + " is given. A list with levels (--tones) would give one.",
                none.note());
        assertEquals(List.of(), none.curves(2, null, null));
    }

    /** The usual frequency that is nearest to 1 kHz; without one the nearest. */
    @ParameterizedTest
    @CsvSource({
        "400 700 950 8000, 2, Of the tones of the response it has the usual frequency for level.",
        "63 900 1300 8000, 2, Of the tones of the response it is the one nearest to 1 kHz.",
        "63 500 8000, 2, Of the tones of the response it has the usual frequency for level.",
        "250 2000 8000, 2, Of the tones of the response it is the one nearest to 1 kHz."
    })
    void theZeroIsOneOfTheSeries(String tape, int zero, String because) {
        ResponseTones response = of(tones(tape));
        assertEquals(zero, response.zero().tone().number());
        assertEquals(because, response.zero().because());
    }

    @Test
    void theSeriesIsNamed() {
        assertEquals(
                "Tones 2 to 4 follow each other without one coming twice; they are taken to be"
                        + " recorded at one level. If they are not, give a list with levels"
                        + " (--tones).",
                of(tones("1000/-5 8000 63 500 1000")).note());
    }

    private static NamedTone listed(
            int number, double hz, Double levelDb, ListedTone.Purpose purpose, double... heardDb) {
        return new NamedTone(
                number,
                Heard.tone(10 * number, 2, hz, heardDb),
                hz,
                Heard.listed(hz, levelDb, purpose));
    }

    /** Levels re the zero tone of each channel, less what was recorded by the list. */
    @Test
    void aListWithLevelsDecides() {
        List<NamedTone> tones =
                List.of(
                        listed(1, 1000, 0.0, ListedTone.Purpose.REFERENCE, -18, -19),
                        listed(2, 8000, -20.0, null, -39, -38),
                        listed(3, 63, -20.0, null, -37.5, Double.NaN),
                        listed(4, 500, null, null, -30, -30));
        ResponseTones response = of(tones);
        assertEquals("3 1 2", numbers(response));
        assertEquals(1, response.zero().tone().number());
        List<TapeResponse> curves = response.curves(2, null, null);
        TapeResponse left = curves.get(0);
        assertEquals("left", left.channel());
        assertArrayEquals(new int[] {3, 1, 2}, left.tone());
        assertArrayEquals(new double[] {63, 1000, 8000}, left.frequencyHz());
        assertArrayEquals(new double[] {0.5, 0, -1}, left.asReadDb(), 1e-12);
        double two = Math.hypot(0.03, 0.03);
        assertArrayEquals(new double[] {two, 0, two}, left.uncertaintyDb(), 1e-12);
        assertNull(left.correctedDb());
        TapeResponse right = curves.get(1);
        assertEquals("right", right.channel());
        assertArrayEquals(new int[] {1, 2}, right.tone());
        assertArrayEquals(new double[] {0, 1}, right.asReadDb(), 1e-12);
        assertEquals(1, response.curves(1, null, null).size());
    }

    /** If two tones or more are meant for the response, they are it; one alone is no response. */
    @Test
    void tonesThatAreMeantForTheResponseAreIt() {
        NamedTone zero = listed(1, 1000, -3.0, ListedTone.Purpose.REFERENCE, -21, -21);
        NamedTone high = listed(2, 8000, -20.0, ListedTone.Purpose.RESPONSE, -39, -38);
        NamedTone low = listed(3, 63, -20.0, ListedTone.Purpose.RESPONSE, -37, -38);
        NamedTone other = listed(4, 400, -20.0, null, -37, -38);
        assertEquals("3 2", numbers(of(List.of(zero, high, low, other))));
        assertEquals("4 1 2", numbers(of(List.of(zero, high, other))));
        // −39 dB for −20 dB, where the zero came back with −21 dB for −3 dB: −19 less −18
        double[] read = of(List.of(zero, high, low)).curves(2, null, null).get(0).asReadDb();
        assertArrayEquals(new double[] {1, -1}, read, 1e-12);
    }

    /** A list that states one level only, or none of the reference, is no list of levels. */
    @Test
    void aListWithoutLevelsIsReadByOrder() {
        NamedTone zero = listed(1, 1000, null, ListedTone.Purpose.REFERENCE, -21, -21);
        NamedTone high = listed(2, 8000, -20.0, null, -39, -38);
        NamedTone low = listed(3, 63, -20.0, null, -37, -38);
        assertEquals("Tones 1 to 3 follow", of(List.of(zero, high, low)).note().substring(0, 19));
        NamedTone levelled = listed(1, 1000, 0.0, ListedTone.Purpose.REFERENCE, -21, -21);
        NamedTone second = listed(2, 8000, null, null, -39, -38);
        NamedTone third = listed(3, 63, null, null, -37, -38);
        assertEquals(
                "Tones 1 to 3 follow",
                of(List.of(levelled, second, third)).note().substring(0, 19));
    }

    /** Without the zero, or with one tone only, a channel has no curve. */
    @Test
    void aChannelWithoutTheZeroHasNoCurve() {
        List<NamedTone> tones =
                List.of(
                        listed(1, 1000, 0.0, ListedTone.Purpose.REFERENCE, -18, Double.NaN),
                        listed(2, 8000, -20.0, null, Double.NaN, -38),
                        listed(3, 63, -20.0, null, Double.NaN, -38));
        assertEquals(List.of(), of(tones).curves(2, null, null));
    }

    /**
     * A machine set to 120 µs reads a tape of 50 µs too high: 10·lg of (1 + (2πf·120 µs)²) over (1
     * + (2πf·50 µs)²) more than at the zero. At 10 kHz: 57.849/10.870 are 7.261 dB, at 1 kHz
     * 1.5685/1.0987 are 1.546 dB, at 100 Hz 1.005685/1.000987 are 0.020 dB.
     */
    @Test
    @Source("IEC 60094-1:1981 clause 15, the formula of the flux")
    void theTapesConstantsAreTakenOut() {
        List<NamedTone> tones = tones("100 1000 10000");
        TimeConstants tape = TimeConstants.parse("none,50");
        TimeConstants machine = TimeConstants.parse("none,120");
        TapeResponse curve = of(tones).curves(2, tape, machine).get(0);
        assertArrayEquals(new double[3], curve.asReadDb(), 1e-12);
        assertArrayEquals(
                new double[] {1.546 - 0.020, 0, 1.546 - 7.261}, curve.correctedDb(), 2e-3);
        // re 500 Hz, where 1.14212/1.02467 are 0.471 dB
        assertArrayEquals(
                new double[] {0.471 - 0.020, 0, 0.471 - 7.261},
                of(tones("100 500 10000")).curves(2, tape, machine).get(0).correctedDb(),
                2e-3);
        assertNull(of(tones).curves(2, tape, null).get(0).correctedDb());
        assertNull(of(tones).curves(2, null, machine).get(0).correctedDb());
        assertEquals(
                0, Arrays.stream(of(tones).curves(2, tape, tape).get(0).correctedDb()).sum(), 0);
    }
}
