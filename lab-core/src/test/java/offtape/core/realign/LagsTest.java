package offtape.core.realign;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Comparator;
import java.util.List;
import offtape.core.random.Draw;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Places found by correlation of levels, of tracks that are taken in one piece or in several. */
class LagsTest {

    /** So low that hours are cheap; the lowest band of the levels is still heard. */
    private static final int RATE = 250;

    private static final double FARTHEST_S = 601;

    /** Noise whose level changes at random three times a second. */
    private static double noise(long frame) {
        return new Draw(3).around(frame) * new Draw(4).at(3 * frame / RATE);
    }

    private static LevelTrace trace(double seconds, double lateS) {
        long late = Math.round(lateS * RATE);
        long frames = Math.round(seconds * RATE);
        return LevelTrace.of(new RuledSound("noise", RATE, frames, n -> noise(n - late)));
    }

    private static Place best(LevelTrace original, LevelTrace returned) {
        int length = original.length();
        Lags lags = new Lags(original, returned, 0, returned.length(), length, FARTHEST_S);
        List<Place> all = lags.places(0, length, 1);
        return all.stream().max(Comparator.comparingDouble(Place::likeness)).orElseThrow();
    }

    /** 20 minutes are one piece, 25 are two; delays by hand, a level every 0.02 s. */
    @ParameterizedTest
    @CsvSource({"1200, 432.1", "1500, -550", "1500, 598.02"})
    void aTrackIsFoundInOnePieceAndInTwo(double seconds, double lateS) {
        Place place = best(trace(seconds, 0), trace(seconds + 300, lateS));
        assertEquals(lateS, place.start(), 0.011);
        assertTrue(place.likeness() > 0.6, () -> "likeness " + place.likeness());
    }

    /** At all lags an hour took transforms of 2^20 points, two and a half hours 2^21. */
    @Test
    void transformsDoNotGrowWithATrackOfHours() {
        LevelTrace track = trace(9000, 0);
        assertTrue(track.length() > 6 * Lags.PIECE);
        Lags lags = new Lags(track, track, 0, track.length(), track.length(), FARTHEST_S);
        assertEquals(1 << 17, lags.points());
    }
}
