package offtape.cli.lineup;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;

import org.junit.jupiter.api.Test;

/** Which way the delay between the channels goes. */
class AzimuthTrackTest {

    private static AzimuthTrack after(double... delays) {
        AzimuthTrack track = AzimuthTrack.begin();
        for (double d : delays) {
            track =
                    track.with(
                            new PairReading(
                                    PairReading.Kind.DELAY, d, 0.1, 0, false, -Math.abs(d) / 10));
        }
        return track;
    }

    @Test
    void theCourseIsTowardsOrAwayFromNothing() {
        assertEquals(AzimuthTrack.Course.STEADY, after(50).course());
        assertEquals(AzimuthTrack.Course.STEADY, after(50, 50.3, 49.8).course());
        assertEquals(AzimuthTrack.Course.BETTER, after(50, 45, 40).course());
        assertEquals(AzimuthTrack.Course.BETTER, after(-50, -45, -40).course());
        assertEquals(AzimuthTrack.Course.WORSE, after(-2, -4, -6).course());
        // what lies longer ago is forgotten
        assertEquals(AzimuthTrack.Course.STEADY, after(90, 10, 10, 10, 10, 10, 10).course());
    }

    @Test
    void theBestMonoSumIsKept() {
        assertFalse(AzimuthTrack.begin().hasBest());
        assertEquals(-0.5, after(20, 5, 12).bestMonoDb(), 1e-12);
        assertEquals(-0.5, after(5).with(PairReading.unrelated()).bestMonoDb(), 1e-12);
    }
}
