package offtape.report.locate;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.function.DoubleUnaryOperator;
import offtape.core.audio.MemoryAudio;
import offtape.core.programme.Programme;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What follows from markers and readings that are given, over a programme of ten seconds. */
class PlacementTest {

    private static final double LENGTH_S = 10;

    private static final Programme PROGRAMME =
            new WrittenProgramme(LENGTH_S, WrittenProgramme.marker("start", 1)).programme();

    private static final HeardPart ALL = new HeardPart(0, 100, 50, 1, 1, 1, true, true);

    private static Anchor anchor(double at, double recorded, double likeness) {
        return new Anchor(at, recorded, new int[] {1}, likeness);
    }

    private static ToneStretches.Reading reading(double at, double stretch) {
        return new ToneStretches.Reading(at, stretch, 1);
    }

    private static Placement placement(
            List<ToneStretches.Reading> readings, double start, Anchor... markers) {
        return new Placement(
                PROGRAMME,
                WrittenProgramme.recording(new double[10]),
                ALL,
                StretchProfile.fit(readings, 1, LENGTH_S),
                TimeMap.straight(start, 1, LENGTH_S),
                List.of(markers),
                readings);
    }

    /** Four tenths alike is enough to be heard, which half depends on where the marker lies. */
    @ParameterizedTest
    @CsvSource({
        "1, 0.4, 8, 0.39, true, false",
        "1, 0.39, 8, 0.4, false, true",
        "4.99, 0.9, 8, 0, true, false",
        "1, 0, 5, 0.9, false, true",
        "1, 0.9, 8, 0.9, true, true",
        "1, 0.3, 8, 0.3, false, false",
    })
    void aMarkerIsHeardInEitherHalf(
            double at, double like, double later, double laterLike, boolean first, boolean second) {
        Placement p =
                placement(List.of(), 0, anchor(at, at, like), anchor(later, later, laterLike));
        assertEquals(first, p.markerHeardAt(true));
        assertEquals(second, p.markerHeardAt(false));
        assertEquals(first || second, p.markerHeard());
    }

    /** Half alike is certain; if none is, the best is better than nothing. */
    @Test
    void certainMarkersAreAnchors() {
        Anchor low = anchor(1, 1, 0.49);
        Anchor lower = anchor(8, 8, 0.45);
        Anchor half = anchor(4, 4, 0.5);
        assertEquals(List.of(half), placement(List.of(), 0, low, half, lower).anchors());
        assertEquals(List.of(low), placement(List.of(), 0, lower, low).anchors());
        assertEquals(List.of(low), placement(List.of(), 0, low, lower).anchors());
        Anchor sure = anchor(2, 2, 0.9);
        assertEquals(List.of(sure, half), placement(List.of(), 0, half, sure).anchors());
    }

    /**
     * Of a sweep from 50 Hz to 5 kHz in 1.6 s the moment of 500 Hz is taken, its middle; a tape
     * that is 3 ms late there is found to be. What passes 1.2 kHz later in a sweep to 20 kHz and
     * beyond is left alone.
     */
    @ParameterizedTest
    @CsvSource({"50, 5000, 1.6, 500", "500, 5000, 1.6, 1200", "100, 3000, 4, 547.72"})
    void sweepsAreAnchorsToo(double lowHz, double highHz, double seconds, double hz) {
        WrittenProgramme written =
                new WrittenProgramme(
                        6,
                        WrittenProgramme.marker("start", 0.2),
                        WrittenProgramme.sweep("sweep", 1, seconds, lowHz, highHz));
        MemoryAudio recording = WrittenProgramme.recording(written.returned(7, t -> t - 0.203));
        Placement p =
                new Placement(
                        written.programme(),
                        recording,
                        ALL,
                        StretchProfile.fit(List.of(), 1, 6),
                        TimeMap.straight(0.2, 1, 6),
                        List.of(anchor(5.5, 5.7, 0.9)),
                        List.of());
        List<Anchor> anchors = p.anchors();
        assertEquals(2, anchors.size());
        double at = 1 + seconds * Math.log(hz / lowHz) / Math.log(highHz / lowHz);
        assertEquals(at, anchors.get(0).programmeSeconds(), 1e-5);
        assertEquals(at + 0.203, anchors.get(0).recordingSeconds(), 1e-5);
        assertEquals(1, anchors.get(0).signs()[0]);
    }

    /** A tape that runs ever slower: stretch 1.001 + 0.0002·p, whose integral is known. */
    private static final DoubleUnaryOperator SLOWING = p -> 3 + 1.001 * p + 0.0001 * p * p;

    private static List<ToneStretches.Reading> slowing() {
        return List.of(reading(0, 1.001), reading(5, 1.002), reading(10, 1.003));
    }

    @Test
    void withoutAnchorsTheMapIsTheIntegralOfSpeed() {
        TimeMap map = placement(slowing(), 3).through(List.of());
        for (double p : new double[] {0, 0.5, 3, 7.5, 10}) {
            assertEquals(SLOWING.applyAsDouble(p), map.recordingSeconds(p), 1e-9);
        }
    }

    /** Before the first and after the last anchor as late as there, in between in proportion. */
    @Test
    void theMapIsBentThroughItsAnchors() {
        TimeMap map =
                placement(slowing(), 3)
                        .through(
                                List.of(
                                        anchor(2, SLOWING.applyAsDouble(2) + 0.01, 1),
                                        anchor(6, SLOWING.applyAsDouble(6) - 0.02, 1),
                                        anchor(8, SLOWING.applyAsDouble(8), 1)));
        double[] at = {0, 1.5, 2, 3, 4, 6, 7, 8, 9.5, 10};
        double[] late = {0.01, 0.01, 0.01, 0.0025, -0.005, -0.02, -0.01, 0, 0, 0};
        for (int i = 0; i < at.length; i++) {
            double wanted = SLOWING.applyAsDouble(at[i]) + late[i];
            assertEquals(wanted, map.recordingSeconds(at[i]), 1e-9, "at " + at[i]);
        }
    }

    /** One anchor shifts the whole. The map so far is straight and has it 3.008 s in the past. */
    @Test
    void throughOneAnchorTheMapIsSmooth() {
        TimeMap map = placement(slowing(), 2).smoothThrough(anchor(4, 6.5, 1));
        for (double p : new double[] {0, 4, 10}) {
            // at 4 s the straight map has 6: all is half a second later
            assertEquals(SLOWING.applyAsDouble(p) - 3 + 2.5, map.recordingSeconds(p), 1e-9);
        }
    }

    @Test
    void aLengthBetweenKnotsIsKept() {
        Programme odd =
                new WrittenProgramme(1.3, WrittenProgramme.marker("start", 0.4)).programme();
        Placement p =
                new Placement(
                        odd,
                        WrittenProgramme.recording(new double[10]),
                        ALL,
                        StretchProfile.fit(List.of(), 1.5, 1.3),
                        TimeMap.straight(1, 1.5, 1.3),
                        List.of(),
                        List.of());
        TimeMap map = p.through(List.of(anchor(1.2, 2.9, 1)));
        assertEquals(1.1, map.recordingSeconds(0), 1e-9);
        assertEquals(2.9, map.recordingSeconds(1.2), 1e-9);
    }

    /** Readings 1 ± 0.001 about their mean: their standard deviation. */
    private static List<ToneStretches.Reading> scattered() {
        return List.of(reading(1, 1.001), reading(2, 0.999), reading(3, 0.999), reading(4, 1.001));
    }

    @Test
    void scatterIsThatOfTheReadings() {
        assertEquals(0.001, placement(scattered(), 0).scatter(), 1e-9);
        assertEquals(0, placement(slowing(), 0).scatter(), 1e-9);
        assertEquals(0, placement(List.of(), 0).scatter());
    }

    /**
     * Markers against the course of the tones, from the first that is certain on. Late by 5 ms of a
     * tape of twice the length are 2.5 ms of the programme. The doubt, k = 2: 0.2 ms of the marker
     * itself, scatter over the root of four readings times the time apart, and two seconds of
     * scatter.
     */
    @Test
    void markersAreSeenAgainstTheTones() {
        List<ToneStretches.Reading> readings =
                scattered().stream()
                        .map(r -> reading(r.programmeSeconds(), r.stretch() + 1))
                        .toList();
        Placement p =
                new Placement(
                        PROGRAMME,
                        WrittenProgramme.recording(new double[10]),
                        ALL,
                        StretchProfile.fit(readings, 2, LENGTH_S),
                        TimeMap.straight(0.5, 2, LENGTH_S),
                        List.of(
                                anchor(0.5, 7, 0.49),
                                anchor(1, 2.503, 0.5),
                                anchor(9, 18.508, 0.8)),
                        readings);
        List<MarkerSight> sights = p.sights();
        assertEquals(2, sights.size());
        assertEquals(1, sights.get(0).programmeSeconds());
        assertEquals(0, sights.get(0).lateSeconds(), 1e-12);
        assertEquals(2 * Math.hypot(0.0002, 0.002), sights.get(0).doubtSeconds(), 1e-8);
        assertEquals(9, sights.get(1).programmeSeconds());
        assertEquals(0.0025, sights.get(1).lateSeconds(), 1e-9);
        double along = 0.001 * 8 / 2;
        assertEquals(
                2 * Math.hypot(0.0002, Math.hypot(along, 0.002)),
                sights.get(1).doubtSeconds(),
                1e-8);
    }

    /** Without readings nothing but the marker's own doubt is told. */
    @Test
    void withoutTonesAMarkerHasItsOwnDoubt() {
        List<MarkerSight> sights = placement(List.of(), 0, anchor(3, 3, 0.9)).sights();
        assertArrayEquals(
                new double[] {3, 0, 0.0004},
                new double[] {
                    sights.get(0).programmeSeconds(),
                    sights.get(0).lateSeconds(),
                    sights.get(0).doubtSeconds()
                },
                1e-12);
        assertTrue(placement(List.of(), 0, anchor(3, 3, 0.49)).sights().isEmpty());
        assertFalse(placement(List.of(), 0).markerHeard());
    }
}
