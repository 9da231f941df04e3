package offtape.report.measure.tape;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.List;
import offtape.reference.Source;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
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
        SeriesFit fit = SeriesFit.of(at(factor, octaves), 0).get(0);
        assertEquals(UsualSeries.OCTAVE, fit.series());
        assertEquals(factor, fit.factor(), 1e-9);
        assertArrayEquals(octaves, fit.nominal());
        double[] round = {50, 100, 250, 700, 1000, 5000, 7500, 10_000, 12_000, 15_000};
        SeriesFit older = SeriesFit.of(at(factor, round), 0).get(0);
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
        List<SeriesFit> fits = SeriesFit.of(new double[] {3060}, 0);
        assertEquals(2, fits.size());
        assertEquals(3000, fits.get(0).nominal()[0]);
        assertEquals(3150, fits.get(1).nominal()[0]);
        assertTrue(SeriesFit.of(new double[] {3060}, 3060 / 3150.0).get(0).nominal()[0] == 3150);
    }
}
