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
        Random random = new Random(seed);
        double[] out = new double[8 * RATE];
        for (int i = 0; i < out.length; i++) {
            double place = ((double) i / RATE - late) / stretch * RATE;
            boolean inside = place > 1 && place < SOUND.length - 2;
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
    @CsvSource({"1.003, 1", "0.997, 1", "1.05, 1.0475", "0.5, 0.501"})
    void aStretchedMarkerIsFoundInItsPlace(double stretch, double expected) {
        TimeMap map = TimeMap.straight(0.5 + 1.25 * (stretch - expected), expected, 6);
        Anchor anchor =
                search(map, returned(0.5, stretch, 0.5, 1)).find(1, 0.5, 5000).orElseThrow();
        assertEquals(0.5 + 1.25 * stretch, anchor.recordingSeconds(), 1.5e-5);
        assertTrue(anchor.likeness() > 0.995, "likeness " + anchor.likeness());
        Anchor atMap = search(map, returned(0.5, stretch, 0.5, 1)).find(1, 0.5, 0).orElseThrow();
        assertTrue(atMap.likeness() < anchor.likeness() - 0.05, "" + atMap.likeness());
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

    /** 0.15 s are looked at to either side, and may lie beyond the recording's ends. */
    @ParameterizedTest
    @CsvSource({"-0.95, true", "-1.2, false", "6.4, true", "6.7, false"})
    void aPlaceOutsideTheRecordingIsNotLookedAt(double expected, boolean looked) {
        assertEquals(
                looked,
                search(late(expected), returned(0.5, 1, 0.5, 1)).find(1, 0.5, 5000).isPresent());
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
        CueSheet endOnly = new CueSheet(RATE, 6L * RATE, -18, null, List.of(SHEET.cues().get(1)));
        MarkerCheck none =
                new MarkerCheck(
                        new Programme(endOnly, PROGRAMME),
                        new MemoryAudio("r", RATE, returned(0.5, 1, 0.5, 1)));
        assertFalse(none.heard(new CoarseSearch.Match(0.5, 1, 1)));
    }
}
