package offtape.report.measure.loss;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;

import offtape.core.standard.TrackSpacing;
import offtape.core.unit.Quantity;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** 10 µs ± 0.4 µs at 190.5 mm/s: a track is read 1.905 µm late, known within 38.1 nm. */
class WitnessTest {

    private static Witness of(double delayUs, TrackSpacing tracks) {
        return Witness.of(Quantity.known(delayUs, "µs", 0.4), tracks, 190.5);
    }

    /**
     * Gaps out of line by 1.25 µm make hypot(0.0381, 1.25) = 1.25058 µm. Of tracks of 1 mm, 3.4 mm
     * apart, w/s is 0.294118, known within 0.0043253 (half of 0.1 mm): 0.294118 · 1.905 µm, known
     * within hypot(0.294118 · 1.25058, 0.0043253 · 1.905) = 0.367910 µm. A thousandth of 1 mm is 1
     * mrad, 3.437747 arc minutes. Azimuth takes the same off whichever track is late.
     */
    @ParameterizedTest
    @CsvSource({"10", "-10"})
    void tracksTellWhatTheDelayIsOfAzimuth(double delayUs) {
        Witness witness = of(delayUs, TrackSpacing.named("quarter-track"));
        assertEquals(0.560294, witness.productUm(), 1e-6);
        assertEquals(0.367910, witness.deviationUm(), 1e-6);
        assertEquals(3.437747, witness.minutesPerUm(), 1e-6);
        assertEquals(2.0, witness.off(0.560294 + 2 * 0.367910), 1e-5);
        assertEquals(-1.0, witness.off(0.560294 - 0.367910), 1e-5);
    }

    /** Half a millimetre of track shows twice the angle. */
    @Test
    void aNarrowTrackLosesAtALargerAngle() {
        double cassette = of(10, TrackSpacing.named("cassette")).minutesPerUm();
        assertEquals(3.437747 / 0.6, cassette, 1e-6);
    }

    /**
     * Of tracks that nobody named w/s is 0.54 ± 0.15: 1.0287 µm, known within hypot(0.54 · 1.25058,
     * 0.15 · 1.905) = 0.733281 µm, and no angle is told; nor if only their distance is known.
     */
    @Test
    void unknownTracksTellItRoughly() {
        for (TrackSpacing tracks : new TrackSpacing[] {null, TrackSpacing.parse("3.4 mm")}) {
            Witness witness = of(10, tracks);
            assertEquals(1.0287, witness.productUm(), 1e-9);
            assertEquals(0.733281, witness.deviationUm(), 1e-6);
            assertEquals(0, witness.minutesPerUm());
        }
    }

    @Test
    void withoutADelayThereIsNone() {
        assertNull(Witness.of(Quantity.unknown("One channel only."), null, 190.5));
    }
}
