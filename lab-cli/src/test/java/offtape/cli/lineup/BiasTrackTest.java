package offtape.cli.lineup;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;

/** The side of the maximum is known by what was seen before. */
class BiasTrackTest {

    private static BiasTrack after(double... levels) {
        BiasTrack track = BiasTrack.begin();
        for (double level : levels) {
            track = track.with(level);
        }
        return track;
    }

    private static void assertTrack(BiasTrack.Side side, double belowDb, BiasTrack track) {
        assertEquals(side, track.side());
        assertEquals(belowDb, track.belowDb(), 1e-9);
    }

    @Test
    void nothingIsKnownAtFirst() {
        assertTrack(BiasTrack.Side.START, 0, after());
        assertTrack(BiasTrack.Side.START, 0.1, after(-40, -39.9, -40));
    }

    @Test
    void aClimbLeadsToTheMaximumAndBeyond() {
        assertTrack(BiasTrack.Side.CLIMBING, 0, after(-45, -43, -41));
        assertTrack(BiasTrack.Side.CLIMBING, 0.1, after(-45, -43, -41, -40, -40.1));
        assertTrack(BiasTrack.Side.OVER, 1, after(-45, -43, -41, -40, -40.1, -41));
        assertTrack(BiasTrack.Side.OVER, 3, after(-45, -41, -40, -41, -42, -43));
    }

    @Test
    void lessOverBiasIsStillOver() {
        assertTrack(BiasTrack.Side.OVER, 1.5, after(-45, -41, -40, -42, -43, -41.5));
    }

    /** From the maximum the level falls on both sides. */
    @Test
    void goingBackLosesTheSide() {
        assertTrack(BiasTrack.Side.BACK, 0, after(-45, -41, -40, -42, -40));
        assertEquals(BiasTrack.Side.UNKNOWN, after(-45, -41, -40, -42, -40, -41).side());
    }

    @Test
    void aFallWithoutAClimbTellsNoSide() {
        assertEquals(BiasTrack.Side.UNKNOWN, after(-40, -40.5, -42).side());
    }

    /** Once it climbs from the lowest level again, that maximum counts and not the old one. */
    @Test
    void aNewClimbBeginsAnew() {
        BiasTrack again = after(-40, -42, -44, -42, -39, -38.5, -39.5);
        assertTrack(BiasTrack.Side.OVER, 1, again);
    }
}
