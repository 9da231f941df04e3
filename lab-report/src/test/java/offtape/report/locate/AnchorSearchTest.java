package offtape.report.locate;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Random;
import offtape.core.audio.MemoryAudio;
import offtape.core.dsp.SincInterpolator;
import offtape.core.programme.ChannelSet;
import offtape.core.programme.Cue;
import offtape.core.programme.CueSheet;
import offtape.core.programme.Programme;
import offtape.core.programme.ProgrammeSignal;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** A marker of half a second from 1 s on, sought where it lies and where it does not. */
class AnchorSearchTest {

    private static final int RATE = Scene.RATE;

    private static final CueSheet SHEET =
            new CueSheet(
                    RATE,
                    6L * RATE,
                    -18,
                    null,
                    List.of(
                            new Cue.Marker("start", ChannelSet.BOTH, RATE, RATE / 2),
                            new Cue.Marker("end", ChannelSet.BOTH, 5L * RATE, RATE / 2)));

    private static final double[] SOUND =
            new ProgrammeSignal(SHEET).read(0, (int) SHEET.frames())[0];

    private static final MemoryAudio PROGRAMME = new MemoryAudio("p", RATE, SOUND, SOUND);

    /** The programme, late by seconds and so much longer, times a gain, in hiss. */
    private static double[] returned(double late, double stretch, double gain, int seed) {
        return returned(RATE, 8, late, stretch, gain, seed);
    }

    private static double[] returned(
            int rate, double seconds, double late, double stretch, double gain, int seed) {
        Random random = new Random(seed);
        double[] out = new double[(int) (seconds * rate)];
        for (int i = 0; i < out.length; i++) {
            double place = ((double) i / rate - late) / stretch * RATE;
            // between its markers, which begin with the second and the sixth second, it is silent
            double away = place / RATE % 4;
            boolean inside = place > 0 && away > 0.95 && away < 1.55;
            out[i] =
                    1e-5 * random.nextGaussian()
                            + (inside ? gain * SincInterpolator.at(SOUND, place) : 0);
        }
        return out;
    }

    private static AnchorSearch search(TimeMap map, double[]... recording) {
        return new AnchorSearch(PROGRAMME, new MemoryAudio("r", RATE, recording), map);
    }

    private static TimeMap late(double seconds) {
        return TimeMap.straight(seconds, 1, 6);
    }

    /** Between samples, to a tenth of one, wherever in reach the map expects it. */
    @ParameterizedTest
    @CsvSource({"0.5, 0.5", "0.50003, 0.5", "0.6, 0.5", "0.41237, 0.5"})
    void theMiddleOfTheMarkerIsFound(double isLate, double expected) {
        Anchor anchor =
                search(late(expected), returned(isLate, 1, 0.5, 1))
                        .find(1, 0.5, 5000)
                        .orElseThrow();
        assertEquals(1.25, anchor.programmeSeconds(), 1e-12);
        assertEquals(1.25 + isLate, anchor.recordingSeconds(), 6e-6);
        // between two samples the highest sound, of 6 kHz, is off by up to 67 degrees
        assertTrue(anchor.likeness() > 0.96, "likeness " + anchor.likeness());
        assertArrayEquals(new int[] {1}, anchor.signs());
    }

    /** Wow of up to 0.4 % beside the map's speed: marker and map differ by so much. */
    @ParameterizedTest
    @CsvSource({"1.003, 1", "0.997, 1", "1.05, 1.0475", "0.5, 0.501", "2, 1.995"})
    void aStretchedMarkerIsFoundInItsPlace(double stretch, double expected) {
        TimeMap map = TimeMap.straight(0.5 + 1.25 * (stretch - expected), expected, 6);
        Anchor anchor =
                search(map, returned(0.5, stretch, 0.5, 1)).find(1, 0.5, 5000).orElseThrow();
        assertEquals(0.5 + 1.25 * stretch, anchor.recordingSeconds(), 1.5e-5);
        assertTrue(anchor.likeness() > 0.995, "likeness " + anchor.likeness());
        Anchor atMap = search(map, returned(0.5, stretch, 0.5, 1)).find(1, 0.5, 0).orElseThrow();
        assertTrue(atMap.likeness() < anchor.likeness() - 0.05, "" + atMap.likeness());
    }

    /** What wow does not explain is not tried: the map is off by more than twice that. */
    @Test
    void aSpeedBeyondWowIsNotTried() {
        TimeMap map = TimeMap.straight(0.5 + 1.25 * 0.01, 1, 6);
        Anchor anchor = search(map, returned(0.5, 1.01, 0.5, 1)).find(1, 0.5, 5000).orElseThrow();
        assertTrue(anchor.likeness() < 0.9, "likeness " + anchor.likeness());
    }

    /**
     * At 48 kHz and twice the speed the marker lasts a quarter of a second and reaches 12 kHz: the
     * first look is at every other sample.
     */
    @Test
    void aRecordingMayHaveAnotherRate() {
        double[] x = returned(48_000, 2, 0.5, 0.5, 0.5, 1);
        TimeMap map = TimeMap.straight(0.5 - 1.25 * 0.0015, 0.5015, 6);
        Anchor anchor =
                new AnchorSearch(PROGRAMME, new MemoryAudio("r", 48_000, x), map)
                        .find(1, 0.5, 5000)
                        .orElseThrow();
        assertEquals(0.5 + 1.25 * 0.5, anchor.recordingSeconds(), 5e-6);
        assertTrue(anchor.likeness() > 0.995, "likeness " + anchor.likeness());
    }

    /** What is heard 34 dB down or less is crosstalk and tells nothing of the channel's wiring. */
    @Test
    void eachChannelHasItsPolarity() {
        AnchorSearch pair = search(late(0.5), returned(0.5, 1, -0.5, 1), returned(0.5, 1, 0.25, 2));
        assertArrayEquals(new int[] {-1, 1}, pair.find(1, 0.5, 5000).orElseThrow().signs());
        AnchorSearch leak =
                search(late(0.5), returned(0.5, 1, 0.5, 1), returned(0.5, 1, 0.0095, 2));
        assertArrayEquals(new int[] {1, 0}, leak.find(1, 0.5, 5000).orElseThrow().signs());
        AnchorSearch weak =
                search(late(0.5), returned(0.5, 1, 0.5, 1), returned(0.5, 1, -0.0105, 2));
        assertArrayEquals(new int[] {1, -1}, weak.find(1, 0.5, 5000).orElseThrow().signs());
    }

    /** The clearer channel is what likeness tells; hiss has no polarity. */
    @Test
    void hissOnOneChannelLeavesTheOther() {
        double[] hiss = new Scene(8).withHiss(0.05).sound();
        Anchor anchor =
                search(late(0.5), hiss, returned(0.5, 1, 0.5, 2)).find(1, 0.5, 5000).orElseThrow();
        assertEquals(1, anchor.likeness(), 0.001);
        assertArrayEquals(new int[] {0, 1}, anchor.signs());
        assertEquals(1.75, anchor.recordingSeconds(), 1e-4);
    }

    @Test
    void aMarkerIsHeardWhereItIsOnly() {
        double[] x = returned(0.5, 1, 0.5, 1);
        assertTrue(search(late(0.5), x).hears(1, 0.5, 5000, 0.4));
        assertFalse(search(late(2.5), x).hears(1, 0.5, 5000, 0.4));
        assertFalse(search(late(0.5), new Scene(8).withHiss(0.1).sound()).hears(1, 0.5, 5000, 0.4));
    }

    /** As like as it is at the map's own speed is like enough, and more is not. */
    @Test
    void theLeastLikenessIsEnough() {
        AnchorSearch search = search(late(0.5), returned(0.5, 1.003, 0.5, 1));
        double likeness = search.find(1, 0.5, 0).orElseThrow().likeness();
        assertTrue(search.hears(1, 0.5, 0, likeness));
        assertFalse(search.hears(1, 0.5, 0, Math.nextUp(likeness)));
        // other speeds are tried before it is given up
        assertTrue(search.hears(1, 0.5, 5000, Math.nextUp(likeness)));
    }

    /**
     * The marker and 0.4 % of it are looked at, and 0.15 s to either side, which may lie beyond the
     * recording's ends: its middle from 0.251 s on, at half the speed from 0.502 s on, to as much
     * before the end at 8 s. A sample is 62.5 µs.
     */
    @ParameterizedTest
    @CsvSource({
        "0.251, 1, true", "0.2509, 1, false", "7.749, 1, true", "7.7491, 1, false",
        "0.502, 2, true", "0.5019, 2, false", "7.498, 2, true", "7.4981, 2, false"
    })
    void aPlaceOutsideTheRecordingIsNotLookedAt(double middle, double stretch, boolean looked) {
        TimeMap map = TimeMap.straight(middle - 1.25 * stretch, stretch, 6);
        assertEquals(looked, search(map, new double[8 * RATE]).find(1, 0.5, 0).isPresent());
    }

    /** Only a marker of the first half tells that a programme begins. */
    @Test
    void theFirstMarkerTellsABeginning() {
        Programme programme = new Programme(SHEET, PROGRAMME);
        MarkerCheck check =
                new MarkerCheck(programme, new MemoryAudio("r", RATE, returned(0.5, 1, 0.5, 1)));
        assertTrue(check.heard(new CoarseSearch.Match(0.5, 1, 1)));
        assertTrue(check.heard(new CoarseSearch.Match(0.4, 1, 1)));
        // here lies the last marker, which is another sound
        assertFalse(check.heard(new CoarseSearch.Match(4.5, 1, 1)));
        assertFalse(endMarkerOf(6L * RATE).heard(new CoarseSearch.Match(0.5, 1, 1)));
        // the marker at 5 s, of 10 s and of a little more
        assertFalse(endMarkerOf(10L * RATE).heard(new CoarseSearch.Match(0.5, 1, 1)));
        assertTrue(endMarkerOf(10L * RATE + 2).heard(new CoarseSearch.Match(0.5, 1, 1)));
    }

    private static MarkerCheck endMarkerOf(long frames) {
        CueSheet sheet = new CueSheet(RATE, frames, -18, null, List.of(SHEET.cues().get(1)));
        return new MarkerCheck(
                new Programme(sheet, PROGRAMME),
                new MemoryAudio("r", RATE, returned(0.5, 1, 0.5, 1)));
    }
}
