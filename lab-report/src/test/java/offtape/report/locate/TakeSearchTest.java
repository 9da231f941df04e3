package offtape.report.locate;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

/** Takes of a programme of four tones in twelve seconds. */
class TakeSearchTest {

    private static final List<Scene.Part> PARTS = Scene.FOUR_TONES;

    private static final SpectralTrace PROGRAMME =
            new Scene(12).with(0.1, PARTS).trace().withoutSilence();

    private static Take take(double from, double to, boolean whole) {
        return new Take(from, to, whole);
    }

    @Test
    void theLastWholeTakeIsMeasured() {
        Take right = take(30, 40, true);
        assertEquals(
                right, TakeSearch.choice(List.of(take(0, 10, true), right, take(50, 65, false))));
    }

    /**
     * As long is what differs by less than a second; what lies before the recording is no sound.
     */
    @Test
    void ofBrokenTakesTheLastOfTheLongestIsMeasured() {
        Take right = take(20, 29.1, false);
        assertEquals(
                right, TakeSearch.choice(List.of(take(0, 10, false), right, take(50, 55, false))));
        Take first = take(0, 10, false);
        assertEquals(first, TakeSearch.choice(List.of(first, take(20, 29, false))));
        Take later = take(20, 28, false);
        assertEquals(later, TakeSearch.choice(List.of(take(-4, 7, false), later)));
    }

    private static List<Take> takes(
            double seconds, double found, TakeSearch.AnchorCheck check, double... starts) {
        List<Scene.Part> all = new ArrayList<>();
        for (double start : starts) {
            all.addAll(Scene.played(PARTS, start, 1));
        }
        SpectralTrace recording = new Scene(seconds).with(0.1, all).withHiss(1e-4).trace();
        return new TakeSearch(PROGRAMME, recording, check)
                .takes(new CoarseSearch.Match(found, 1, 1));
    }

    private static void assertStarts(List<Take> takes, double... starts) {
        assertEquals(starts.length, takes.size(), takes.toString());
        IntStream.range(0, starts.length)
                .forEach(i -> assertEquals(starts[i], takes.get(i).fromSeconds(), 0.1));
    }

    /** A take ends where it ends or breaks off, and at the next one's start at the latest. */
    @Test
    void everyTakeIsFoundInOrder() {
        List<Take> takes = takes(45, 15, place -> true, 1, 15, 30);
        assertStarts(takes, 1, 15, 30);
        assertEquals(12.5, takes.get(0).toSeconds(), 0.1);
        assertEquals(26.5, takes.get(1).toSeconds(), 0.1);
        assertTrue(takes.stream().allMatch(Take::whole), takes.toString());
    }

    @Test
    void aTakeThatTheNextBreaksOffIsNotWhole() {
        List<Scene.Part> first = Scene.played(PARTS.subList(0, 3), 1, 1);
        SpectralTrace recording =
                new Scene(24)
                        .with(0.1, first)
                        .with(0.1, Scene.played(PARTS, 10, 1))
                        .withHiss(1e-4)
                        .trace();
        List<Take> takes =
                new TakeSearch(PROGRAMME, recording, place -> true)
                        .takes(new CoarseSearch.Match(10, 1, 1));
        assertStarts(takes, 1, 10);
        assertEquals(9, takes.get(0).toSeconds(), 0.1);
        assertFalse(takes.get(0).whole());
        assertTrue(takes.get(1).whole());
    }

    /** A third of the programme is its beginning; what is broken off behind it is a take. */
    @Test
    void aTakeIsKnownByItsFirstThird() {
        List<Scene.Part> first = Scene.played(PARTS.subList(0, 2), 1, 1);
        SpectralTrace recording =
                new Scene(21)
                        .with(0.1, first)
                        .with(0.1, Scene.played(PARTS, 8, 1))
                        .withHiss(1e-4)
                        .trace();
        List<Take> takes =
                new TakeSearch(PROGRAMME, recording, place -> true)
                        .takes(new CoarseSearch.Match(8, 1, 1));
        assertStarts(takes, 1, 8);
        assertEquals(5, takes.get(0).toSeconds(), 0.1);
        assertFalse(takes.get(0).whole());
    }

    /** The last sound is heard to its end at 12.5 s, and half a second later the next begins. */
    @Test
    void aTakeIsWholeThoughTheNextFollowsAtOnce() {
        List<Take> takes = takes(27, 1, place -> true, 1, 13);
        assertStarts(takes, 1, 13);
        assertTrue(takes.get(0).whole(), takes.toString());
    }

    /**
     * Its first four seconds are 0.5 s of one tone and of another in turn. Heard a second later
     * than they begin, 3 of the 3.5 s that sound are there: too near to the beginning to be
     * another.
     */
    @Test
    void aBeginningThatRepeatsIsOneBeginning() {
        List<Scene.Part> parts = new ArrayList<>();
        for (int k = 1; k <= 8; k++) {
            parts.add(new Scene.Part(0.5 * k, 0.5 * k + 0.5, k % 2 == 0 ? 500 : 3000));
        }
        parts.add(new Scene.Part(4.5, 11.5, 1200));
        SpectralTrace programme = new Scene(12).with(0.1, parts).trace().withoutSilence();
        SpectralTrace recording =
                new Scene(16).with(0.1, Scene.played(parts, 2, 1)).withHiss(1e-4).trace();
        List<Take> takes =
                new TakeSearch(programme, recording, place -> true)
                        .takes(new CoarseSearch.Match(2, 1, 1));
        assertStarts(takes, 2);
        assertTrue(takes.get(0).whole());
    }

    /** Without its marker a place is no beginning, but for the one that was found first. */
    @Test
    void aBeginningNeedsItsMarker() {
        List<Double> asked = new ArrayList<>();
        List<Take> takes =
                takes(
                        30,
                        15,
                        place -> {
                            asked.add(place.offsetSeconds());
                            return false;
                        },
                        1,
                        15);
        assertStarts(takes, 15);
        assertTrue(asked.stream().allMatch(s -> Math.abs(s - 1) < 0.1), asked.toString());
        assertEquals(1, asked.size());
    }

    /** It began before the recording: it is kept in its place, and is not whole. */
    @Test
    void theOneThatWasFoundIsKeptWithoutItsBeginning() {
        List<Take> takes = takes(30, -3, place -> true, -3, 14);
        assertStarts(takes, -3, 14);
        assertFalse(takes.get(0).whole());
        assertTrue(takes.get(1).whole());
    }
}
