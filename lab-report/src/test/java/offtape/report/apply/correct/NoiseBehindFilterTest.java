package offtape.report.apply.correct;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;

import java.util.Arrays;
import java.util.List;
import offtape.core.standard.Iec61260;
import offtape.core.unit.Quantity;
import offtape.report.result.Noise;
import offtape.report.result.NoiseSpectrum;
import org.junit.jupiter.api.Test;

class NoiseBehindFilterTest {

    private static final Quantity NONE = Quantity.unknown("Not looked for.");

    /** White noise of 1 per 22 377.6 Hz, so that it is 0 dB from 22.4 Hz to 22.4 kHz. */
    private static Noise white() {
        double[] middle = Iec61260.bandCentresHz(25, 16_000, 3);
        double[] level =
                Arrays.stream(middle)
                        .map(f -> Iec61260.upperEdgeHz(f, 3) - Iec61260.lowerEdgeHz(f, 3))
                        .map(width -> 10 * Math.log10(width / 22_377.6))
                        .toArray();
        Quantity whole = Quantity.known(0, "dB", 0.05);
        return new Noise(
                "left",
                whole,
                whole,
                whole,
                NONE,
                List.of(),
                new NoiseSpectrum(middle, level),
                new double[] {22.4, 22_400},
                NONE,
                NONE,
                NONE);
    }

    @Test
    void anEvenGainMovesAllFiguresByItself() {
        Curve six = new Curve(new double[] {1000}, new double[] {6});
        NoiseChange change = NoiseBehindFilter.of("left", white(), six);
        assertEquals(6, change.unweighted().value(), 1e-9);
        assertEquals(6, change.aWeighted().value(), 1e-9);
        assertEquals(6, change.itu468().value(), 1e-9);
        assertEquals(6, change.aWeightedAfter().value(), 1e-9);
        assertEquals(change.levelDb()[7] + 6, change.afterDb()[7], 1e-9);
    }

    /**
     * 10 dB more above 11.2 kHz: of 22 377.6 Hz of noise 11.2 kHz are ten times as strong, also
     * those above the highest band, which only the unweighted figure knows of.
     */
    @Test
    void whatLiesAboveTheHighestBandCountsToo() {
        double edge = Iec61260.upperEdgeHz(Iec61260.bandCentresHz(9000, 11_000, 3)[0], 3);
        Curve shelf =
                new Curve(new double[] {edge * 0.99999, edge * 1.00001}, new double[] {0, 10});
        double share = (22_400 - edge) / 22_377.6;
        NoiseChange change = NoiseBehindFilter.of("left", white(), shelf);
        assertEquals(10 * Math.log10(1 + 9 * share), change.unweighted().value(), 0.01);
    }

    @Test
    void withoutASpectrumNothingIsTold() {
        NoiseChange none = NoiseBehindFilter.of("right", null, TargetCurve.flat());
        assertFalse(none.aWeighted().isKnown());
        assertEquals(0, none.frequencyHz().length);
    }
}
