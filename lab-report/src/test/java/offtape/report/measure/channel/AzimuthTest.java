package offtape.report.measure.channel;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import offtape.core.standard.TrackSpacing;
import offtape.core.unit.Quantity;
import org.junit.jupiter.api.Test;

/** tan α = v·Δt/s, by hand. */
class AzimuthTest {

    private static final Quantity DELAY = Quantity.known(30.54, "µs", 0.3);

    /** 190.5 mm/s · 30.54 µs = 5.818 µm; over 4 mm that is 1.4545 mrad = 5.000 arc minutes. */
    @Test
    void fiveArcMinutesOnATwoTrackReel() {
        TrackSpacing tracks = new TrackSpacing(null, 4, 0.04);
        Quantity angle = new Azimuth(tracks, 190.5, 1).of(DELAY);
        assertEquals(5.0, angle.value(), 0.001);
        // 0.3/30.54 and 0.04/4 of 5 arc minutes: 0.0491 and 0.05, together 0.0701.
        assertEquals(0.0701, angle.uncertainty(), 0.0002);
    }

    /** 47.625 mm/s · 1.02 · −10 µs = −0.4858 µm; over 0.9 mm −0.5397 mrad = −1.8555 arc minutes. */
    @Test
    void theActualSpeedOfACassetteCounts() {
        TrackSpacing tracks = TrackSpacing.named("cassette");
        Quantity early = Quantity.known(-10, "µs", 0.1);
        assertEquals(-1.8555, new Azimuth(tracks, 47.625, 1.02).of(early).value(), 0.0005);
    }

    @Test
    void whatIsMissingIsNamed() {
        Quantity noTracks = new Azimuth(null, 190.5, 1).of(DELAY);
        assertFalse(noTracks.isKnown());
        assertTrue(noTracks.reason().contains("--track-format"));
        Quantity noSpeed = new Azimuth(TrackSpacing.named("two-track"), null, 1).of(DELAY);
        assertTrue(noSpeed.reason().contains("--tape-speed"));
    }
}
