package offtape.report.locate;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** A programme of two tones, 3 s from 1 s on and 4 s from 5 s on, of ten seconds. */
class HeardPartTest {

    /** A vector more or less, and the reach of its window, are no error. */
    private static final double NEAR_S = 0.06;

    /**
     * A window of 64 ms hears a tone up to 32 ms beyond its end, the last time at the next place of
     * 20 ms; its own 20 ms are counted to the part.
     */
    private static final double BEYOND_S = 0.04;

    private static final List<Scene.Part> PARTS =
            List.of(new Scene.Part(1, 4, 500), new Scene.Part(5, 9, 3000));

    private static final SpectralTrace PROGRAMME =
            new Scene(10).with(0.1, PARTS).trace().withoutSilence();

    private static HeardPart heard(Scene recording, double offset, double stretch) {
        return HeardPart.of(
                PROGRAMME,
                recording.withHiss(1e-4).trace(),
                new CoarseSearch.Match(offset, stretch, 1));
    }

    @Test
    void allOfItIsHeard() {
        HeardPart part = heard(new Scene(14).with(0.1, Scene.played(PARTS, 2, 1)), 2, 1);
        assertEquals(3, part.fromSeconds(), NEAR_S);
        assertEquals(11 + BEYOND_S, part.toSeconds(), 0.011);
        assertEquals(7, part.soundingSeconds(), 0.2);
        assertEquals(1, part.share(), 0);
        assertEquals(1, part.coveredShare(), 0);
        assertEquals(1, part.likeness(), 0.03);
        assertTrue(part.fromStart() && part.toEnd());
    }

    /** Seconds of the recording are the tape's, those that sound are the programme's. */
    @Test
    void aSlowTapeTakesLonger() {
        HeardPart part = heard(new Scene(16).with(0.1, Scene.played(PARTS, 2, 1.25)), 2, 1.25);
        assertEquals(3.25, part.fromSeconds(), NEAR_S);
        assertEquals(13.25, part.toSeconds(), NEAR_S);
        assertEquals(7, part.soundingSeconds(), 0.2);
        assertEquals(1, part.likeness(), 0.05);
    }

    /** A second of the first tone is missing though the recording was running: 6 of 7 s. */
    @Test
    void aTapeStartedLateLacksTheBeginning() {
        List<Scene.Part> late = List.of(new Scene.Part(2, 4, 500), new Scene.Part(5, 9, 3000));
        HeardPart part = heard(new Scene(14).with(0.1, Scene.played(late, 2, 1)), 2, 1);
        assertEquals(4, part.fromSeconds(), NEAR_S);
        assertEquals(11, part.toSeconds(), NEAR_S);
        assertEquals(6 / 7.0, part.share(), 0.02);
        assertEquals(6 / 7.0, part.coveredShare(), 0.02);
        assertFalse(part.fromStart());
        assertTrue(part.toEnd());
    }

    /** The recording ends with the programme's sixth second: 4 of 7 s, all it has room for. */
    @Test
    void ofACutRecordingAllThatIsThereIsHeard() {
        HeardPart part = heard(new Scene(8).with(0.1, Scene.played(PARTS, 2, 1)), 2, 1);
        assertEquals(8, part.toSeconds(), NEAR_S);
        assertEquals(4 / 7.0, part.share(), 0.02);
        assertEquals(1, part.coveredShare(), 0);
        assertTrue(part.fromStart());
        assertFalse(part.toEnd());
    }

    /** It began before the recording did: the first 1.5 s of 7 are outside. */
    @Test
    void whatCameBeforeTheRecordingIsNotHeard() {
        HeardPart part = heard(new Scene(8).with(0.1, Scene.played(PARTS, -2.5, 1)), -2.5, 1);
        assertEquals(0, part.fromSeconds(), NEAR_S);
        assertEquals(6.5, part.toSeconds(), NEAR_S);
        assertEquals(5.5 / 7, part.share(), 0.02);
        assertEquals(1, part.coveredShare(), 0);
        assertFalse(part.fromStart());
    }

    /**
     * Up to half a second of the programme before its last sound, or after the first, is the end or
     * the start, however long the tape takes for it.
     */
    @ParameterizedTest
    @CsvSource({"0.4, 1, true", "0.6, 1, false", "0.45, 1.25, true", "0.55, 0.8, false"})
    void anEndIsKnownToHalfASecond(double missing, double stretch, boolean whole) {
        List<Scene.Part> cut =
                List.of(new Scene.Part(1, 4, 500), new Scene.Part(5, 9 - missing, 3000));
        Scene early = new Scene(10 * stretch).with(0.1, Scene.played(cut, 0, stretch));
        assertEquals(whole, heard(early, 0, stretch).toEnd());
        List<Scene.Part> late =
                List.of(new Scene.Part(1 + missing, 4, 500), new Scene.Part(5, 9, 3000));
        Scene begun = new Scene(10 * stretch).with(0.1, Scene.played(late, 0, stretch));
        assertEquals(whole, heard(begun, 0, stretch).fromStart());
    }

    /**
     * A gap of a second in the last tone costs less than the two seconds after it bring. In it is
     * hiss, of which a third of an octave at 3 kHz holds 0.087: the cosine is the root, 0.29.
     */
    @Test
    void aGapIsBridgedIfMoreComesAfterIt() {
        List<Scene.Part> gap =
                List.of(
                        new Scene.Part(1, 4, 500),
                        new Scene.Part(5, 6, 3000),
                        new Scene.Part(7, 9, 3000));
        HeardPart part = heard(new Scene(10).with(0.1, gap), 0, 1);
        assertEquals(1, part.fromSeconds(), NEAR_S);
        assertEquals(9, part.toSeconds(), NEAR_S);
        assertEquals((6 + 0.29) / 7, part.likeness(), 0.03);
        List<Scene.Part> more = List.of(new Scene.Part(1, 2, 500), new Scene.Part(5, 9, 3000));
        // two seconds without likeness cost as much as one before them had brought
        assertEquals(5, heard(new Scene(10).with(0.1, more), 0, 1).fromSeconds(), NEAR_S);
    }

    @Test
    void whatIsNotThereIsNotHeard() {
        HeardPart part = heard(new Scene(10), 0, 1);
        assertEquals(0, part.share(), 0.02);
        assertEquals(0, part.soundingSeconds(), 0.1);
    }
}
