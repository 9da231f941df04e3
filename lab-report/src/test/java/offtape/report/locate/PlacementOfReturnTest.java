package offtape.report.locate;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.List;
import java.util.function.DoubleUnaryOperator;
import offtape.core.audio.MemoryAudio;
import offtape.core.programme.Programme;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Rough matches of a programme of nine seconds, set right by what the return holds. */
class PlacementOfReturnTest {

    private static final WrittenProgramme WRITTEN = WrittenProgramme.brief();
    private static final Programme PROGRAMME = WRITTEN.programme();

    private static final HeardPart ALL = new HeardPart(0, 100, 50, 1, 1, 1, true, true);

    private static MemoryAudio returned(double seconds, DoubleUnaryOperator programmeSeconds) {
        return WrittenProgramme.recording(WRITTEN.returned(seconds, programmeSeconds));
    }

    private static Placement place(MemoryAudio recording, double offset, double stretch) {
        FineSearch fine =
                new FineSearch(
                        SpectralTrace.of(PROGRAMME.audio()).withoutSilence(),
                        SpectralTrace.of(recording));
        return Placement.of(
                PROGRAMME, recording, new CoarseSearch.Match(offset, stretch, 1), ALL, fine);
    }

    /** A search that has heard nothing and therefore leaves a match in its place. */
    private static Placement placeAsMatched(MemoryAudio recording, double offset, double stretch) {
        SpectralTrace nothing = SpectralTrace.of(WrittenProgramme.recording(new double[120_000]));
        return Placement.of(
                PROGRAMME,
                recording,
                new CoarseSearch.Match(offset, stretch, 1),
                ALL,
                new FineSearch(nothing, nothing));
    }

    /**
     * The speed is known to some tenths of a percent, or to some percent; the place to a tenth of a
     * second. The middle of a marker is found to a microsecond or two.
     */
    @ParameterizedTest
    @CsvSource({"1.003, 1", "0.9, 0.93", "2, 2.005"})
    void speedAndPlaceAreSetRight(double stretch, double matched) {
        MemoryAudio recording = returned(1 + 9.5 * stretch, t -> (t - 0.7) / stretch);
        double middle = 0.7 + 4.5 * stretch;
        Placement p = place(recording, middle - 4.5 * matched + 0.06, matched);
        assertEquals(stretch, p.profile().at(1), 2e-5 * stretch);
        assertEquals(stretch, p.profile().at(8), 2e-5 * stretch);
        assertEquals(2, p.markers().size());
        assertTrue(p.markerHeardAt(true) && p.markerHeardAt(false));
        for (Anchor marker : p.markers()) {
            double wanted = 0.7 + stretch * marker.programmeSeconds();
            assertEquals(wanted, marker.recordingSeconds(), 3e-6);
        }
        assertTrue(p.readings().size() >= 3);
        p.readings().forEach(r -> assertEquals(stretch, r.stretch(), 5e-5 * stretch));
    }

    /** Six percent off there is no tone: the match is taken as it is, and no marker is heard. */
    @Test
    void aMatchFarOffIsNotBorneOut() {
        MemoryAudio recording = returned(11, t -> t - 0.7);
        Placement p = place(recording, 0.7 - 0.06 * 4.5, 1.06);
        assertTrue(p.readings().isEmpty());
        assertEquals(1.06, p.profile().at(4));
        assertFalse(p.markerHeard());
    }

    /** The first 3 s or the last are missing, and with them a marker. */
    @ParameterizedTest
    @CsvSource({"-3, 12, 8.45", "0.5, 7, 0.45"})
    void markersThatAreNotThereAreLeftOut(double offset, double seconds, double middle) {
        Placement p = place(returned(seconds, t -> t - offset), offset + 0.05, 1.001);
        assertEquals(1, p.markers().size());
        assertEquals(middle, p.markers().get(0).programmeSeconds(), 1e-9);
        assertEquals(middle + offset, p.markers().get(0).recordingSeconds(), 3e-6);
    }

    /**
     * A tape that runs ever slower: stretch 0.999 + 0.0004·p. A straight match is believed in the
     * middle of what the recording holds of the programme, and the course of speed is drawn from
     * there. Over all that is at 4.5 s, with the first 2 s missing at 5.5 s, with the last 1.5 s
     * missing at 3.75 s; the match has the stretch there to a half per mille.
     */
    @ParameterizedTest
    @CsvSource({"0.6, 12, 4.5, 1.0008", "-2, 12, 5.5, 1.0012", "0.6, 8.1, 3.75, 1.0005"})
    void theCourseIsDrawnFromTheMiddleOfWhatIsThere(
            double offset, double seconds, double middle, double stretch) {
        DoubleUnaryOperator course = p -> offset + 0.999 * p + 0.0002 * p * p;
        MemoryAudio recording = returned(seconds, t -> inverse(t - offset));
        double there = course.applyAsDouble(middle);
        Placement p = placeAsMatched(recording, there - stretch * middle, stretch);
        assertEquals(there, p.smooth().recordingSeconds(middle), 2e-5);
    }

    /** All tones are there: their course is that of the whole. */
    @Test
    void theCourseIsThatOfTheTones() {
        DoubleUnaryOperator course = p -> 0.6 + 0.999 * p + 0.0002 * p * p;
        MemoryAudio recording = returned(12, t -> inverse(t - 0.6));
        double there = course.applyAsDouble(4.5);
        Placement p = placeAsMatched(recording, there - 1.0008 * 4.5, 1.0008);
        for (double at : new double[] {0, 2, 7, 9}) {
            assertEquals(course.applyAsDouble(at), p.smooth().recordingSeconds(at), 1e-4);
        }
    }

    /** The positive root of 0.999·p + 0.0002·p² = t. */
    private static double inverse(double t) {
        return (-0.999 + Math.sqrt(0.999 * 0.999 + 4 * 0.0002 * t)) / 0.0004;
    }

    /** A place that is off by tenths of a second is found again, to a step of the traces. */
    @Test
    void theMapIsPutInPlace() {
        MemoryAudio recording = returned(11, t -> inverse(t - 0.6));
        Placement p = place(recording, 0.9, 1.0008);
        double[] off = new double[10];
        Arrays.setAll(
                off, at -> p.smooth().recordingSeconds(at) - 0.6 - 0.999 * at - 0.0002 * at * at);
        for (double o : off) {
            assertEquals(0, o, SpectralTrace.HOP_S);
        }
    }

    /** High tones, three percent off: they lie beyond the band that is looked at first. */
    @ParameterizedTest
    @ValueSource(doubles = {1.03, 0.97})
    void tonesAreSoughtFurtherOffIfNoneIsNear(double stretch) {
        WrittenProgramme high =
                new WrittenProgramme(
                        4,
                        WrittenProgramme.marker("start", 0.2),
                        WrittenProgramme.tone("high", 1, 1, 2000),
                        WrittenProgramme.tone("higher", 2.2, 1.5, 3150));
        MemoryAudio recording =
                WrittenProgramme.recording(high.returned(5, t -> (t - 0.5) / stretch));
        Programme programme = high.programme();
        FineSearch fine =
                new FineSearch(
                        SpectralTrace.of(programme.audio()).withoutSilence(),
                        SpectralTrace.of(recording));
        CoarseSearch.Match match = new CoarseSearch.Match(0.5 + 2 * (stretch - 1), 1, 1);
        Placement p = Placement.of(programme, recording, match, ALL, fine);
        assertEquals(stretch, p.profile().at(2), 2e-5);
        assertEquals(0.5 + 0.45 * stretch, p.markers().get(0).recordingSeconds(), 3e-6);
    }

    /**
     * The tape stops within the last tone, from 5.8 to 7.8 s, which the recording does not show:
     * tones before it tell the speed.
     */
    @Test
    void aToneThatIsBrokenOffTellsNoSpeed() {
        MemoryAudio recording = returned(10, t -> t);
        HeardPart part = new HeardPart(0, 7, 5, 0.7, 1, 1, true, false);
        SpectralTrace nothing = SpectralTrace.of(WrittenProgramme.recording(new double[120_000]));
        Placement p =
                Placement.of(
                        PROGRAMME,
                        recording,
                        new CoarseSearch.Match(0, 1, 1),
                        part,
                        new FineSearch(nothing, nothing));
        assertEquals(
                List.of(1.5, 3.05),
                p.readings().stream().map(ToneStretches.Reading::programmeSeconds).toList());
        assertEquals(part, p.part());
    }

    /** Where a part begins and ends is known to 0.1 s; nearer to an end it breaks nothing. */
    @ParameterizedTest
    @CsvSource({
        "0, 3, true", "0, 2.09, false", "0, 2.11, true", "0, 3.89, true", "0, 3.91, false",
        "0, 1, false", "3, 9, true", "2.09, 9, false", "2.11, 9, true", "3.89, 9, true",
        "3.91, 9, false", "5, 9, false", "0, 9, false", "2.5, 3.5, true"
    })
    void aStretchIsBrokenByAnEndInside(double from, double to, boolean broken) {
        HeardPart part = new HeardPart(from, to, 5, 0.7, 1, 1, true, false);
        assertEquals(broken, Placement.isBroken(part, 2, 4));
    }
}
