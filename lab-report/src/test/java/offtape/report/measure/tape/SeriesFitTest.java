package offtape.report.measure.tape;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.List;
import offtape.reference.Source;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

@Source({
    "ISO 266:1997, preferred frequencies",
    "round frequencies: common practice, no source; from memory"
})
class SeriesFitTest {

    private static double[] at(double factor, double... nominal) {
        return Arrays.stream(nominal).map(n -> n * factor).toArray();
    }

    @ParameterizedTest
    @ValueSource(doubles = {0.91, 0.96, 1, 1.04, 1.09})
    void theSpeedIsOneForAllTones(double factor) {
        double[] octaves = {63, 125, 250, 500, 1000, 2000, 4000, 8000, 16_000};
        SeriesFit fit = SeriesFit.of(at(factor, octaves)).get(0);
        assertEquals(UsualSeries.OCTAVE, fit.series());
        assertEquals(factor, fit.factor(), 1e-9);
        assertArrayEquals(octaves, fit.nominal());
        double[] round = {50, 100, 250, 700, 1000, 5000, 7500, 10_000, 12_000, 15_000};
        SeriesFit older = SeriesFit.of(at(factor, round)).get(0);
        assertEquals(UsualSeries.ROUND, older.series());
        assertArrayEquals(round, older.nominal());
    }

    /** The preferred number for 10^0.5 times a power of ten is 3150, for 10^1.8 it is 63. */
    @Test
    void preferredNumbersLieNearTheirPowersOfTen() {
        double[] list = UsualSeries.THIRD_OCTAVE.frequenciesHz();
        assertEquals(31, list.length);
        for (int i = 0; i < list.length; i++) {
            assertEquals(1, list[i] / Math.pow(10, 1.3 + i / 10.0), 0.0165);
        }
    }

    /** 3060 Hz lies 2.9 % under 3150 and 2 % over 3000. */
    @Test
    void twoWaysAreBothGiven() {
        List<SeriesFit> fits = SeriesFit.of(new double[] {3060});
        assertEquals(2, fits.size());
        assertEquals(3000, fits.get(0).nominal()[0]);
        assertEquals(3150, fits.get(1).nominal()[0]);
        assertTrue(SeriesFit.of(new double[] {3060}, 3060, 3150).get(0).nominal()[0] == 3150);
    }

    /** Three of four are enough; of all lists joined, which catch more by chance, 85 % must fit. */
    @ParameterizedTest
    @CsvSource({
        // octaves and strange tones
        "125 500 2000 4370, octave",
        "125 500 4370 7330, -",
        // 3150 Hz belongs to the one list, 7500 Hz to the other: six of seven, five of six fit
        "63 3150 7500 700 1000 80 4370, usual",
        "63 3150 7500 700 1000 4370, -",
        "2240, -"
    })
    void enoughTonesMustFit(String heard, String series) {
        List<SeriesFit> fits =
                SeriesFit.of(
                        Arrays.stream(heard.split(" ")).mapToDouble(Double::parseDouble).toArray());
        assertEquals(series, fits.isEmpty() ? "-" : fits.get(0).series().kind());
    }

    /** What lies 0.8 % off the factor of all is another tone. */
    @ParameterizedTest
    @CsvSource({"1.007, 5", "0.993, 5", "1.013, 4", "0.987, 4"})
    void tonesMayBeOffALittle(double off, int matched) {
        double[] heard = at(1.04, 63, 125, 500, 1000, 8000);
        heard[2] *= off;
        SeriesFit fit = SeriesFit.of(heard).get(0);
        assertEquals(matched, fit.matched());
        assertEquals(matched == 5 ? 500 : 0, fit.nominal()[2], 0);
        assertEquals(1.04 * (matched == 5 ? Math.pow(off, 0.2) : 1), fit.factor(), 1e-9);
    }

    /**
     * At half the speed more fit, and better: a series a third of an octave apart, of which its
     * highest tones tell. Of two tones any speed would do, so it is the right one.
     */
    @Test
    void anotherSpeedMustExplainMore() {
        double[] list = {1000, 63, 500, 3150, 12_500, 16_000};
        SeriesFit half = SeriesFit.of(at(0.5, list)).get(0);
        assertEquals(0.5, half.factor(), 1e-9);
        assertArrayEquals(list, half.nominal());
        SeriesFit twice = SeriesFit.of(at(2, list)).get(0);
        assertEquals(2, twice.factor(), 1e-9);
        assertArrayEquals(list, twice.nominal());
        for (SeriesFit wrong : SeriesFit.wrong(at(0.5, list))) {
            assertEquals(6, wrong.matched());
        }
        assertEquals(1, SeriesFit.of(at(0.5, 3150, 12_500)).get(0).factor(), 0.1);
    }

    /** Tones within 0.8 % of each other are one, whichever comes first. */
    @Test
    void tonesThatComeAgainCountOnce() {
        assertArrayEquals(
                new double[] {1000, 1008.1, 63},
                SeriesFit.distinct(new double[] {1000, 1007, 994, 1008.1, 63, 63.4}));
    }

    /** An unusual frequency that is said alone names no series. */
    @Test
    void aFrequencyThatIsSaidIsNoSeries() {
        assertEquals(List.of(), SeriesFit.of(new double[] {2800, 437}, 2800, 2828));
        List<SeriesFit> two = SeriesFit.of(new double[] {2800, 500}, 2800, 2800);
        assertEquals(1, two.size());
        assertArrayEquals(new double[] {2800, 500}, two.get(0).nominal());
    }

    @Test
    void listsHaveNamesAndRise() {
        assertEquals("the round frequencies of older practice", UsualSeries.ROUND.words());
        assertEquals("octave", UsualSeries.OCTAVE.kind());
        assertArrayEquals(
                new double[] {31.5, 63, 125, 250, 500, 1000, 2000, 4000, 8000, 16_000},
                UsualSeries.OCTAVE.frequenciesHz());
        double[] all = UsualSeries.USUAL.frequenciesHz();
        for (int i = 1; i < all.length; i++) {
            assertTrue(all[i] > all[i - 1], all[i] + " Hz");
        }
    }
}
