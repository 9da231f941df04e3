package offtape.report.measure.tone;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class OrderBandTest {

    private static void assertBand(double pass, double stop, OrderBand band) {
        assertEquals(pass, band.passHz(), 1e-9);
        assertEquals(stop, band.stopHz(), 1e-9);
    }

    /**
     * 0.04·f + 20 Hz passes, but no more than 0.3·f; from twice that on nothing does, and from
     * 0.6·f on in no case, so that the second harmonic at f from the tone stays out.
     */
    @ParameterizedTest
    @CsvSource({"1000, 60, 120", "100, 24, 48", "50, 15, 30", "10000, 420, 840"})
    void flutterPassesAndHarmonicsDoNot(double hz, double pass, double stop) {
        assertBand(pass, stop, OrderBand.of(hz));
    }

    /** 0.06·f where that is less, but no less than 4 Hz unless the band itself is narrower. */
    @ParameterizedTest
    @CsvSource({"1000, 60, 120", "315, 18.9, 37.8", "50, 4, 8", "10, 3, 6", "10000, 420, 840"})
    void levelsOfLowTonesAreReadInANarrowBand(double hz, double pass, double stop) {
        assertBand(pass, stop, OrderBand.forLevel(hz));
    }

    /** Between 1000 Hz and half of 2240 Hz there are 120 Hz, of 2238 Hz 119. */
    @Test
    void noBandReachesOverHalfTheRate() {
        assertBand(100, 120, new OrderBand(100, 120).below(1000, 2240));
        assertBand(59.5, 119, new OrderBand(100, 120).below(1000, 2238));
        assertBand(10, 119, new OrderBand(10, 120).below(1000, 2238));
    }
}
